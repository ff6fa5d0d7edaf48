#include "core/forecast/stage_one.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/site_equations_inside.h"
#include "core/forecast/spread_estimate.h"

namespace kneerail::forecast {

namespace {

/// Prior means and precisions of the globals and the habits.
void add_border_priors(double habit_sd_um, Matrix& equations, Vector& right) {
  const auto add = [&](int place, double mean, double sd) {
    equations(place, place) += 1 / (sd * sd);
    right(place) += mean / (sd * sd);
  };
  add(global_overall, 0, constant::overall_sd);
  for (int kind = 0; kind < kind_count; ++kind) {
    add(global_kind + kind, 0, constant::kind_sd);
    add(global_start_ratio + kind, constant::start_ratio_mean, constant::start_ratio_sd);
  }
  add(global_spray, constant::spray_mean, constant::spray_sd);
  add(global_sheltered, constant::sheltered_mean, constant::sheltered_sd);
  for (int a = global_count; a < static_cast<int>(equations.rows()); ++a) add(a, 0, habit_sd_um);
}

/// Sites' shares added in site order by one thread.
bool solve_border(const std::vector<SiteEquations>& sites, SharedEffects& effects, Border& border) {
  const auto habits = static_cast<Eigen::Index>(effects.habits_um.size());
  Matrix equations = Matrix::Zero(global_count + habits, global_count + habits);
  Vector right = Vector::Zero(global_count + habits);
  add_border_priors(effects.spreads.habit_um, equations, right);
  for (const SiteEquations& site : sites) {
    if (!site.solved) return false;
    equations += site.onto_border;
    right += site.onto_border_right;
  }
  if (!invert(equations, border.covariance)) return false;
  border.estimate = border.covariance * right;
  std::copy_n(border.estimate.data(), global_count, effects.globals.begin());
  for (Eigen::Index i = 0; i < global_count; ++i)
    for (Eigen::Index j = 0; j < global_count; ++j)
      effects.global_covariance[static_cast<std::size_t>(i * global_count + j)] =
          border.covariance(i, j);
  for (Eigen::Index a = 0; a < habits; ++a) {
    effects.habits_um[static_cast<std::size_t>(a)] = border.estimate(global_count + a);
    effects.habit_variance[static_cast<std::size_t>(a)] =
        border.covariance(global_count + a, global_count + a);
  }
  return true;
}

/// Second moments of the shared effects of one kind over all sites.
struct EffectMoments {
  Moments offset, gain, site, zone, run, batch, run_kind, habit;
};

void add_moments(const SiteEquations& e, const SiteEffects& site, double offset_variance,
                 EffectMoments& moments) {
  const auto n = static_cast<std::size_t>(e.layout.with_globals());
  const auto square = [&](int place) {
    const auto i = static_cast<std::size_t>(place);
    return site.core[i] * site.core[i] + site.covariance[i * n + i];
  };
  const auto sessions = std::count(e.session_seen.begin(), e.session_seen.end(), char{1});
  for (int s = 0; s < e.layout.sessions; ++s) {
    if (e.session_seen[static_cast<std::size_t>(s)] == 0) continue;
    moments.gain.add(square(e.layout.gain(s)));
    if (sessions < 2) continue;
    // A drifting gauge is an outlier among sessions: long tails.
    const double own = e.offset_squares[static_cast<std::size_t>(s)];
    moments.offset.add(own * (constant::offset_tail + 1) /
                       (constant::offset_tail + own / offset_variance));
  }
  if (sessions > 0) moments.site.add(square(e.layout.site()));
  for (int z = 0; z < e.layout.zones; ++z)
    if (e.zone_seen[static_cast<std::size_t>(z)] != 0) moments.zone.add(square(e.layout.zone(z)));
  for (std::size_t r = 0; r < e.run_seen.size(); ++r) {
    if (e.run_seen[r] == 0) continue;
    const auto run_square = [&](std::size_t unknown) {
      const std::size_t at = r * run_unknowns + unknown;
      return site.runs[at] * site.runs[at] + site.run_covariance[at * run_unknowns + unknown];
    };
    moments.run.add(run_square(run_rate));
    moments.batch.add(site.batch_weights[r] * run_square(run_batch));
    for (std::size_t k = run_kind_groups; k < run_unknowns; ++k)
      moments.run_kind.add(run_square(k));
  }
}

/// Habits of those who read at a site where habits can be told.
void add_habit_moments(const SharedEffects& effects, EffectMoments& moments) {
  const double prior = effects.spreads.habit_um * effects.spreads.habit_um;
  for (std::size_t a = 0; a < effects.habits_um.size(); ++a)
    if (effects.habit_variance[a] < prior * (1 - 1e-9))
      moments.habit.add(effects.habits_um[a] * effects.habits_um[a] + effects.habit_variance[a]);
}

/// The spread at which the scatter of what spots lost would be as expected; one step towards it.
double moved_spots(const SpreadSums& sums, double spots) {
  if (!(sums.spots_expected > 0)) return spots;
  return std::clamp(spots * std::sqrt(sums.spots_seen / sums.spots_expected),
                    constant::spots_spread.least, constant::spots_spread.most);
}

/// First spreads of site and zone stand for classes as well known as usual.
constant::Spread for_classes(constant::Spread spread, double class_ratio) {
  spread.first *= class_ratio;
  return spread;
}

Spreads moved_spreads(const CoatingData& data, const std::vector<SiteEquations>& sites,
                      const SharedEffects& effects) {
  EffectMoments moments;
  SpreadSums sums;
  const double offset_variance = effects.spreads.offset_um * effects.spreads.offset_um;
  for (std::size_t i = 0; i < sites.size(); ++i) {
    add_moments(sites[i], effects.sites[i], offset_variance, moments);
    const SpreadSums& own = sites[i].sums;
    sums.rate += own.rate;
    sums.segments += own.segments;
    sums.start += own.start;
    sums.starts += own.starts;
    sums.rest += own.rest;
    sums.means += own.means;
    sums.spots_seen += own.spots_seen;
    sums.spots_expected += own.spots_expected;
  }
  add_habit_moments(effects, moments);
  Spreads spreads;
  spreads.rate = moved(constant::rate_spread, {sums.rate, sums.segments});
  spreads.start = moved(constant::start_spread, {sums.start, sums.starts});
  spreads.rest_um = moved(constant::rest_spread, {sums.rest, sums.means});
  spreads.offset_um = moved(constant::offset_spread, moments.offset);
  spreads.gain = moved(constant::gain_spread, moments.gain);
  spreads.site = moved(for_classes(constant::site_spread, data.class_ratio), moments.site);
  spreads.zone = moved(for_classes(constant::zone_spread, data.class_ratio), moments.zone);
  spreads.run = moved(constant::run_spread, moments.run);
  spreads.batch = moved(constant::batch_spread, moments.batch);
  spreads.run_kind = moved(constant::run_kind_spread, moments.run_kind);
  spreads.habit_um = moved(constant::habit_spread, moments.habit);
  spreads.spots = moved_spots(sums, effects.spreads.spots);
  return spreads;
}

double largest_move(const SiteEquations& e, const SiteEffects& before, const SiteEffects& after) {
  double largest = 0;
  for (int z = 0; z < e.layout.zones; ++z) {
    const auto site = static_cast<std::size_t>(e.layout.site());
    const auto zone = static_cast<std::size_t>(e.layout.zone(z));
    largest = std::max(largest, std::abs(after.core[site] + after.core[zone] - before.core[site] -
                                         before.core[zone]));
  }
  return largest;
}

/// One pass; false when the equations could not be solved or nobody waits for them.
bool pass(CoatingData& data, const StageOneOptions& options, std::vector<SiteEquations>& equations,
          SharedEffects& effects) {
  const int sites = static_cast<int>(data.sites.size());
  for_each_unit(sites, options.workers, [&](int i) {
    SiteEquations& own = equations[static_cast<std::size_t>(i)];
    sweep_site(data, effects, i, options.move_weights, own);
    eliminate_site(data, effects, i, own);
  });
  Border border;
  if (options.workers.stopped() || !solve_border(equations, effects, border)) return false;
  std::vector<double> moves(data.sites.size(), 0.0);
  for_each_unit(sites, options.workers, [&](int i) {
    const auto place = static_cast<std::size_t>(i);
    SiteEffects after;
    after.drift_um = effects.sites[place].drift_um;
    solve_site(border, effects.spreads, equations[place], after);
    if (options.move_spreads) after.drift_um = equations[place].drift_um;
    after.batch_weights = std::move(effects.sites[place].batch_weights);
    if (options.move_weights) weigh_batches(equations[place], effects.spreads.batch, after);
    moves[place] = largest_move(equations[place], effects.sites[place], after);
    effects.sites[place] = std::move(after);
  });
  if (options.workers.stopped()) return false;
  effects.largest_move_ln = *std::max_element(moves.begin(), moves.end());
  if (options.move_spreads) effects.spreads = moved_spreads(data, equations, effects);
  return true;
}

}  // namespace

SharedEffects fit_shared_effects(CoatingData& data, SharedEffects start,
                                 const StageOneOptions& options) {
  std::vector<SiteEquations> equations(data.sites.size());
  for (int i = 0; i < options.passes && start.computed; ++i)
    start.computed = pass(data, options, equations, start);
  return start;
}

int usual_passes(std::size_t parts) {
  return parts > constant::many_parts ? constant::passes_many_parts : constant::passes_few_parts;
}

}  // namespace kneerail::forecast
