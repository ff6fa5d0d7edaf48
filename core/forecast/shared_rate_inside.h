#pragma once

// The normal equations of one site's shared rate effects and its scores. Includes Eigen: only for
// .cpp files.

#include "core/forecast/dense_inside.h"
#include "core/forecast/shared_rate.h"

namespace kneerail::forecast {

/// Places of the unknowns of a site: its own, its zones, then the globals.
struct RateCore {
  int zones = 0;
  int globals = 0;

  [[nodiscard]] int zone(int zone_in_site) const { return 1 + zone_in_site; }
  [[nodiscard]] int own() const { return 1 + zones; }
  [[nodiscard]] int global(int place) const { return own() + place; }
  [[nodiscard]] int size() const { return own() + globals; }
};

RateCore rate_core(const RateLayout& layout, int site);

/// The places that a part's prior mean adds up; `count` of them.
struct RatePlaces {
  std::array<int, 6> place{};
  int count = 0;
};
RatePlaces rate_places(const RateCore& core, const RatePart& part);

struct RateEquations {
  Matrix core;  ///< own unknowns and globals, square
  Vector right;
  Matrix runs;  ///< a row per run, columns as core
  Vector run_blocks;
  Vector runs_right;
  std::vector<char> zone_seen;
  std::vector<char> run_seen;
  bool seen = false;
  Vector score;        ///< of the scored parameters
  Matrix score_outer;  ///< sum over parts of score times score'
  double ln_likelihood = 0;
  // After eliminate_rates():
  Matrix reach;  ///< own unknowns by globals: A^-1 B
  Matrix own_inverse;
  Vector own_given;
  Matrix onto_globals;
  Vector onto_globals_right;
  bool solved = true;
};

/// What a pass holds fixed: the normal effects as estimated, tau and the own parameters.
struct RatePass {
  const RateLayout& layout;
  const RateSettings& settings;
  const RateFit& fit;
};

/// Sweeps the parts of a site into its equations and scores.
void sweep_rates(const RatePass& pass, RateLikelihood& likelihood, int site,
                 RateEquations& equations);

/// Adds the priors of the site's own unknowns; eliminates runs, then them.
void eliminate_rates(const RatePass& pass, int site, RateEquations& equations);

/// The site's effects once the globals and their covariance stand in the fit.
void solve_rates(const RatePass& pass, int site, const RateEquations& equations,
                 RateSiteEffects& effects);

/// Number and order of scored parameters: the centre if there is one, the own ones, ln tau.
inline int scored_count(const RateSettings& settings) {
  return (settings.centre >= 0 ? 1 : 0) + static_cast<int>(settings.own.size()) + 1;
}

}  // namespace kneerail::forecast
