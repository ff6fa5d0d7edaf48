#pragma once

// An invented portfolio as a folder of CSV files, for the import to read.

#include <cstdint>
#include <filesystem>

#include "core/base/result.h"

namespace kneerail::benchmark {

struct PortfolioFiles {
  int parts = 0;
  int readings = 0;
};

/// Writes portfolio.csv, components.csv, visits.csv and readings.csv with just so many readings.
/// Errors: io.
Result<PortfolioFiles> write_portfolio_files(const std::filesystem::path& folder,
                                             std::uint64_t seed, int readings);

}  // namespace kneerail::benchmark
