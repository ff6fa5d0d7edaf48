#pragma once

// Zones that lose zinc faster than their class says, and a class, unit or date that is wrong for a
// whole site or the whole portfolio.

#include <string>
#include <vector>

#include "core/forecast/coating_model.h"

namespace kneerail::forecast {

/// How likely a zone loses zinc faster than the upper bound of its class: 0 to 1.
struct ZonePace {
  std::string site;
  std::string zone;
  Category category = Category::c1;
  double chance_faster = 0;

  /// "Likely faster than C4", as the notes say it.
  [[nodiscard]] bool is_likely_faster() const;
};
/// Of the zones that have a class and were measured, by site and zone.
std::vector<ZonePace> zone_paces(const CoatingModel& model);

std::vector<std::string> class_notes(const CoatingModel& model);

/// "none found" for each kind of shared effect whose spread fell to its lower bound, and "not
/// settled" where the last pass still moved a zone.
std::vector<std::string> fit_notes(const SharedEffects& effects);

}  // namespace kneerail::forecast
