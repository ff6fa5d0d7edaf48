#pragma once

// The track record: at each site the readings from a day on are hidden, the shared effects fitted
// again to the rest, and each segment's last hidden reading forecast. What fell inside the bands is
// reported; how far the spread should be drawn in or out, one scale for all, is learnt from it.

#include "core/forecast/coating_data.h"
#include "core/forecast/coating_forecast.h"
#include "core/forecast/parallel.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

struct BackDated {
  std::vector<TrackRecord> rows;  ///< each site, then "all"; each horizon
  double spread_scale = 1;        ///< 1 under 200 hidden readings
};

/// `effects` is the full fit, from which the refit starts; `data` is as before when it returns.
/// Without rows when the workers were stopped.
BackDated back_dated_forecast(CoatingData& data, const SharedEffects& effects,
                              const Workers& workers);

}  // namespace kneerail::forecast
