#include "core/forecast/shared_rate.h"

#include <algorithm>
#include <cmath>

#include "core/base/result.h"
#include "core/forecast/shared_rate_inside.h"
#include "core/forecast/spread_estimate.h"

namespace kneerail::forecast {

namespace {

constexpr double node_reach_sds = 3.5;
constexpr double pseudo_precision_least = 1e-6;
constexpr double longest_scored_step = 0.5;

/// A part's prior laid on nodes.
class NodeGrid {
 public:
  NodeGrid(int nodes, double mean, double sd) : mean_(mean), sd_(sd) {
    check(nodes > 1, "a grid of nodes has more than one");
    for (int k = 0; k < nodes; ++k) {
      z_.push_back(node_reach_sds * (2.0 * k / (nodes - 1) - 1));
      prior_.push_back(std::exp(-z_.back() * z_.back() / 2));
      x_.push_back(mean + sd * z_.back());
    }
    double sum = 0;
    for (const double p : prior_) sum += p;
    for (double& p : prior_) p /= sum;
  }

  void move(double mean) {
    mean_ = mean;
    for (std::size_t k = 0; k < x_.size(); ++k) x_[k] = mean_ + sd_ * z_[k];
  }

  /// Prior times likelihood, normalised, into `weight`; returns ln of the sum.
  double weigh(const std::vector<double>& ln_likelihood, std::vector<double>& weight) const {
    const double top = *std::max_element(ln_likelihood.begin(), ln_likelihood.end());
    double sum = 0;
    for (std::size_t k = 0; k < x_.size(); ++k) {
      weight[k] = prior_[k] * std::exp(ln_likelihood[k] - top);
      sum += weight[k];
    }
    for (double& w : weight) w /= sum;
    return top + std::log(sum);
  }

  /// Mean of z and of z^2 under weights.
  [[nodiscard]] std::pair<double, double> moments(const std::vector<double>& weight) const {
    double first = 0;
    double second = 0;
    for (std::size_t k = 0; k < z_.size(); ++k) {
      first += weight[k] * z_[k];
      second += weight[k] * z_[k] * z_[k];
    }
    return {first, second};
  }

  [[nodiscard]] const std::vector<double>& x() const { return x_; }
  [[nodiscard]] const std::vector<double>& prior() const { return prior_; }
  [[nodiscard]] double mean() const { return mean_; }
  [[nodiscard]] double sd() const { return sd_; }

  /// Variance in z of a posterior that lies between two nodes: no smaller one can be told.
  [[nodiscard]] double least_variance() const {
    const double step = z_[1] - z_[0];
    return step * step / 12;
  }

 private:
  double mean_;
  double sd_;
  std::vector<double> z_;
  std::vector<double> prior_;
  std::vector<double> x_;
};

/// One site's parts, one after the other, into its equations.
class SiteSweep {
 public:
  SiteSweep(const RatePass& pass, RateLikelihood& likelihood, int site, RateEquations& equations)
      : pass_(pass),
        likelihood_(likelihood),
        site_(site),
        core_(rate_core(pass.layout, site)),
        equations_(equations),
        grid_(pass.settings.nodes, 0, pass.fit.tau),
        ln_likelihood_(grid_.x().size()),
        weight_(grid_.x().size()),
        shifted_(grid_.x().size()),
        prior_square_(grid_.moments(grid_.prior()).second),
        score_(scored_count(pass.settings)) {}

  void add(int part) {
    const RatePrior prior = rate_prior(pass_.layout, pass_.fit, site_, part);
    grid_.move(prior.mean);
    likelihood_.ln_likelihood(part, -1, grid_.x(), ln_likelihood_);
    const double ln_marginal = grid_.weigh(ln_likelihood_, weight_);
    equations_.ln_likelihood += ln_marginal;
    likelihood_.note_posterior(site_, part, grid_.x(), weight_);
    const auto [first, second] = grid_.moments(weight_);
    add_pseudo_reading(part, first, second - first * first);
    // A shared effect off by d moves x - m0 by d (1 - v/tau^2): its uncertainty is part of z^2.
    const double pull = 1 - (second - first * first);
    const double shared = prior.shared_variance / (pass_.fit.tau * pass_.fit.tau);
    add_scores(part, {first, second + pull * pull * shared, ln_marginal});
  }

 private:
  /// Mean and variance of z after the data.
  void add_pseudo_reading(int part, double z_mean, double z_variance) {
    const double variance = std::max(z_variance, grid_.least_variance());
    const double tau_square = grid_.sd() * grid_.sd();
    const double precision = (1 / variance - 1) / tau_square;
    if (precision < pseudo_precision_least) return;
    // (m/v - m0/tau^2)/p with m = m0 + tau z
    const double value = grid_.mean() + z_mean * grid_.sd() / variance / tau_square / precision;
    add_row(part, 1 / (1 / precision + tau_square), value);
  }

  void add_row(int part, double weight, double value) {
    const RatePart& own = pass_.layout.parts[static_cast<std::size_t>(part)];
    const RatePlaces places = rate_places(core_, own);
    equations_.seen = true;
    equations_.zone_seen[static_cast<std::size_t>(own.zone)] = 1;
    if (own.run >= 0) {
      equations_.run_seen[static_cast<std::size_t>(own.run)] = 1;
      equations_.run_blocks(own.run) += weight;
      equations_.runs_right(own.run) += weight * value;
    }
    for (int i = 0; i < places.count; ++i) {
      const int a = places.place[static_cast<std::size_t>(i)];
      if (own.run >= 0) equations_.runs(own.run, a) += weight;
      equations_.right(a) += weight * value;
      for (int j = 0; j < places.count; ++j)
        equations_.core(a, places.place[static_cast<std::size_t>(j)]) += weight;
    }
  }

  /// Of one part given its data: E[z], E[z^2] and ln of the marginal likelihood.
  struct Given {
    double z;
    double z_square;
    double ln_marginal;
  };

  void add_scores(int part, const Given& given) {
    const RateSettings& settings = pass_.settings;
    Eigen::Index at = 0;
    if (settings.centre >= 0) score_(at++) = given.z / grid_.sd();
    for (std::size_t k = 0; k < settings.own.size(); ++k) {
      score_(at) = 0;
      if (likelihood_.depends(part, static_cast<int>(k))) {
        likelihood_.ln_likelihood(part, static_cast<int>(k), grid_.x(), shifted_);
        score_(at) = (grid_.weigh(shifted_, weight_) - given.ln_marginal) / settings.own[k].step;
      }
      ++at;
    }
    score_(at) = given.z_square - prior_square_;
    equations_.score += score_;
    equations_.score_outer.noalias() += score_ * score_.transpose();
  }

  const RatePass& pass_;
  RateLikelihood& likelihood_;
  int site_;
  RateCore core_;
  RateEquations& equations_;
  NodeGrid grid_;
  std::vector<double> ln_likelihood_;
  std::vector<double> weight_;
  std::vector<double> shifted_;
  double prior_square_;
  Vector score_;
};

void clear(const RatePass& pass, int site, RateEquations& e) {
  const RateCore core = rate_core(pass.layout, site);
  const RateSite& own = pass.layout.sites[static_cast<std::size_t>(site)];
  const int scored = scored_count(pass.settings);
  e = RateEquations{};
  e.core = Matrix::Zero(core.size(), core.size());
  e.right = Vector::Zero(core.size());
  e.runs = Matrix::Zero(own.runs, core.size());
  e.run_blocks = Vector::Zero(own.runs);
  e.runs_right = Vector::Zero(own.runs);
  e.zone_seen.assign(static_cast<std::size_t>(own.zones), 0);
  e.run_seen.assign(static_cast<std::size_t>(own.runs), 0);
  e.score = Vector::Zero(scored);
  e.score_outer = Matrix::Zero(scored, scored);
}

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

void sweep_rates(const RatePass& pass, RateLikelihood& likelihood, int site,
                 RateEquations& equations) {
  clear(pass, site, equations);
  SiteSweep sweep(pass, likelihood, site, equations);
  const RateSite& own = pass.layout.sites[static_cast<std::size_t>(site)];
  for (int part = own.first_part; part < own.first_part + own.parts; ++part)
    if (likelihood.tells(part)) sweep.add(part);
}

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
