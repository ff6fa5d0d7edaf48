#include "core/forecast/wall/wall_forecast.h"

#include <algorithm>
#include <utility>

#include "core/forecast/constants.h"
#include "core/forecast/wall/wall_outlook.h"
#include "core/forecast/wall/wall_questions.h"
#include "core/forecast/wall/wall_words.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

constexpr const char* not_computed_words = "not computed: numerical";

class WallReport {
 public:
  WallReport(const CoatingModel* coating, const Portfolio& portfolio, std::optional<Date> on,
             const WallPaths* kept)
      : questions_(coating, portfolio, kept), on_(on) {}

  [[nodiscard]] const WallData& data() const { return questions_.data(); }

  [[nodiscard]] WallForecast row(const WallTube& tube) const {
    WallForecast row;
    row.part = tube.place;
    row.readings_used = static_cast<int>(tube.readings.size());
    row.flags = part_flags(tube);
    auto why_not = questions_.ask(tube, [&](const AskedWall& asked) {
      row.own_share = asked.own_share;
      row.has_years = asked.has_years;
      answer(asked.question, row);
    });
    if (why_not) row.words = std::move(*why_not);
    return row;
  }

 private:
  [[nodiscard]] std::vector<std::string> part_flags(const WallTube& tube) const {
    std::vector<std::string> flags = reading_flags(tube);
    if (auto words = put_up_later_words(part_of(tube.place), data().as_of))
      flags.push_back(std::move(*words));
    return flags;
  }

  [[nodiscard]] const Part& part_of(std::int32_t place) const {
    return questions_.portfolio().parts[static_cast<std::size_t>(place)];
  }

  void answer(const WallQuestion& question, WallForecast& row) const {
    const WallOutlook outlook(question);
    if (!outlook.computed()) {
      row.words = not_computed_words;
      return;
    }
    row.answered = true;
    if (row.has_years) row.years = outlook.quantiles();
    for (std::size_t i = 0; i < row.p_by.size(); ++i) {
      row.p_by[i] = outlook.chance_by(chance_years[i]);
      if (i > 0) row.p_by[i] = std::max(row.p_by[i], row.p_by[i - 1]);
    }
    if (on_) row.p_on = std::max(outlook.chance_by(years_between(data().as_of, *on_)), row.p_by[0]);
    row.wall_now_mm = outlook.wall_now_mm();
    row.zinc_gone_now = outlook.zinc_gone_now();
    row.open_chance = outlook.open_chance();
    row.steel_um_per_year = outlook.steel_um_per_year();
    row.words = wall_words(*question.tube, row, part_of(row.part).painted);
    for (std::string& flag : wall_flags(*question.tube, row)) row.flags.push_back(std::move(flag));
    row.sentence = wall_sentence(*question.tube, row);
  }

  WallQuestions questions_;
  std::optional<Date> on_;
};

}  // namespace

Result<WallForecasts> report_walls(const CoatingModel* coating, const Portfolio& portfolio,
                                   const Workers& workers, std::optional<Date> on,
                                   const WallPaths* kept) {
  const double exponent = portfolio.settings.steel_path_exponent;
  if (!(exponent >= constant::path_exponent_least && exponent <= 1))
    return fail(Fault::invalid_input,
                "Wall forecast: the exponent of the steel's path must be 0.5 to 1. Nothing was "
                "computed; the readings are as they were. Set it again.");
  const WallReport report(coating, portfolio, on, kept);
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
  if (model) return report_walls(&*model, portfolio, workers, options.on);
  if (model.error().fault != Fault::not_estimable) return fail(model.error());
  return report_walls(nullptr, portfolio, workers, options.on);
}

LimitForecast limit_row(const WallForecast& tube) {
  LimitForecast row;
  row.part = tube.part;
  row.limit = Limit::wall_limit;
  row.answered = tube.answered;
  row.has_years = tube.has_years;
  row.years = tube.years;
  row.p_by = tube.p_by;
  row.p_on = tube.p_on;
  row.readings_used = tube.readings_used;
  row.own_share = tube.own_share;
  row.words = tube.words;
  row.sentence = tube.sentence;
  row.flags = tube.flags;
  return row;
}

}  // namespace kneerail::forecast
