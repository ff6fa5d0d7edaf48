#pragma once

// Stage 1: the effects that parts share, by repeated least squares. Each pass sweeps all segments
// of each site into normal equations (site_equations_inside.h), eliminates the runs, then the
// sites, and solves for the globals; then the spreads move one step of expectation-maximisation,
// and visit means that do not fit lose weight.

#include "core/forecast/coating_data.h"
#include "core/forecast/parallel.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

struct StageOneOptions {
  int passes = 0;
  Workers workers = {};
  bool move_spreads = true;
  bool move_weights = true;  ///< of visit means and of batches
};

/// Continues from `start` (first_effects() for a fresh fit). Writes the weights into data.means.
/// computed is false in the result when the equations could not be solved or the workers were
/// stopped.
SharedEffects fit_shared_effects(CoatingData& data, SharedEffects start,
                                 const StageOneOptions& options);

/// Passes for a portfolio of so many parts.
int usual_passes(std::size_t parts);

}  // namespace kneerail::forecast
