#pragma once

// What each part's forecast is made from, as bytes: the part, its readings with their visits, its
// works and its site's limits. Two portfolios whose parts give the same bytes, and whose settings
// and as-of days are the same, give the same forecast; a digest of them is its key.

#include <functional>
#include <string>
#include <string_view>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// Changes with every source of the models and of what they stand on: a number and a digest of the
/// sources, made when the program is built. What was kept of another one is reckoned again.
std::string_view model_version();

/// Calls `each` with every part's place and bytes, in the order of part identifiers. The order of
/// the portfolio's readings and works does not tell in them.
void each_part_input(const Portfolio& portfolio,
                     const std::function<void(std::int32_t part, std::string_view bytes)>& each);

/// As-of day, settings and the models' version.
std::string common_input(const Portfolio& portfolio);

}  // namespace kneerail::forecast
