#pragma once

// One log rate per part, learnt by all parts together; for data that do not make a rate a straight
// regression (set screws, condition grades).
//
//   x_i = sum of the part's global effects + site + zone + run + N(0, tau^2)      x_i = ln rate
//   P(data of i | x_i) is any function; it is asked for on a few nodes of x only.
//
// Model of the shared effects: globals normal with given mean and sd; site, zone, run normal about
// 0 with sds estimated. Each pass:
//   1. Per part: nodes at equal steps in +-3.5 tau about its prior mean m0, prior times likelihood;
//      posterior mean m and variance v. They become a pseudo-reading of x_i with precision
//      p = 1/v - 1/tau^2 and value (m/v - m0/tau^2)/p, whose weight in the regression is
//      1/(1/p + tau^2). Its normal equations are the exact score: weight * (value - m0)
//      = (m - m0)/tau^2, so the fixed point is that of the marginal likelihood.
//   2. Normal equations per site, runs eliminated, then the site's own, then the globals; sites'
//      shares are added in site order by one thread (same digits for any number of threads).
//   3. sds of site, zone, run by EM with a weak prior (spread_estimate.h).
//   4. ln tau and the likelihood's own parameters by one scoring step with the outer product of the
//      per-part scores (Berndt, Hall, Hall and Hausman 1974) and normal priors, each clipped. The
//      score of ln tau is E[z^2 | data] - E[z^2], z = (x - m0)/tau, with what the uncertainty of
//      the shared effects adds to z^2, (1 - v/tau^2)^2 Var(shared)/tau^2 (without it tau comes out
//      too small, as by maximum likelihood against REML); own parameters by a forward difference
//      of the marginal likelihood, whose estimate is off by half its step.
// Source of the regression on pseudo-readings: the Gaussian approximation of a site given its
// cavity, as in expectation propagation (Minka 2001), with the part effect inside the site.
// Limits: x within 3.5 sds of its prior; a posterior much narrower than a node step (tau * 7/30) is
// taken as that wide.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/forecast/constants.h"
#include "core/forecast/parallel.h"

namespace kneerail::forecast {

/// Which effects make a part's prior mean.
struct RatePart {
  std::int32_t zone = 0;  ///< within its site
  std::int32_t run = -1;  ///< within its site; -1: no run effect
  std::array<std::int8_t, 4> globals{};
  std::int8_t global_terms = 0;

  void add_global(int place) {
    globals[static_cast<std::size_t>(global_terms++)] = static_cast<std::int8_t>(place);
  }
};

/// Ranges in RateLayout::parts; a unit of work for threads.
struct RateSite {
  std::int32_t first_part = 0;
  std::int32_t parts = 0;
  std::int32_t zones = 0;
  std::int32_t runs = 0;
};

/// A shared effect with its prior; ln units.
struct GlobalEffect {
  double mean = 0;
  double sd = 1;
  double start = 0;  ///< where the passes begin
};

struct RateLayout {
  std::vector<GlobalEffect> globals;
  std::vector<RateSite> sites;
  std::vector<RatePart> parts;  ///< by site
};

/// A number moved by scoring steps, with its normal prior.
struct ScoredParameter {
  double mean = 0;
  double sd = 1;
  double start = 0;
  double step = 0.02;  ///< of the forward difference
  double least = -constant::no_cap;
  double most = constant::no_cap;
};

struct RateSettings {
  int nodes = 31;
  int passes = 10;
  constant::Spread site{0.2, 3, 0.02, constant::no_cap};
  constant::Spread zone{0.3, 3, 0.02, constant::no_cap};
  constant::Spread run{0.15, 10, 0.02, constant::no_cap};
  ScoredParameter ln_tau;
  std::vector<ScoredParameter> own;  ///< of the likelihood
  /// Place among the globals of a centre that goes with the own parameters (a time scale, say): it
  /// takes part in their scoring step, and what it moves there beyond its own share is added to
  /// what the normal equations say. -1: none.
  int centre = -1;
  double widening = 1;  ///< of tau^2 in what is said of a part, rate_nodes()
  Workers workers;
};

/// What the parts' data say. Const functions are called from many threads, each site by one at a
/// time.
class RateLikelihood {
 public:
  virtual ~RateLikelihood() = default;

  /// Before each pass, by one thread: the own parameters as they stand now.
  virtual void begin_pass(std::span<const double> own) = 0;
  /// False: the part has no data and its likelihood is flat.
  [[nodiscard]] virtual bool tells(int part) const = 0;
  /// Whether own parameter k bears on that part.
  [[nodiscard]] virtual bool depends(int part, int k) const = 0;
  /// ln likelihood of all data of the part at each x, up to a constant of the part; finite.
  /// shifted -1: own parameters as they stand; k: parameter k larger by its step.
  virtual void ln_likelihood(int part, int shifted, std::span<const double> x,
                             std::span<double> out) const = 0;
  /// The part's posterior weights on its nodes (sum 1), for sums of the caller's own: per site, one
  /// thread at a time; end_pass() by one thread after all sites.
  virtual void note_posterior(int /*site*/, int /*part*/, std::span<const double> /*x*/,
                              std::span<const double> /*weights*/) {}
  virtual void end_pass() {}
};

/// Estimates of a site: its own effect, its zones, then a copy of the globals.
struct RateSiteEffects {
  std::vector<double> core;
  std::vector<double> covariance;  ///< of core, square, row by row
  std::vector<double> runs;
  std::vector<double> run_cross;     ///< per run: its covariance with core
  std::vector<double> run_variance;  ///< per run
  std::vector<char> zone_seen;       ///< 1: data tell about it
  std::vector<char> run_seen;
};

struct RateFit {
  double tau = 0;
  std::vector<double> own;     ///< parameters of the likelihood
  std::vector<double> own_sd;  ///< from the scoring step's matrix
  double site_sd = 0;
  double zone_sd = 0;
  double run_sd = 0;
  std::vector<double> globals;
  std::vector<double> global_covariance;  ///< square, row by row
  std::vector<RateSiteEffects> sites;
  double ln_likelihood = 0;    ///< marginal, of the last pass, up to constants of the parts
  double largest_move_ln = 0;  ///< of site + zone in the last pass
  bool computed = true;        ///< false: the equations could not be solved
  bool stopped = false;        ///< the workers were; nothing here is to be used
};

/// The passes, from the start of every parameter.
RateFit fit_shared_rate(const RateLayout& layout, RateLikelihood& likelihood,
                        const RateSettings& settings);

/// What is said of the parts of one site needs: that site alone of all, in the fit and among the
/// sites of the layout (without its parts). Place of the site; -1: none.
RateFit fit_of_site(const RateFit& all, std::ptrdiff_t site);
RateLayout layout_of_site(const RateLayout& all, std::ptrdiff_t site);

/// Mean of a part's x before its own data, and the variance of that mean (of shared effects only).
struct RatePrior {
  double mean = 0;
  double shared_variance = 0;
};

RatePrior rate_prior(const RateLayout& layout, const RateFit& fit, int site, int part);

/// A part's x given everything.
struct RateNodes {
  std::vector<double> x;
  std::vector<double> weight;  ///< sum 1
  double mean = 0;
  double variance = 0;
  double own_share = 0;  ///< share of its information from the part's own data, 0 to 1
};

/// The x under which that share of the weight lies, each node's weight spread evenly over the
/// step around it.
double quantile(const RateNodes& nodes, double level);

/// Nodes in +-3.5 sds of prior variance widening * tau^2 + Var(shared); shared effects held.
RateNodes rate_nodes(const RateLayout& layout, const RateFit& fit, const RateLikelihood& likelihood,
                     const RateSettings& settings, int site, int part);

}  // namespace kneerail::forecast
