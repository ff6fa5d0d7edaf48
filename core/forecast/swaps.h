#pragma once

// Replacements nobody recorded. A coating does not grow: where the readings rise, the evidence of
// one coating is weighed against that of two, the second a fresh part from the middle of the gap.
// A rise on many parts of one session is a gauge, and the session's effect has taken it already.

#include "core/forecast/coating_data.h"
#include "core/forecast/parallel.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

/// Cuts segments in two where a swap is likely (chance 1 % before the readings, odds over 3 after),
/// with the weights of both parts set back to 1. Returns how many cuts were made.
/// Stopped workers leave the data fit for nothing but to be thrown away.
int cut_unrecorded_swaps(CoatingData& data, const SharedEffects& effects, const Workers& workers);

}  // namespace kneerail::forecast
