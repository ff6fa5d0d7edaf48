#pragma once

// Zones that lose zinc faster than their class says, and a class, unit or date that is wrong for a
// whole site or the whole portfolio.

#include <string>
#include <vector>

#include "core/forecast/coating_model.h"

namespace kneerail::forecast {

std::vector<std::string> class_notes(const Portfolio& portfolio, const CoatingModel& model);

/// "none found" for each kind of shared effect whose spread fell to its lower bound, and "not
/// settled" where the last pass still moved a zone.
std::vector<std::string> fit_notes(const SharedEffects& effects);

}  // namespace kneerail::forecast
