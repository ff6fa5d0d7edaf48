#pragma once

// Stage 2: one part's segment on its own. u = ln of the part's rate has a prior of long tails
// about its group's; given u, start and readings are jointly normal:
//
//   y ~ N(c0(u) - e^u h + beta(u), V)     V does not depend on u
//
// so after one Cholesky the density of u needs six dot products. It is held on nodes placed by
// u = mode + 0.9 s sinh(x); given a node, the start of the coating is normal with one variance.

#include <array>
#include <vector>

#include "core/forecast/coating_data.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

struct RateNode {
  double weight = 0;
  double ln_rate = 0;   ///< um per year, 20-year mean
  double start_um = 0;  ///< mean of the start given the rate
};

struct Posterior {
  std::array<RateNode, constant::node_count> nodes{};
  int count = 0;
  double start_variance = 0;  ///< given a node, um^2
  double ln_evidence = 0;
  double prior_centre = 0;  ///< of ln rate before the part's own readings
  double prior_variance = 0;
  double own_share = 0;  ///< 1 - variance after / variance before
  int numbers = 0;       ///< visit means that entered as numbers
  int gone = 0;
};

enum class MeanWeights { as_fitted, all_one };

/// Readings of a segment that a posterior takes in, and how.
struct PosteriorInput {
  const CoatingData* data;
  const SharedEffects* effects;
  MeanWeights weights = MeanWeights::as_fitted;
};

/// Of a segment's visible readings (Segment::visible of them).
Posterior segment_posterior(const PosteriorInput& input, const Segment& segment);

/// Mean and variance of what a session adds to a reading of so many um.
struct Correction {
  double mean_um;
  double variance;
};
Correction session_correction(const CoatingData& data, const SharedEffects& effects,
                              std::int32_t session, double thickness_um);

/// Spread of the whole posterior about its centre times `scale`.
Posterior scaled(Posterior posterior, double scale);

}  // namespace kneerail::forecast
