#pragma once

// The coating model once fitted: what a report, a single new reading or a what-if starts from.

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/back_dated.h"
#include "core/forecast/coating_data.h"
#include "core/forecast/coating_forecast.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

struct CoatingModel {
  CoatingData data;
  SharedEffects effects;
  BackDated back_dated;  ///< its scale stretches every part's posterior
};

/// Preparation, shared effects, unrecorded swaps and the effects again, back-dated forecast.
/// Errors: not_estimable, with the reason in words; cancelled when it was stopped.
Result<CoatingModel> fit_coating_model(const Portfolio& portfolio, const RunOptions& options);

/// The same of what was prepared before.
Result<CoatingModel> fit_coating_data(CoatingData data, const RunOptions& options);

/// What the fitted model says of its portfolio: every part's limits, sessions, track record, notes.
/// The same as forecast_coating(), which fits first.
CoatingForecast report_coating(const CoatingModel& model, const Portfolio& portfolio, int threads);

/// The same, which can be stopped. Errors: cancelled.
Result<CoatingForecast> report_coating(const CoatingModel& model, const Portfolio& portfolio,
                                       const RunOptions& options);

/// About the whole: odd files, zones faster than their class, spreads not found, not settled.
std::vector<std::string> coating_notes(const CoatingModel& model);

}  // namespace kneerail::forecast
