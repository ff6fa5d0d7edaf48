#include "core/forecast/limit_report.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/forecast/limit_words.h"
#include "core/forecast/predictive.h"
#include "core/forecast/preparation.h"

namespace kneerail::forecast {

namespace {

std::array<double, 4> chances(const Posterior& posterior, const Clock& clock, double limit_um) {
  std::array<double, 4> out{};
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[i] = std::clamp(chance_by(posterior, clock, limit_um, chance_years[i]), 0.0, 1.0);
    if (i > 0) out[i] = std::max(out[i], out[i - 1]);
  }
  return out;
}

/// 10, 50, 90 % of the rate: the nodes' weights taken as spread evenly between their middles.
std::array<double, 3> rate_quantiles(const Posterior& posterior) {
  constexpr std::array<double, 3> levels{0.1, 0.5, 0.9};
  std::array<std::pair<double, double>, node_count_most> nodes;  // ln rate, weight
  for (std::size_t k = 0; k < static_cast<std::size_t>(posterior.count); ++k)
    nodes[k] = {posterior.nodes[k].ln_rate, posterior.nodes[k].weight};
  std::sort(nodes.begin(), nodes.begin() + posterior.count);
  std::array<double, 3> out{};
  for (std::size_t i = 0; i < levels.size(); ++i) {
    double before = 0;
    double last_at = nodes[0].first;
    double last_sum = 0;
    double ln_rate = nodes[static_cast<std::size_t>(posterior.count - 1)].first;
    for (std::size_t k = 0; k < static_cast<std::size_t>(posterior.count); ++k) {
      const auto& [at, weight] = nodes[k];
      const double sum = before + weight / 2;
      if (sum >= levels[i]) {
        const double share = sum > last_sum ? (levels[i] - last_sum) / (sum - last_sum) : 1;
        ln_rate = last_at + share * (at - last_at);
        break;
      }
      before += weight;
      last_at = at;
      last_sum = sum;
    }
    out[i] = std::exp(ln_rate);
  }
  return out;
}

double mean_start_um(const Posterior& posterior) {
  double sum = 0;
  for (int k = 0; k < posterior.count; ++k)
    sum += posterior.nodes[static_cast<std::size_t>(k)].weight *
           posterior.nodes[static_cast<std::size_t>(k)].start_um;
  return sum;
}

/// What both rows of a part share.
LimitForecast common_row(const ReportContext& context, const PartView& view) {
  LimitForecast row;
  row.part = view.own->place;
  row.readings_used = view.segment->count;
  row.flags = flags_of(context, view);
  if (!view.posterior) return row;
  const Posterior& posterior = *view.posterior;
  row.own_share = posterior.own_share;
  row.rate_um_per_year = rate_quantiles(posterior);
  row.start_um = mean_start_um(posterior);
  row.now_um = median_now_um(posterior, view.clock);
  if (view.segment->count > 0) {
    const auto last = static_cast<std::size_t>(view.segment->first + view.segment->count - 1);
    const VisitMean& mean = context.model->data.means[last];
    row.session_correction_um = -session_correction(context.model->data, context.model->effects,
                                                    mean.session, mean.thickness_um)
                                     .mean_um;
  }
  return row;
}

LimitForecast answered(const ReportContext& context, const PartView& view, LimitForecast row,
                       double limit_um) {
  row.answered = true;
  row.years = limit_quantiles(*view.posterior, view.clock, limit_um);
  row.p_by = chances(*view.posterior, view.clock, limit_um);
  if (context.on)
    row.p_on = std::clamp(chance_by(*view.posterior, view.clock, limit_um,
                                    years_between(context.portfolio->as_of, *context.on)),
                          row.p_by[0], 1.0);
  row.sentence = sentence_of(view, row, limit_um);
  return row;
}

}  // namespace

PartView view_of(const ReportContext& context, int index) {
  const CoatingModel& model = *context.model;
  const CoatingPart& own = model.data.parts[static_cast<std::size_t>(index)];
  PartView view;
  view.own = &own;
  view.part = &context.portfolio->parts[static_cast<std::size_t>(own.place)];
  view.segment =
      &model.data.segments[static_cast<std::size_t>(own.first_segment + own.segments - 1)];
  view.clock = clock_of(model.data, *view.segment);
  if (view.segment->count > 0 || view.segment->start_kind != StartKind::unknown)
    view.posterior = scaled(life_posterior({&model.data, &model.effects}, *view.segment),
                            model.back_dated.spread_scale);
  return view;
}

std::optional<double> owners_chance(const std::array<std::optional<double>, 4>& set,
                                    int consequence) {
  if (consequence < 1) return std::nullopt;
  const auto& chance = set[static_cast<std::size_t>(std::min(consequence, 3))];
  return chance && *chance > 0 && *chance < 1 ? chance : std::nullopt;
}

std::optional<double> set_limit_um(std::optional<double> given) {
  if (given && *given >= 0 && *given <= constant::largest_nominal_um) return given;
  return std::nullopt;
}

double zinc_gone_um(const Portfolio& portfolio, const std::string& site) {
  for (const SiteLimits& limits : portfolio.limits)
    if (limits.site == site) return set_limit_um(limits.zinc_gone_um).value_or(0);
  return 0;
}

std::vector<LimitForecast> limit_rows(const ReportContext& context, int index) {
  const PartView view = view_of(context, index);
  LimitForecast exhausted = common_row(context, view);
  LimitForecast maintenance = exhausted;
  maintenance.limit = Limit::coating_first_maintenance;
  if (view.posterior) {
    exhausted = answered(context, view, std::move(exhausted),
                         zinc_gone_um(*context.portfolio, view.part->site));
    if (const auto limit_um = set_limit_um(view.part->first_maintenance_um))
      maintenance = answered(context, view, std::move(maintenance), *limit_um);
  }
  exhausted.words = words_of(context, view, Limit::coating_exhausted);
  maintenance.words = words_of(context, view, Limit::coating_first_maintenance);
  return {std::move(exhausted), std::move(maintenance)};
}

std::vector<LimitForecast> all_limit_rows(const ReportContext& context, const Workers& workers) {
  const Portfolio& portfolio = *context.portfolio;
  const auto& parts = context.model->data.parts;
  std::vector<std::vector<LimitForecast>> by_part(portfolio.parts.size());
  constexpr std::size_t unit = 64;
  for_each_unit(static_cast<int>((parts.size() + unit - 1) / unit), workers, [&](int u) {
    const std::size_t first = unit * static_cast<std::size_t>(u);
    for (std::size_t i = first; i < std::min(first + unit, parts.size()); ++i)
      by_part[static_cast<std::size_t>(parts[i].place)] = limit_rows(context, static_cast<int>(i));
  });
  std::vector<std::int32_t> order(portfolio.parts.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<std::int32_t>(i);
  std::sort(order.begin(), order.end(), [&](std::int32_t a, std::int32_t b) {
    return portfolio.parts[static_cast<std::size_t>(a)].id <
           portfolio.parts[static_cast<std::size_t>(b)].id;
  });
  std::vector<LimitForecast> rows;
  for (const std::int32_t place : order) {
    auto& own = by_part[static_cast<std::size_t>(place)];
    if (own.empty()) own.push_back(unserved_row(portfolio, place));
    for (LimitForecast& row : own) rows.push_back(std::move(row));
  }
  return rows;
}

LimitForecast unserved_row(const Portfolio& portfolio, std::int32_t place) {
  LimitForecast row;
  row.part = place;
  row.words = why_not_served(portfolio.parts[static_cast<std::size_t>(place)]);
  return row;
}

}  // namespace kneerail::forecast
