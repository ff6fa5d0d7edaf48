#pragma once

// One part again with a reading that came after the fit, the shared effects held: what the tablet
// shows the moment a reading is typed.

#include <vector>

#include "core/base/result.h"
#include "core/forecast/coating_model.h"

namespace kneerail::forecast {

/// The rows of the one part in `one`: a portfolio that holds this part alone, with all its readings
/// (the new ones too), the visits they belong to, and its works. A session, run, zone or site that
/// the fit has not seen takes its prior, a session also its check foil. Spreads, the other effects
/// and the scale of the bands are those of `model`. LimitForecast::part is 0.
/// Errors: invalid_input when `one` does not hold exactly one part.
Result<std::vector<LimitForecast>> forecast_one_part(const CoatingModel& model,
                                                     const Portfolio& one);

/// The rows of a model that model_of_one_part() made, and of the same part.
std::vector<LimitForecast> rows_of_one_model(const CoatingModel& own, const Portfolio& one);

/// The model of the one part, which must be one that is served: its own preparation, the effects
/// taken from `model`. What forecast_one_part() and the part's story read. Errors as there.
Result<CoatingModel> model_of_one_part(const CoatingModel& model, const Portfolio& one);

}  // namespace kneerail::forecast
