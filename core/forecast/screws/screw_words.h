#pragma once

// The words of one fitting's row: how well founded it is, its reason, what is flagged.

#include <optional>
#include <string>
#include <vector>

#include "core/forecast/screws/screw_forecast.h"

namespace kneerail::forecast {

/// What is known of a fitting's screws, of all its tightenings.
struct ScrewEvidence {
  int clicks = 0;
  int losses = 0;                         ///< readings at which a screw moved
  std::optional<FoundTorque> last_click;  ///< of the tightest value of its day
  std::optional<FoundTorque> loose;       ///< the last reading, where a screw turned freely
  bool start_known = true;
  bool zone_measured = true;  ///< a screw of the zone moved at a reading
  double chance_now = 0;
};

ScrewEvidence evidence_of(const ScrewSite& site, const Fitting& fitting, double minimum_nm);

/// "own losses and zone; no loss measured in this zone; leans on the other zones".
std::string screw_words(const ScrewEvidence& evidence);

/// "24 N·m", "24.5 N·m".
std::string torque_words(double torque_nm);

struct ScrewReason {
  double minimum_nm = 0;
  double left_nm = 0;            ///< what a re-torque today would leave it at
  std::optional<double> chance;  ///< the owner's
};

std::string screw_sentence(const ScrewForecast& row, const ScrewReason& reason);

/// Strikes whose wear is assumed, a screw last found under its minimum and not tightened since.
std::vector<std::string> screw_flags(const ScrewModel& model, const Fitting& fitting,
                                     double minimum_nm);

/// About the whole: settings not recorded, that such forecasts lean on the usual.
std::vector<std::string> screw_notes(const ScrewModel& model);

}  // namespace kneerail::forecast
