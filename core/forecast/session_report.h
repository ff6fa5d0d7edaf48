#pragma once

// What the fit found about each session: the gauge's offset and gain, and words where it was off.

#include <vector>

#include "core/forecast/coating_model.h"

namespace kneerail::forecast {

/// In the order of CoatingData::sessions. Words where the gauge was off by over 3 um at 50 um and
/// over three times the uncertainty of that; "drifting" where two such follow each other. Words of
/// their own where a check was not in order.
std::vector<SessionReport> session_reports(const CoatingModel& model);

}  // namespace kneerail::forecast
