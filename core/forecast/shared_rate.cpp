#include "core/forecast/shared_rate.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/node_grid.h"
#include "core/forecast/shared_rate_inside.h"
#include "core/forecast/spread_estimate.h"

namespace kneerail::forecast {

namespace {

constexpr double longest_scored_step = 0.5;

RateFit first_fit(const RateLayout& layout, const RateSettings& settings) {
  RateFit fit;
  fit.tau = std::exp(settings.ln_tau.start);
  for (const ScoredParameter& own : settings.own) {
    fit.own.push_back(own.start);
    fit.own_sd.push_back(own.sd);
  }
  fit.site_sd = settings.site.first;
  fit.zone_sd = settings.zone.first;
  fit.run_sd = settings.run.first;
  for (const GlobalEffect& global : layout.globals) fit.globals.push_back(global.start);
  for (int s = 0; s < static_cast<int>(layout.sites.size()); ++s) {
    RateSiteEffects effects;
    effects.core.assign(static_cast<std::size_t>(rate_core(layout, s).own()), 0.0);
    effects.core.insert(effects.core.end(), fit.globals.begin(), fit.globals.end());
    effects.runs.assign(static_cast<std::size_t>(layout.sites[static_cast<std::size_t>(s)].runs),
                        0.0);
    fit.sites.push_back(std::move(effects));
  }
  return fit;
}

/// Sites' shares added in site order by one thread.
bool solve_globals(const RateLayout& layout, const std::vector<RateEquations>& sites,
                   RateFit& fit) {
  const auto n = static_cast<Eigen::Index>(layout.globals.size());
  Matrix equations = Matrix::Zero(n, n);
  Vector right = Vector::Zero(n);
  for (Eigen::Index g = 0; g < n; ++g) {
    const GlobalEffect& global = layout.globals[static_cast<std::size_t>(g)];
    equations(g, g) = 1 / (global.sd * global.sd);
    right(g) = global.mean / (global.sd * global.sd);
  }
  for (const RateEquations& site : sites) {
    if (!site.solved) return false;
    equations += site.onto_globals;
    right += site.onto_globals_right;
  }
  Matrix inverse;
  if (!invert(equations, inverse)) return false;
  const Vector solution = inverse * right;
  fit.globals.assign(solution.data(), solution.data() + n);
  fit.global_covariance.assign(inverse.data(), inverse.data() + n * n);
  return true;
}

/// The scoring step of one pass: the centre if there is one, the own parameters, ln tau.
class ScoringStep {
 public:
  ScoringStep(const RateLayout& layout, const RateSettings& settings, RateFit& fit)
      : layout_(layout),
        settings_(settings),
        fit_(fit),
        first_(settings.centre >= 0 ? 1 : 0),
        count_(scored_count(settings)),
        ln_tau_(std::log(fit.tau)),
        gradient_(Vector::Zero(count_)),
        outer_(Matrix::Zero(count_, count_)) {}

  void add(const RateEquations& site) {
    gradient_ += site.score;
    outer_ += site.score_outer;
    fit_.ln_likelihood += site.ln_likelihood;
  }

  void take() {
    if (first_ == 1) {
      const GlobalEffect& centre = layout_.globals[static_cast<std::size_t>(settings_.centre)];
      add_prior(0, centre.mean, centre.sd, centre_value());
    }
    for (Eigen::Index i = first_; i < count_; ++i)
      add_prior(i, prior(i).mean, prior(i).sd, value(i));
    Matrix inverse;
    fit_.computed = invert(outer_, inverse);
    if (!fit_.computed) return;
    const Vector step = inverse * gradient_;
    for (Eigen::Index i = first_; i < count_; ++i)
      value(i) = std::clamp(value(i) + clipped(step(i)), prior(i).least, prior(i).most);
    for (std::size_t k = 0; k < fit_.own_sd.size(); ++k) {
      const auto i = first_ + static_cast<Eigen::Index>(k);
      fit_.own_sd[k] = std::sqrt(inverse(i, i));
    }
    fit_.tau = std::exp(ln_tau_);
    if (first_ == 1) move_centre(clipped(step(0) - gradient_(0) / outer_(0, 0)));
  }

 private:
  static double clipped(double by) {
    return std::clamp(by, -longest_scored_step, longest_scored_step);
  }

  void add_prior(Eigen::Index i, double mean, double sd, double at) {
    gradient_(i) -= (at - mean) / (sd * sd);
    outer_(i, i) += 1 / (sd * sd);
  }

  [[nodiscard]] const ScoredParameter& prior(Eigen::Index i) const {
    const auto k = static_cast<std::size_t>(i - first_);
    return k < settings_.own.size() ? settings_.own[k] : settings_.ln_tau;
  }
  [[nodiscard]] double& value(Eigen::Index i) {
    const auto k = static_cast<std::size_t>(i - first_);
    return k < fit_.own.size() ? fit_.own[k] : ln_tau_;
  }
  [[nodiscard]] double& centre_value() {
    return fit_.globals[static_cast<std::size_t>(settings_.centre)];
  }

  void move_centre(double by) {
    centre_value() += by;
    for (std::size_t s = 0; s < fit_.sites.size(); ++s) {
      const RateCore core = rate_core(layout_, static_cast<int>(s));
      fit_.sites[s].core[static_cast<std::size_t>(core.global(settings_.centre))] += by;
    }
  }

  const RateLayout& layout_;
  const RateSettings& settings_;
  RateFit& fit_;
  Eigen::Index first_;
  Eigen::Index count_;
  double ln_tau_;
  Vector gradient_;
  Matrix outer_;
};

void move_spreads(const RateLayout& layout, const RateSettings& settings,
                  const std::vector<RateEquations>& sites, RateFit& fit) {
  Moments site;
  Moments zone;
  Moments run;
  for (std::size_t s = 0; s < sites.size(); ++s) {
    const RateSiteEffects& effects = fit.sites[s];
    const RateCore core = rate_core(layout, static_cast<int>(s));
    const auto n = static_cast<std::size_t>(core.size());
    const auto square = [&](int place) {
      const auto i = static_cast<std::size_t>(place);
      return effects.core[i] * effects.core[i] + effects.covariance[i * n + i];
    };
    if (sites[s].seen) site.add(square(0));
    for (int z = 0; z < core.zones; ++z)
      if (sites[s].zone_seen[static_cast<std::size_t>(z)] != 0) zone.add(square(core.zone(z)));
    for (std::size_t r = 0; r < effects.runs.size(); ++r)
      if (sites[s].run_seen[r] != 0)
        run.add(effects.runs[r] * effects.runs[r] + effects.run_variance[r]);
  }
  fit.site_sd = moved(settings.site, site);
  fit.zone_sd = moved(settings.zone, zone);
  fit.run_sd = moved(settings.run, run);
}

double largest_move(const RateCore& core, const std::vector<double>& before,
                    const std::vector<double>& after) {
  double largest = 0;
  for (int z = 0; z < core.zones; ++z) {
    const auto zone = static_cast<std::size_t>(core.zone(z));
    largest = std::max(largest, std::abs(after[0] + after[zone] - before[0] - before[zone]));
  }
  return largest;
}

void one_pass(const RateLayout& layout, RateLikelihood& likelihood, const RateSettings& settings,
              std::vector<RateEquations>& equations, RateFit& fit) {
  const int sites = static_cast<int>(layout.sites.size());
  const RatePass pass{layout, settings, fit};
  likelihood.begin_pass(fit.own);
  for_each_unit(sites, settings.workers, [&](int s) {
    RateEquations& own = equations[static_cast<std::size_t>(s)];
    sweep_rates(pass, likelihood, s, own);
    eliminate_rates(pass, s, own);
  });
  fit.stopped = settings.workers.stopped();
  if (fit.stopped) return;
  likelihood.end_pass();
  fit.computed = solve_globals(layout, equations, fit);
  if (!fit.computed) return;
  std::vector<double> moves(layout.sites.size(), 0.0);
  for_each_unit(sites, settings.workers, [&](int s) {
    const auto place = static_cast<std::size_t>(s);
    RateSiteEffects after;
    solve_rates(pass, s, equations[place], after);
    moves[place] = largest_move(rate_core(layout, s), fit.sites[place].core, after.core);
    fit.sites[place] = std::move(after);
  });
  fit.stopped = settings.workers.stopped();
  if (fit.stopped) return;
  fit.largest_move_ln = *std::max_element(moves.begin(), moves.end());
  move_spreads(layout, settings, equations, fit);
  fit.ln_likelihood = 0;
  ScoringStep step(layout, settings, fit);
  for (const RateEquations& site : equations) step.add(site);
  step.take();
}

}  // namespace

RateFit fit_shared_rate(const RateLayout& layout, RateLikelihood& likelihood,
                        const RateSettings& settings) {
  RateFit fit = first_fit(layout, settings);
  if (layout.sites.empty()) return fit;
  std::vector<RateEquations> equations(layout.sites.size());
  for (int i = 0; i < settings.passes && fit.computed && !fit.stopped; ++i)
    one_pass(layout, likelihood, settings, equations, fit);
  if (fit.computed && !fit.stopped) likelihood.begin_pass(fit.own);
  return fit;
}

double quantile(const RateNodes& nodes, double level) {
  const double step = nodes.x[1] - nodes.x[0];
  double before = 0;
  for (std::size_t k = 0; k < nodes.x.size(); ++k) {
    const double here = nodes.weight[k];
    if (here > 0 && before + here >= level)
      return nodes.x[k] + step * ((level - before) / here - 0.5);
    before += here;
  }
  return nodes.x.back();
}

RateFit fit_of_site(const RateFit& all, std::ptrdiff_t site) {
  // Field by field: the effects of all sites, copied for each, would be the square of them.
  const auto& [tau, own_parameters, own_sd, site_sd, zone_sd, run_sd, globals, global_covariance,
               sites, ln_likelihood, largest_move_ln, computed, stopped] = all;
  RateFit own{tau,     own_parameters,    own_sd, site_sd,       zone_sd,         run_sd,
              globals, global_covariance, {},     ln_likelihood, largest_move_ln, computed,
              stopped};
  if (site >= 0) own.sites.push_back(sites[static_cast<std::size_t>(site)]);
  return own;
}

RateLayout layout_of_site(const RateLayout& all, std::ptrdiff_t site) {
  RateLayout own{all.globals, {}, {}};
  if (site < 0) return own;
  own.sites.push_back(all.sites[static_cast<std::size_t>(site)]);
  own.sites[0].first_part = 0;
  return own;
}

RateNodes rate_nodes(const RateLayout& layout, const RateFit& fit, const RateLikelihood& likelihood,
                     const RateSettings& settings, int site, int part) {
  const RatePrior prior = rate_prior(layout, fit, site, part);
  const double variance = settings.widening * fit.tau * fit.tau + prior.shared_variance;
  const NodeGrid grid(settings.nodes, prior.mean, std::sqrt(variance));
  RateNodes nodes;
  nodes.x = grid.x();
  nodes.weight = grid.prior();
  if (likelihood.tells(part)) {
    std::vector<double> ln_likelihood(nodes.x.size());
    likelihood.ln_likelihood(part, -1, nodes.x, ln_likelihood);
    grid.weigh(ln_likelihood, nodes.weight);
  }
  const auto [first, second] = grid.moments(nodes.weight);
  const double spread = std::max(second - first * first, grid.least_variance());
  nodes.mean = prior.mean + first * grid.sd();
  nodes.variance = spread * variance;
  nodes.own_share = likelihood.tells(part) ? std::clamp(1 - spread, 0.0, 1.0) : 0;
  return nodes;
}

}  // namespace kneerail::forecast
