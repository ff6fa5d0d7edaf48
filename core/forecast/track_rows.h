#pragma once

// Hidden readings counted into the rows of a track record: by horizon, and by how many readings a
// part had before they were hidden.

#include <functional>
#include <string>
#include <vector>

#include "core/forecast/coating_data.h"
#include "core/forecast/coating_forecast.h"
#include "core/forecast/hidden_readings.h"

namespace kneerail::forecast {

/// The rows of the readings of one site, or of all: each horizon, then each stratum. `opening`
/// begins the words: "Of 1,214 readings forecast from before 2024-05-01".
std::vector<TrackRecord> track_rows(const std::string& site,
                                    const std::vector<const HiddenReading*>& readings,
                                    const std::function<std::string(int count)>& opening,
                                    double spread_scale);

/// "1,214".
std::string grouped(int count);

/// Hides the readings of each site from its cut on (a site without a cut keeps all), refits what is
/// shared from `effects`, and foretells what is hidden of the sites that are asked. All readings
/// are seen again after it. False: the refit could not be computed, nothing was foretold.
bool foretell_from_cuts(CoatingData& data, const SharedEffects& effects, const Workers& workers,
                        const std::function<bool(std::size_t site)>& asked,
                        std::vector<HiddenSite>& sites);

}  // namespace kneerail::forecast
