#include "core/forecast/all_limits.h"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

#include "core/forecast/one_part.h"
#include "core/forecast/preparation.h"
#include "core/forecast/wall/wall_forecast.h"

namespace kneerail::forecast {

namespace {

void sort_rows(const Portfolio& portfolio, std::vector<LimitForecast>& rows) {
  std::stable_sort(rows.begin(), rows.end(), [&](const auto& a, const auto& b) {
    const auto& one = portfolio.parts[static_cast<std::size_t>(a.part)].id;
    const auto& other = portfolio.parts[static_cast<std::size_t>(b.part)].id;
    return std::tie(one, a.limit) < std::tie(other, b.limit);
  });
}

template <class Report>
void add_what_is_said(const Report& report, OtherLimits& all) {
  all.left_out.insert(all.left_out.end(), report.left_out.begin(), report.left_out.end());
  all.notes.insert(all.notes.end(), report.notes.begin(), report.notes.end());
}

template <class T>
void append(std::vector<T>& to, std::vector<T>& from) {
  to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

/// What takes a row's place where the part came after the fit.
LimitForecast not_yet(Limit limit, const Error& why) {
  LimitForecast row;
  row.limit = limit;
  row.words = why.message;
  return row;
}

const WallPaths* paths_of(const FittedCoating& coating) {
  return coating.wall_paths ? &*coating.wall_paths : nullptr;
}

Result<> add_coating_and_wall(const FittedCoating& coating, const Portfolio& one,
                              std::vector<LimitForecast>& rows) {
  std::optional<CoatingModel> own;
  if (coating.model && why_not_served(one.parts.front()).empty()) {
    auto model = model_of_one_part(*coating.model, one);
    if (!model) return fail(model.error());
    own = std::move(*model);
    rows = rows_of_one_model(*own, one);
  } else if (coating.model) {
    auto said = forecast_one_part(*coating.model, one);
    if (!said) return fail(said.error());
    rows = std::move(*said);
  }
  const auto walls =
      report_walls(own ? &*own : nullptr, one, {.threads = 1}, {}, paths_of(coating));
  if (!walls) return fail(walls.error());
  for (const auto& tube : walls->tubes) rows.push_back(limit_row(tube));
  return Done{};
}

void add_screws_and_grades(const OtherModels& others, const Portfolio& one,
                           std::vector<LimitForecast>& rows) {
  const auto screws = screws_of_one_part(others.screws, one);
  if (!screws)
    rows.push_back(not_yet(Limit::torque_minimum, screws.error()));
  else if (*screws)
    rows.push_back(limit_row(**screws));
  auto grades = grades_of_one_part(others.grades, one);
  if (!grades)
    rows.push_back(not_yet(Limit::grade_5, grades.error()));
  else
    for (auto& row : *grades) rows.push_back(limit_row(std::move(row)));
}

}  // namespace

Result<FittedCoating> fit_any_coating(const Portfolio& portfolio, const RunOptions& options) {
  if (portfolio.parts.empty())
    return fail(Fault::not_estimable, "Forecast: there is no part. Nothing was changed.");
  auto coating = coating_or_why(fit_coating_model(portfolio, options));
  if (coating && WallPaths::there_are(portfolio.settings))
    coating->wall_paths.emplace(portfolio.settings);
  return coating;
}

Result<FittedCoating> coating_or_why(Result<CoatingModel> model) {
  FittedCoating coating;
  if (model)
    coating.model = std::move(*model);
  else if (model.error().fault != Fault::not_estimable)
    return fail(model.error());
  else
    coating.why_none = model.error().message;
  return coating;
}

Result<CoatingForecast> report_any_coating(const FittedCoating& coating, const Portfolio& portfolio,
                                           const RunOptions& options) {
  if (coating.model) return report_coating(*coating.model, portfolio, options);
  CoatingForecast none;
  none.notes.push_back(coating.why_none);
  none.left_out = portfolio.left_out;
  return none;
}

Result<OtherModels> fit_other_limits(const Portfolio& portfolio, const RunOptions& options) {
  const Workers workers{.threads = options.threads, .stop = options.stop};
  auto screws = fit_screw_model(portfolio, workers);
  if (!screws) return fail(screws.error());
  auto grades = fit_grade_model(portfolio, {.workers = workers});
  if (!grades) return fail(grades.error());
  return OtherModels{std::move(*screws), std::move(*grades)};
}

Result<OtherLimits> report_other_limits(const FittedCoating& coating, const OtherModels& others,
                                        const Portfolio& portfolio, const RunOptions& options) {
  const Workers workers{.threads = options.threads, .stop = options.stop};
  auto walls = report_walls(coating.model ? &*coating.model : nullptr, portfolio, workers,
                            options.on, paths_of(coating));
  if (!walls) return fail(walls.error());
  ScrewOptions screw_options;
  screw_options.threads = options.threads;
  screw_options.stop = options.stop;
  screw_options.date = options.on;
  const auto screws = report_screws(others.screws, portfolio, screw_options);
  if (!screws) return fail(screws.error());
  auto grades = report_grades(others.grades, portfolio, {.by = options.on, .workers = workers});
  if (!grades) return fail(grades.error());
  OtherLimits made;
  for (const auto& tube : walls->tubes) made.rows.push_back(limit_row(tube));
  for (const auto& fitting : screws->fittings) made.rows.push_back(limit_row(fitting));
  for (auto& row : grades->rows) made.rows.push_back(limit_row(std::move(row)));
  append(made.left_out, walls->left_out);
  add_what_is_said(*screws, made);
  add_what_is_said(*grades, made);
  made.inspectors = std::move(grades->habits);
  sort_rows(portfolio, made.rows);
  return made;
}

void sort_left_out(std::vector<LeftOut>& left_out) {
  std::sort(left_out.begin(), left_out.end(), [](const LeftOut& a, const LeftOut& b) {
    return std::tie(a.part, a.reading, a.reason) < std::tie(b.part, b.reading, b.reason);
  });
}

Result<AllLimits> forecast_all_limits(const Portfolio& portfolio, const RunOptions& options) {
  const auto coating = fit_any_coating(portfolio, options);
  if (!coating) return fail(coating.error());
  auto said = report_any_coating(*coating, portfolio, options);
  if (!said) return fail(said.error());
  const auto models = fit_other_limits(portfolio, options);
  if (!models) return fail(models.error());
  auto others = report_other_limits(*coating, *models, portfolio, options);
  if (!others) return fail(others.error());
  AllLimits made{std::move(*said), std::move(others->inspectors)};
  append(made.all.limits, others->rows);
  append(made.all.left_out, others->left_out);
  append(made.all.notes, others->notes);
  sort_rows(portfolio, made.all.limits);
  sort_left_out(made.all.left_out);
  return made;
}

Result<std::vector<LimitForecast>> all_limits_of_one_part(const FittedCoating& coating,
                                                          const OtherModels* others,
                                                          const Portfolio& one) {
  if (one.parts.size() != 1)
    return fail(Fault::invalid_input,
                "Forecast of one part: exactly one part must be given. Nothing was computed.");
  std::vector<LimitForecast> rows;
  if (auto done = add_coating_and_wall(coating, one, rows); !done) return fail(done.error());
  if (others != nullptr) add_screws_and_grades(*others, one, rows);
  sort_rows(one, rows);
  return rows;
}

}  // namespace kneerail::forecast
