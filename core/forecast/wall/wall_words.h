#pragma once

// The words of one tube's row: how well founded it is, its reason, what is flagged.

#include <string>
#include <vector>

#include "core/forecast/wall/wall_data.h"
#include "core/forecast/wall/wall_forecast.h"

namespace kneerail::forecast {

/// "two wall readings; steel from the zone's own loss; the inside leans on how such tubes usually
/// go".
std::string wall_words(const WallTube& tube, const WallForecast& row, bool painted);

std::string wall_sentence(const WallTube& tube, const WallForecast& row);

/// What its readings alone tell: places at or under the limit, bounds, and each that no model
/// takes.
std::vector<std::string> reading_flags(const WallTube& tube);

/// The rest, of a row that is answered.
std::vector<std::string> wall_flags(const WallTube& tube, const WallForecast& row);

}  // namespace kneerail::forecast
