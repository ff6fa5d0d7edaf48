#include "core/forecast/stage_one.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/site_equations_inside.h"
#include "core/forecast/spread_estimate.h"

namespace kneerail::forecast {

namespace {

using Globals = Eigen::Matrix<double, global_count, 1>;

/// Prior means and precisions of the globals.
void add_global_priors(Matrix& equations, Globals& right) {
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
}

/// Sites' shares added in site order by one thread.
bool solve_globals(const std::vector<SiteEquations>& sites, SharedEffects& effects) {
  Matrix equations = Matrix::Zero(global_count, global_count);
  Globals right = Globals::Zero();
  add_global_priors(equations, right);
  for (const SiteEquations& site : sites) {
    if (!site.solved) return false;
    equations += site.onto_globals;
    right += site.onto_globals_right;
  }
  Matrix inverse;
  if (!invert(equations, inverse)) return false;
  const Globals solution = inverse * right;
  std::copy_n(solution.data(), global_count, effects.globals.begin());
  std::copy_n(inverse.data(), global_count * global_count, effects.global_covariance.begin());
  return true;
}

/// Second moments of the shared effects of one kind over all sites.
struct EffectMoments {
  Moments offset, gain, site, zone, run, batch;
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
    const double own = square(e.layout.offset(s));
    moments.offset.add(own * (constant::offset_tail + 1) /
                       (constant::offset_tail + own / offset_variance));
  }
  if (sessions > 0) moments.site.add(square(e.layout.site()));
  for (int z = 0; z < e.layout.zones; ++z)
    if (e.zone_seen[static_cast<std::size_t>(z)] != 0) moments.zone.add(square(e.layout.zone(z)));
  for (std::size_t r = 0; r < e.run_seen.size(); ++r) {
    if (e.run_seen[r] == 0) continue;
    const double rate = site.runs[r * run_unknowns];
    const double batch = site.runs[r * run_unknowns + 1];
    const double* own = &site.run_covariance[r * run_unknowns * run_unknowns];
    moments.run.add(rate * rate + own[0]);
    moments.batch.add(batch * batch + own[3]);
  }
}

Spreads moved_spreads(const std::vector<SiteEquations>& sites, const SharedEffects& effects) {
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
  }
  Spreads spreads;
  spreads.rate = moved(constant::rate_spread, {sums.rate, sums.segments});
  spreads.start = moved(constant::start_spread, {sums.start, sums.starts});
  spreads.rest_um = moved(constant::rest_spread, {sums.rest, sums.means});
  spreads.offset_um = moved(constant::offset_spread, moments.offset);
  spreads.gain = moved(constant::gain_spread, moments.gain);
  spreads.site = moved(constant::site_spread, moments.site);
  spreads.zone = moved(constant::zone_spread, moments.zone);
  spreads.run = moved(constant::run_spread, moments.run);
  spreads.batch = moved(constant::batch_spread, moments.batch);
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
    eliminate_site(data, effects.spreads, i, own);
  });
  if (options.workers.stopped() || !solve_globals(equations, effects)) return false;
  std::vector<double> moves(data.sites.size(), 0.0);
  for_each_unit(sites, options.workers, [&](int i) {
    const auto place = static_cast<std::size_t>(i);
    SiteEffects after;
    solve_site(equations[place], effects, after);
    moves[place] = largest_move(equations[place], effects.sites[place], after);
    effects.sites[place] = std::move(after);
  });
  if (options.workers.stopped()) return false;
  effects.largest_move_ln = *std::max_element(moves.begin(), moves.end());
  if (options.move_spreads) effects.spreads = moved_spreads(equations, effects);
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
