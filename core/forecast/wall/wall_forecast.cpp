#include "core/forecast/wall/wall_forecast.h"

#include <algorithm>
#include <utility>

#include "core/forecast/coating_readings.h"
#include "core/forecast/constants.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/limit_words.h"
#include "core/forecast/wall/constants.h"
#include "core/forecast/wall/wall_outlook.h"
#include "core/forecast/wall/wall_words.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

/// By place of the part: another tube stands there since, and what was read before says nothing of
/// it.
std::vector<std::optional<Date>> unrecorded_swaps(const CoatingModel* coating,
                                                  const Portfolio& portfolio) {
  std::vector<std::optional<Date>> swapped(portfolio.parts.size());
  if (coating == nullptr) return swapped;
  const CoatingData& data = coating->data;
  for (const CoatingPart& part : data.parts) {
    if (part.segments == 0) continue;
    const Segment& now =
        data.segments[static_cast<std::size_t>(part.first_segment + part.segments - 1)];
    if (now.after_swap) swapped[static_cast<std::size_t>(part.place)] = now.start;
  }
  return swapped;
}

class WallReport {
 public:
  WallReport(const CoatingModel* coating, const Portfolio& portfolio)
      : coating_(coating),
        portfolio_(portfolio),
        zinc_path_(corrosion::AttackPath(portfolio.settings.zinc_path_exponent)),
        steel_attack_(portfolio.settings.steel_path_exponent),
        steel_path_(steel_attack_),
        data_(prepare_walls(portfolio, unrecorded_swaps(coating, portfolio))) {
    if (coating != nullptr) served_ = served_index(portfolio, coating->data);
  }

  [[nodiscard]] const WallData& data() const { return data_; }

  [[nodiscard]] WallForecast row(const WallTube& tube) const {
    WallForecast row;
    row.part = tube.place;
    row.readings_used = static_cast<int>(tube.readings.size());
    row.flags = part_flags(tube);
    if (!tube.why_not.empty()) {
      row.words = tube.why_not;
      return row;
    }
    if (tube.bare)
      answer_bare(tube, row);
    else
      answer_coated(tube, row);
    return row;
  }

 private:
  [[nodiscard]] std::vector<std::string> part_flags(const WallTube& tube) const {
    std::vector<std::string> flags = reading_flags(tube);
    const Part& part = portfolio_.parts[static_cast<std::size_t>(tube.place)];
    if (auto words = put_up_later_words(part, data_.as_of)) flags.push_back(std::move(*words));
    return flags;
  }

  void answer_bare(const WallTube& tube, WallForecast& row) const {
    const bool known = tube.stands_since.has_value();
    if (!known && tube.readings.empty()) {
      row.words = "no reading and no installation date";
      return;
    }
    const Date start = known ? *tube.stands_since : tube.readings.front().day;
    const double age = years_between(start, data_.as_of);
    answer({.tube = &tube,
            .coating = nullptr,
            .clock = {&steel_attack_, age, known},
            .hollow_age_now = age,
            .as_of = data_.as_of,
            .zinc_path = &zinc_path_,
            .steel_path = &steel_path_},
           row);
  }

  void answer_coated(const WallTube& tube, WallForecast& row) const {
    const std::int32_t index = served_.empty() ? -1 : served_[static_cast<std::size_t>(tube.place)];
    if (index < 0) {
      row.words = "no corrosivity class and no rate of its zone is known";
      return;
    }
    const PartView view = view_of({&portfolio_, coating_, nullptr}, index);
    if (!view.posterior) {
      row.words = "no reading and no installation date";
      return;
    }
    row.own_share = view.posterior->own_share;
    const double hollow_age = tube.hollow_since
                                  ? years_between(*tube.hollow_since, data_.as_of)
                                  : view.clock.age_now + wall_constant::unknown_years_before;
    row.has_years = view.clock.start_known || !tube.readings.empty();
    answer({.tube = &tube,
            .coating = &*view.posterior,
            .clock = view.clock,
            .hollow_age_now = hollow_age,
            .as_of = data_.as_of,
            .zinc_path = &zinc_path_,
            .steel_path = &steel_path_},
           row);
  }

  void answer(const WallQuestion& question, WallForecast& row) const {
    const WallOutlook outlook(question);
    row.answered = true;
    if (row.has_years) row.years = outlook.quantiles();
    for (std::size_t i = 0; i < row.p_by.size(); ++i) {
      row.p_by[i] = outlook.chance_by(chance_years[i]);
      if (i > 0) row.p_by[i] = std::max(row.p_by[i], row.p_by[i - 1]);
    }
    row.wall_now_mm = outlook.wall_now_mm();
    row.zinc_gone_now = outlook.zinc_gone_now();
    row.open_chance = outlook.open_chance();
    row.steel_um_per_year = outlook.steel_um_per_year();
    const Part& part = portfolio_.parts[static_cast<std::size_t>(row.part)];
    row.words = wall_words(*question.tube, row, part.painted);
    for (std::string& flag : wall_flags(*question.tube, row)) row.flags.push_back(std::move(flag));
    row.sentence = wall_sentence(*question.tube, row);
  }

  const CoatingModel* coating_;
  const Portfolio& portfolio_;
  PathTable zinc_path_;
  corrosion::AttackPath steel_attack_;
  PathTable steel_path_;
  WallData data_;
  std::vector<std::int32_t> served_;
};

}  // namespace

Result<WallForecasts> report_walls(const CoatingModel* coating, const Portfolio& portfolio,
                                   const Workers& workers) {
  const double exponent = portfolio.settings.steel_path_exponent;
  if (!(exponent >= constant::path_exponent_least && exponent <= 1))
    return fail(Fault::invalid_input,
                "Wall forecast: the exponent of the steel's path must be 0.5 to 1. Nothing was "
                "computed; the readings are as they were. Set it again.");
  const WallReport report(coating, portfolio);
  const auto& tubes = report.data().tubes;
  WallForecasts out;
  out.tubes.resize(tubes.size());
  constexpr std::size_t unit = 32;
  for_each_unit(static_cast<int>((tubes.size() + unit - 1) / unit), workers, [&](int u) {
    const std::size_t first = unit * static_cast<std::size_t>(u);
    for (std::size_t i = first; i < std::min(first + unit, tubes.size()); ++i)
      out.tubes[i] = report.row(tubes[i]);
  });
  if (workers.stopped())
    return fail(Fault::cancelled,
                "Wall forecast: stopped before its end. Nothing was computed; the readings are as "
                "they were. Start it again when it is wanted.");
  out.left_out = report.data().left_out;
  return out;
}

Result<WallForecasts> forecast_walls(const Portfolio& portfolio, const RunOptions& options) {
  const Workers workers{.threads = options.threads, .stop = options.stop};
  const auto model = fit_coating_model(portfolio, options);
  if (model) return report_walls(&*model, portfolio, workers);
  if (model.error().fault != Fault::not_estimable) return fail(model.error());
  return report_walls(nullptr, portfolio, workers);
}

LimitForecast limit_row(const WallForecast& tube) {
  LimitForecast row;
  row.part = tube.part;
  row.limit = Limit::wall_limit;
  row.answered = tube.answered;
  row.has_years = tube.has_years;
  row.years = tube.years;
  row.p_by = tube.p_by;
  row.readings_used = tube.readings_used;
  row.own_share = tube.own_share;
  row.words = tube.words;
  row.sentence = tube.sentence;
  row.flags = tube.flags;
  return row;
}

}  // namespace kneerail::forecast
