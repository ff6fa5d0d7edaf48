#pragma once

// One invented portfolio with everything the forecast answers: coatings with grades, set screws,
// grades alone, and walls read on some tubes. Its sites differ in size and in what was measured.

#include <cstdint>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// `largest` times as many parts at the first site as at the others.
Portfolio joined_world(std::uint64_t seed, int largest = 1);

/// Puts a portfolio's parts, visits, readings and works behind another's, with `mark` before every
/// name.
void join(Portfolio& to, Portfolio from, const std::string& mark);

}  // namespace kneerail::forecast
