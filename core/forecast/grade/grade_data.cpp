#include "core/forecast/grade/grade_data.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <tuple>
#include <utility>

#include "core/forecast/constants.h"

namespace kneerail::forecast {

namespace {

/// One grade reading that counts, by the part's place in the portfolio.
struct Said {
  std::int32_t part;
  Date day;
  std::int32_t inspector;
  std::int8_t seen;
  bool fresh;
};

bool is_grade(double value) {
  return value >= 1 && value <= static_cast<double>(grade_worst) && value == std::floor(value);
}

bool is_fresh(const Reading& reading) {
  return !reading.carried && reading.how != How::afar && reading.how != How::picture;
}

std::int32_t place_of(const std::vector<std::string>& names, const std::string& name) {
  return static_cast<std::int32_t>(std::lower_bound(names.begin(), names.end(), name) -
                                   names.begin());
}

/// The inspector of each visit, as a place among the names of those who graded.
std::vector<std::int32_t> inspectors_of(const Portfolio& portfolio,
                                        std::vector<std::string>& names) {
  std::vector<char> graded(portfolio.visits.size(), 0);
  for (const Reading& reading : portfolio.readings)
    if (reading.quantity == Quantity::grade) graded[static_cast<std::size_t>(reading.visit)] = 1;
  for (std::size_t i = 0; i < graded.size(); ++i)
    if (graded[i] != 0) names.push_back(portfolio.visits[i].inspector);
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  std::vector<std::int32_t> of_visit;
  for (const Visit& visit : portfolio.visits) of_visit.push_back(place_of(names, visit.inspector));
  return of_visit;
}

/// Every grade by part, day and inspector; of several of one visit the worst, a fresh one first.
std::vector<Said> said_grades(const Portfolio& portfolio, GradeData& data) {
  const std::vector<std::int32_t> inspectors = inspectors_of(portfolio, data.inspectors);
  std::vector<Said> said;
  for (const Reading& reading : portfolio.readings) {
    if (reading.quantity != Quantity::grade) continue;
    const Visit& visit = portfolio.visits[static_cast<std::size_t>(reading.visit)];
    const Date day = reading.seen.value_or(visit.day);
    const char* reason = !is_grade(reading.value) ? "no_grade" : "after_as_of";
    if (!is_grade(reading.value) || day > portfolio.as_of) {
      data.left_out.push_back(
          {reading.id, portfolio.parts[static_cast<std::size_t>(reading.part)].id, reason});
      continue;
    }
    said.push_back({reading.part, day, inspectors[static_cast<std::size_t>(reading.visit)],
                    static_cast<std::int8_t>(reading.value), is_fresh(reading)});
  }
  std::sort(said.begin(), said.end(), [](const Said& a, const Said& b) {
    return std::tuple(a.part, a.day, a.inspector, !a.fresh, -a.seen) <
           std::tuple(b.part, b.day, b.inspector, !b.fresh, -b.seen);
  });
  said.erase(std::unique(said.begin(), said.end(),
                         [](const Said& a, const Said& b) {
                           return a.part == b.part && a.day == b.day && a.inspector == b.inspector;
                         }),
             said.end());
  return said;
}

bool starts_anew(const Work& work) {
  return work.action == Action::replace || work.action == Action::regalvanise ||
         (work.action == Action::re_erect && work.same_part_unsure);
}

std::vector<std::vector<const Work*>> fresh_starts(const Portfolio& portfolio) {
  std::vector<std::vector<const Work*>> works(portfolio.parts.size());
  for (const Work& work : portfolio.works)
    if (starts_anew(work) && work.day <= portfolio.as_of)
      works[static_cast<std::size_t>(work.part)].push_back(&work);
  // On one day what is known to be new comes last and holds.
  for (auto& of_part : works)
    std::sort(of_part.begin(), of_part.end(), [](const Work* a, const Work* b) {
      return std::pair(a->day, a->action != Action::re_erect) <
             std::pair(b->day, b->action != Action::re_erect);
    });
  return works;
}

class Builder {
 public:
  Builder(const Portfolio& portfolio, const InstalledDates& installed, GradeData& data)
      : portfolio_(portfolio),
        installed_(installed),
        data_(data),
        said_(said_grades(portfolio, data)),
        works_(fresh_starts(portfolio)) {}

  void build() {
    add_sites();
    for (GradePart& part : data_.parts) add_segments(part);
  }

 private:
  [[nodiscard]] const Part& part_at(std::int32_t place) const {
    return portfolio_.parts[static_cast<std::size_t>(place)];
  }

  void add_sites() {
    std::vector<std::int32_t> order(portfolio_.parts.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<std::int32_t>(i);
    std::sort(order.begin(), order.end(), [&](std::int32_t a, std::int32_t b) {
      return std::tie(part_at(a).site, part_at(a).id) < std::tie(part_at(b).site, part_at(b).id);
    });
    for (const std::int32_t place : order) {
      const Part& part = part_at(place);
      if (data_.sites.empty() || data_.sites.back().name != part.site) {
        data_.sites.emplace_back();
        data_.sites.back().name = part.site;
        data_.sites.back().first_part = static_cast<std::int32_t>(data_.parts.size());
      }
      GradeSite& site = data_.sites.back();
      ++site.parts;
      site.zones.push_back(part.zone);
      GradePart own;
      own.place = place;
      own.site = static_cast<std::int32_t>(data_.sites.size()) - 1;
      own.kind = part.kind;
      own.material = part.material;
      own.painted = part.painted;
      own.exposure = part.exposure;
      data_.parts.push_back(own);
    }
    for (GradeSite& site : data_.sites) order_zones(site);
  }

  void order_zones(GradeSite& site) {
    std::sort(site.zones.begin(), site.zones.end());
    site.zones.erase(std::unique(site.zones.begin(), site.zones.end()), site.zones.end());
    for (std::int32_t i = site.first_part; i < site.first_part + site.parts; ++i) {
      GradePart& part = data_.parts[static_cast<std::size_t>(i)];
      part.zone = place_of(site.zones, part_at(part.place).zone);
    }
  }

  void add_segments(GradePart& part) {
    part.first_segment = static_cast<std::int32_t>(data_.segments.size());
    next_ = static_cast<std::size_t>(
        std::lower_bound(said_.begin(), said_.end(), part.place,
                         [](const Said& said, std::int32_t place) { return said.part < place; }) -
        said_.begin());
    std::optional<Date> start = put_up(part_at(part.place), portfolio_.as_of);
    for (const Work* work : works_[static_cast<std::size_t>(part.place)]) {
      close(part, start, work->day);
      start = work->action == Action::re_erect ? std::nullopt : std::optional(work->day);
    }
    close(part, start, std::nullopt);
    part.segments = static_cast<std::int32_t>(data_.segments.size()) - part.first_segment;
  }

  /// Takes the looks up to and on the day of the work that ends the segment: graded as found. A
  /// segment that ended unseen is of no use to anybody.
  void close(GradePart& part, std::optional<Date> start, std::optional<Date> end) {
    GradeSegment segment;
    segment.first = static_cast<std::int32_t>(data_.looks.size());
    for (; next_ < said_.size() && said_[next_].part == part.place; ++next_) {
      const Said& said = said_[next_];
      if (end && said.day > *end) break;
      data_.looks.push_back({said.day, said.inspector, said.seen, said.fresh, 0, 1});
      ++segment.count;
    }
    if (end && segment.count == 0) return;
    const auto first = static_cast<std::size_t>(segment.first);
    const Date seen_first = segment.count > 0 ? data_.looks[first].day : data_.as_of;
    if (start && segment.count > 0 && seen_first < *start) {
      part.graded_before_start = true;
      start.reset();
    }
    segment.start_known = start.has_value();
    segment.starts = start ? std::vector<Date>{*start}
                           : installed_.likely_starts(part_at(part.place).site, seen_first);
    for (const Date begun : segment.starts) segment.ln_ages.push_back(ln_years(begun, seen_first));
    for (std::size_t i = first + 1; i < data_.looks.size(); ++i) {
      GradeLook& look = data_.looks[i];
      look.ln_years = ln_years(data_.looks[i - 1].day, look.day);
      look.unbroken = std::exp(-constant::grade_unrecorded_per_year * std::exp(look.ln_years));
    }
    data_.segments.push_back(std::move(segment));
  }

  const Portfolio& portfolio_;
  const InstalledDates& installed_;
  GradeData& data_;
  std::vector<Said> said_;
  std::vector<std::vector<const Work*>> works_;
  std::size_t next_ = 0;
};

void sort_left_out_grades(std::vector<LeftOut>& left_out) {
  std::sort(left_out.begin(), left_out.end(), [](const LeftOut& a, const LeftOut& b) {
    return std::tie(a.part, a.reading) < std::tie(b.part, b.reading);
  });
}

/// Everybody who graded, ascending.
std::vector<std::string> inspectors_of(const std::vector<GradeData>& pieces) {
  std::vector<std::string> names;
  for (const GradeData& piece : pieces)
    names.insert(names.end(), piece.inspectors.begin(), piece.inspectors.end());
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

void append(GradeData& piece, GradeData& all) {
  const auto size_of = [](const auto& list) { return static_cast<std::int32_t>(list.size()); };
  for (GradeSite& site : piece.sites) site.first_part += size_of(all.parts);
  for (GradePart& part : piece.parts) {
    part.site += size_of(all.sites);
    part.first_segment += size_of(all.segments);
  }
  for (GradeSegment& segment : piece.segments) segment.first += size_of(all.looks);
  std::vector<std::int32_t> places;
  for (const std::string& name : piece.inspectors) places.push_back(place_of(all.inspectors, name));
  for (GradeLook& look : piece.looks)
    look.inspector = places[static_cast<std::size_t>(look.inspector)];
  std::ranges::move(piece.sites, std::back_inserter(all.sites));
  std::ranges::move(piece.parts, std::back_inserter(all.parts));
  std::ranges::move(piece.segments, std::back_inserter(all.segments));
  std::ranges::move(piece.looks, std::back_inserter(all.looks));
  std::ranges::move(piece.left_out, std::back_inserter(all.left_out));
  piece = {};
}

}  // namespace

double ln_years(double years) {
  return years > 0 ? std::log(years) : -std::numeric_limits<double>::infinity();
}

double ln_years(Date from, Date to) {
  return ln_years(years_between(from, to));
}

std::optional<GradeLook> seen_last(std::span<const GradeLook> looks) {
  if (looks.empty()) return std::nullopt;
  Date from = looks.back().day;
  for (const GradeLook& look : looks)
    if (look.fresh) from = look.day;
  std::optional<GradeLook> seen;
  for (const GradeLook& look : looks)
    if (look.day >= from &&
        (!seen || std::pair(look.seen, look.fresh) > std::pair(seen->seen, seen->fresh)))
      seen = look;
  return seen;
}

GradeData prepare_grades(const Portfolio& portfolio, const InstalledDates& installed) {
  GradeData data;
  data.as_of = portfolio.as_of;
  Builder(portfolio, installed, data).build();
  sort_left_out_grades(data.left_out);
  data.segments.shrink_to_fit();
  data.looks.shrink_to_fit();
  return data;
}

GradeData joined(std::vector<GradeData> pieces) {
  std::ranges::sort(pieces, {}, [](const GradeData& piece) {
    return piece.sites.empty() ? std::string() : piece.sites.front().name;
  });
  GradeData all;
  all.inspectors = inspectors_of(pieces);
  std::size_t parts = 0;
  std::size_t segments = 0;
  std::size_t looks = 0;
  for (const GradeData& piece : pieces) {
    all.as_of = piece.as_of;
    parts += piece.parts.size();
    segments += piece.segments.size();
    looks += piece.looks.size();
  }
  all.parts.reserve(parts);
  all.segments.reserve(segments);
  all.looks.reserve(looks);
  for (GradeData& piece : pieces) append(piece, all);
  sort_left_out_grades(all.left_out);
  return all;
}

}  // namespace kneerail::forecast
