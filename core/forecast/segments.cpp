// From visit means to segments: a coating from its start to its replacement.

#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/forecast/coating_readings.h"
#include "core/forecast/constants.h"
#include "core/forecast/preparation.h"

namespace kneerail::forecast {

namespace {

double usual_nominal_um(const Part& part) {
  if (const auto nominal = thickness_um(part.nominal_coating_um)) return *nominal;
  switch (part.kind) {
    case PartKind::fitting:
      return constant::nominal_fitting_um;
    case PartKind::base_fixing:
      return constant::nominal_base_fixing_um;
    default:
      return constant::nominal_tube_um;
  }
}

bool starts_coating(const Work& work) {
  return work.action == Action::replace || work.action == Action::regalvanise ||
         work.action == Action::touch_up ||
         (work.action == Action::re_erect && work.same_part_unsure);
}

/// The works of each part that start a coating, by part and day.
std::vector<std::vector<const Work*>> starting_works(const Portfolio& portfolio) {
  std::vector<std::vector<const Work*>> works(portfolio.parts.size());
  for (const Work& work : portfolio.works)
    if (starts_coating(work) && work.day <= portfolio.as_of)
      works[static_cast<std::size_t>(work.part)].push_back(&work);
  for (auto& of_part : works)
    std::sort(of_part.begin(), of_part.end(), [](const Work* a, const Work* b) {
      return std::tie(a->day, a->action, a->new_nominal_coating_um, a->screw) <
             std::tie(b->day, b->action, b->new_nominal_coating_um, b->screw);
    });
  return works;
}

Segment first_segment(const Part& part, Date as_of) {
  const std::optional<Date> installed = put_up(part, as_of);
  Segment segment;
  segment.nominal_um = usual_nominal_um(part);
  segment.first_coating = installed.has_value();
  segment.start_kind = installed ? StartKind::known : StartKind::unknown;
  segment.start = installed.value_or(Date{});
  return segment;
}

Segment segment_after(const Work& work, const Part& part) {
  Segment segment;
  segment.nominal_um = thickness_um(work.new_nominal_coating_um).value_or(usual_nominal_um(part));
  segment.start = work.day;
  if (work.action == Action::touch_up) segment.start_kind = StartKind::touched_up;
  if (work.action == Action::re_erect) segment.start_kind = StartKind::unknown;
  return segment;
}

class SegmentBuilder {
 public:
  SegmentBuilder(const Portfolio& portfolio, const std::vector<CountedMean>& means,
                 const std::vector<DayGrade>& grades, CoatingData& data,
                 std::vector<MeanCounts>& counts)
      : portfolio_(portfolio),
        counted_(means),
        grades_(grades),
        data_(data),
        counts_(counts),
        works_(starting_works(portfolio)) {}

  void build() {
    for (CoatingSite& site : data_.sites) {
      site.first_segment = static_cast<std::int32_t>(data_.segments.size());
      for (std::int32_t i = site.first_part; i < site.first_part + site.parts; ++i) add_part(i);
      site.segments = static_cast<std::int32_t>(data_.segments.size()) - site.first_segment;
    }
  }

 private:
  void add_part(std::int32_t index) {
    CoatingPart& own = data_.parts[static_cast<std::size_t>(index)];
    const Part& part = portfolio_.parts[static_cast<std::size_t>(own.place)];
    own.first_segment = static_cast<std::int32_t>(data_.segments.size());
    Segment segment = first_segment(part, portfolio_.as_of);
    for (const Work* work : works_[static_cast<std::size_t>(own.place)]) {
      close(segment, index, part, work);
      segment = segment_after(*work, part);
    }
    close(segment, index, part, nullptr);
    own.segments = static_cast<std::int32_t>(data_.segments.size()) - own.first_segment;
  }

  /// Takes the means up to and on the day of the work that ends the segment: read as found.
  void close(Segment segment, std::int32_t index, const Part& part, const Work* end) {
    segment.part = index;
    segment.first = static_cast<std::int32_t>(data_.means.size());
    for (; next_ < counted_.size() && counted_[next_].part == index; ++next_) {
      const Date day = data_.sessions[static_cast<std::size_t>(counted_[next_].session)].day;
      if (end != nullptr && day > end->day) break;
      if (segment.start_kind == StartKind::unknown && segment.count == 0) segment.start = day;
      data_.means.push_back(mean(counted_[next_], segment));
      counts_.push_back(counts_of(counted_[next_], part));
      ++segment.count;
    }
    segment.visible = segment.count;
    mark_gone(data_.means, segment);
    data_.segments.push_back(segment);
  }

  [[nodiscard]] static MeanCounts counts_of(const CountedMean& counted, const Part& part) {
    const double areas = std::max({part.reference_areas, counted.spots, 1});
    return {1.0 / counted.spots - 1 / areas, counted.replicates};
  }

  [[nodiscard]] VisitMean mean(const CountedMean& counted, const Segment& segment) const {
    VisitMean out;
    out.session = counted.session;
    out.day = data_.sessions[static_cast<std::size_t>(counted.session)].day;
    out.thickness_um = counted.thickness_um;
    out.effective_age = effective_age(data_, segment, out.day);
    out.surface = counted.surface;
    out.grade = grade_on(counted.part, out.day);
    return out;
  }

  [[nodiscard]] std::int8_t grade_on(std::int32_t part, Date day) const {
    const auto at = std::lower_bound(
        grades_.begin(), grades_.end(), std::tie(part, day),
        [](const DayGrade& a, const auto& wanted) { return std::tie(a.part, a.day) < wanted; });
    return at != grades_.end() && at->part == part && at->day == day ? at->grade : std::int8_t{0};
  }

  const Portfolio& portfolio_;
  const std::vector<CountedMean>& counted_;
  const std::vector<DayGrade>& grades_;
  CoatingData& data_;
  std::vector<MeanCounts>& counts_;
  std::vector<std::vector<const Work*>> works_;
  std::size_t next_ = 0;
};

}  // namespace

void mark_gone(std::vector<VisitMean>& means, const Segment& segment) {
  bool gone = false;
  for (std::int32_t i = segment.first; i < segment.first + segment.count; ++i) {
    VisitMean& mean = means[static_cast<std::size_t>(i)];
    if (mean.thickness_um < constant::gone_below_um) gone = true;
    mean.gone = gone && mean.thickness_um <= constant::not_gone_above_um;
  }
}

std::vector<DayGrade> day_grades(const Portfolio& portfolio, const CoatingData& data) {
  const auto served = served_index(portfolio, data);
  std::vector<DayGrade> grades;
  for (const Reading& reading : portfolio.readings) {
    if (reading.quantity != Quantity::grade || !(reading.value >= 1 && reading.value <= 5))
      continue;
    const std::int32_t part = served[static_cast<std::size_t>(reading.part)];
    if (part >= 0)
      grades.push_back(
          {part, day_of(portfolio, reading), static_cast<std::int8_t>(std::lround(reading.value))});
  }
  std::sort(grades.begin(), grades.end(), [](const DayGrade& a, const DayGrade& b) {
    return std::tie(a.part, a.day, b.grade) < std::tie(b.part, b.day, a.grade);
  });
  const auto same_day = [](const DayGrade& a, const DayGrade& b) {
    return a.part == b.part && a.day == b.day;
  };
  grades.erase(std::unique(grades.begin(), grades.end(), same_day), grades.end());
  return grades;
}

void build_segments(const Portfolio& portfolio, const std::vector<CountedMean>& means,
                    const std::vector<DayGrade>& grades, CoatingData& data,
                    std::vector<MeanCounts>& counts) {
  SegmentBuilder(portfolio, means, grades, data, counts).build();
}

}  // namespace kneerail::forecast
