#include "core/forecast/whole/portfolio_fit.h"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

#include "core/forecast/limit_report.h"
#include "core/forecast/preparation.h"
#include "core/forecast/screws/screw_words.h"
#include "core/forecast/session_report.h"
#include "core/forecast/wall/wall_data.h"
#include "core/forecast/whole/kept_bounds.h"

namespace kneerail::forecast {

namespace {

template <class T>
void append(std::vector<T>& to, std::vector<T>& from) {
  to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

void sort_rows(const Portfolio& portfolio, std::vector<LimitForecast>& rows) {
  std::stable_sort(rows.begin(), rows.end(), [&](const auto& a, const auto& b) {
    const auto& one = portfolio.parts[static_cast<std::size_t>(a.part)].id;
    const auto& other = portfolio.parts[static_cast<std::size_t>(b.part)].id;
    return std::tie(one, a.limit) < std::tie(other, b.limit);
  });
}

}  // namespace

Result<PortfolioFit> fit_portfolio(const Portfolio& portfolio, const RunOptions& options) {
  auto coating = fit_any_coating(portfolio, options);
  if (!coating) return fail(coating.error());
  auto others = fit_other_limits(portfolio, options);
  if (!others) return fail(others.error());
  return fit_of_all(std::move(*coating), std::move(*others));
}

PortfolioFit fit_of_all(FittedCoating coating, OtherModels others) {
  PortfolioFit fit{std::move(coating), std::move(others), {}};
  if (fit.coating.model) fit.sessions = session_reports(*fit.coating.model);
  return fit;
}

ForecastHead head_of(const PortfolioFit& fit) {
  ForecastHead head;
  if (const auto& coating = fit.coating.model) {
    head.sessions = fit.sessions;
    head.track_record = coating->back_dated.rows;
    head.notes = coating_notes(*coating);
    head.largest_move = coating->effects.largest_move_ln;
  } else {
    head.notes.push_back(fit.coating.why_none);
  }
  head.screw_notes = screw_notes(fit.others.screws);
  head.grade_notes = grade_notes(fit.others.grades);
  head.inspectors = inspector_habits(fit.others.grades);
  return head;
}

Result<ForecastRows> rows_of(const PortfolioFit& fit, const Portfolio& portfolio,
                             const RunOptions& options) {
  if (!within(fit, portfolio.parts.size()))
    return fail(Fault::corrupt,
                "Forecast: the fit is of other parts than those it is asked for. Nothing was "
                "computed; the register is as it was. Make the fit again.");
  std::vector<LimitForecast> coatings;
  if (const auto& coating = fit.coating.model)
    coatings = all_limit_rows({&portfolio, &*coating, &fit.sessions, options.on},
                              {.threads = options.threads, .stop = options.stop});
  auto others = report_other_limits(fit.coating, fit.others, portfolio, options);
  if (!others) return fail(others.error());
  return rows_said(fit, portfolio, std::move(coatings), std::move(*others));
}

ForecastRows rows_said(const PortfolioFit& fit, const Portfolio& portfolio,
                       std::vector<LimitForecast> coatings, OtherLimits others) {
  ForecastRows rows{std::move(coatings), {}};
  if (fit.coating.model) rows.left_out = fit.coating.model->data.left_out;
  append(rows.limits, others.rows);
  append(rows.left_out, others.left_out);
  sort_rows(portfolio, rows.limits);
  sort_left_out(rows.left_out);
  return rows;
}

Result<ForecastRows> rows_of_one_part(const PortfolioFit& fit, const Portfolio& one) {
  auto limits = all_limits_of_one_part(fit.coating, &fit.others, one);
  if (!limits) return fail(limits.error());
  ForecastRows rows{std::move(*limits), {}};
  const auto add = [&](const std::vector<LeftOut>& own) {
    rows.left_out.insert(rows.left_out.end(), own.begin(), own.end());
  };
  if (why_not_served(one.parts.front()).empty()) {
    if (fit.coating.model)
      if (const auto data = prepare_coating(one, learnt_from(fit.coating.model->data)))
        add(data->left_out);
  } else {
    for (const Reading& reading : one.readings)
      if (reading.quantity == Quantity::coating_um)
        rows.left_out.push_back(
            {reading.id, one.parts.front().id, left_out_reason(one.parts.front())});
  }
  add(prepare_walls(one).left_out);
  add(gather_tightenings(one, fit.others.screws.installed).left_out);
  add(prepare_grades(one, fit.others.grades.installed).left_out);
  sort_left_out(rows.left_out);
  return rows;
}

std::vector<std::string> notes_of(const ForecastHead& head, bool screws_answered) {
  std::vector<std::string> notes = head.notes;
  const auto add = [&](const std::vector<std::string>& more) {
    notes.insert(notes.end(), more.begin(), more.end());
  };
  if (screws_answered) add(head.screw_notes);
  add(head.grade_notes);
  return notes;
}

AllLimits put_together(const ForecastHead& head, ForecastRows rows,
                       const std::vector<LeftOut>& left_out_before) {
  AllLimits out;
  out.all.sessions = head.sessions;
  out.all.track_record = head.track_record;
  out.all.largest_move = head.largest_move;
  out.inspectors = head.inspectors;
  const bool screws = std::any_of(
      rows.limits.begin(), rows.limits.end(),
      [](const LimitForecast& row) { return row.limit == Limit::torque_minimum && row.answered; });
  out.all.notes = notes_of(head, screws);
  out.all.limits = std::move(rows.limits);
  out.all.left_out = std::move(rows.left_out);
  out.all.left_out.insert(out.all.left_out.end(), left_out_before.begin(), left_out_before.end());
  sort_left_out(out.all.left_out);
  return out;
}

}  // namespace kneerail::forecast
