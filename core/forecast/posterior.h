#pragma once

// Stage 2: one part's segment on its own. u = ln of the part's rate has a prior of long tails
// about its group's; given u, start and readings are jointly normal:
//
//   y ~ N(c0(u) - e^u h + beta(u), V)     V does not depend on u
//
// so after one Cholesky the density of u needs six dot products. It is held on nodes placed by
// u = mode + 0.9 s sinh(x); given a node, the start of the coating is normal with one variance.
//
// One year is not like another: the loss strays from rate times effective age as a random walk of
// variance 0.27^2 (rate of the group)^2 a year, which V holds: readings years apart tell less of
// the rate than their errors say. What is reckoned is where the line from the last reading on
// would have begun: start_um is the thickness there plus rate times its effective age.

#include <array>
#include <vector>

#include "core/forecast/coating_data.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

struct RateNode {
  double weight = 0;
  double ln_rate = 0;         ///< um per year, 20-year mean
  double start_um = 0;        ///< mean of the start given the rate, of the line from last_read on
  double start_variance = 0;  ///< of the start given the rate, um^2
  double ahead = 1;           ///< loss after the as-of date, times
};

/// Two hypotheses on rust, each with paint that holds or gives way.
inline constexpr int node_count_most = 4 * constant::node_count;

/// Variance of what so many effective years of weather lose more or less than usual, um^2.
inline double weather_um2(double um_per_year, double effective_years) {
  const double sd_um = constant::weather_sd * um_per_year;
  return sd_um * sd_um * (effective_years > 0 ? effective_years : 0);
}

struct Posterior {
  std::array<RateNode, node_count_most> nodes{};
  int count = 0;
  double last_read = 0;  ///< effective age of the last reading; 0: none
  /// Of visit means more than spots that stand for their part would have, um^2: the part's own
  /// thickness is that much less known than its readings say.
  double spots_excess_um2 = 0;
  double ln_evidence = 0;
  double prior_centre = 0;  ///< of ln rate before the part's own readings
  double prior_variance = 0;
  double own_share = 0;  ///< 1 - variance after / variance before
  int numbers = 0;       ///< visit means that entered as numbers
  int gone = 0;          ///< those that entered as bounds
};

enum class MeanWeights { as_fitted, all_one };

/// Readings of a segment that a posterior takes in, and how.
struct PosteriorInput {
  const CoatingData* data;
  const SharedEffects* effects;
  MeanWeights weights = MeanWeights::as_fitted;
};

/// Of a segment's visible readings (Segment::visible of them), its last Segment::over_rust read on
/// rust.
Posterior segment_posterior(const PosteriorInput& input, const Segment& segment);

/// What a forecast is made from: the two best hypotheses on which readings are of rust, by their
/// weights; for a touched-up coating, whose paint gives way with chance 0.4, a loss ahead three
/// times as fast by that chance; and how far spots do not stand for the part.
Posterior life_posterior(const PosteriorInput& input, const Segment& segment);

/// Mean and variance of what a session adds to a reading of so many um.
struct Correction {
  double mean_um;
  double variance;
};
Correction session_correction(const CoatingData& data, const SharedEffects& effects,
                              std::int32_t session, double thickness_um);

/// Means over the nodes, and the variance of ln rate.
struct Centre {
  double ln_rate = 0;
  double start_um = 0;
  double variance = 0;
};
Centre centre_of(const Posterior& posterior);

/// Spread of the whole posterior about its centre times `scale`.
Posterior scaled(Posterior posterior, double scale);

}  // namespace kneerail::forecast
