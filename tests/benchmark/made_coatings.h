#pragma once

// The portfolios of coatings that the benchmark forecasts.

#include <cstdint>

#include "core/forecast/portfolio.h"

namespace kneerail::benchmark {

/// About so many parts, each read about eight times and graded: 25 to a run, 10 runs to a zone.
forecast::Portfolio made_coatings(std::uint64_t seed, int parts);

/// Parts read on every one of so many visits.
forecast::Portfolio made_diligently(std::uint64_t seed, int visits);

}  // namespace kneerail::benchmark
