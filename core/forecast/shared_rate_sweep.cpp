// One pass over the parts of a site: nodes, pseudo-readings, scores.

#include <algorithm>

#include "core/forecast/node_grid.h"
#include "core/forecast/shared_rate_inside.h"

namespace kneerail::forecast {

namespace {

constexpr double pseudo_precision_least = 1e-6;

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

}  // namespace

void sweep_rates(const RatePass& pass, RateLikelihood& likelihood, int site,
                 RateEquations& equations) {
  clear(pass, site, equations);
  SiteSweep sweep(pass, likelihood, site, equations);
  const RateSite& own = pass.layout.sites[static_cast<std::size_t>(site)];
  for (int part = own.first_part; part < own.first_part + own.parts; ++part)
    if (likelihood.tells(part)) sweep.add(part);
}

}  // namespace kneerail::forecast
