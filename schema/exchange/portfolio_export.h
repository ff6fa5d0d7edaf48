#pragma once

// The portfolio folder that a register's tables make: portfolio.csv, components.csv, visits.csv,
// readings.csv, interventions.csv, rows ascending by identifier. Imported into a new register and
// exported again it gives the same bytes. Readings that are void or held are not in it.

#include <cstdint>
#include <filesystem>
#include <vector>

#include "core/base/result.h"
#include "schema/database.h"
#include "schema/exchange/checked_portfolio.h"
#include "schema/store/portfolio_tables.h"

namespace kneerail::exchange {

struct ExportOptions {
  std::filesystem::path folder;  ///< made if it is not there; files in it are written anew
  std::optional<Date> as_of;     ///< written to portfolio.csv; later readings are left out
  std::vector<Uuid> sites;       ///< none: all
  Progress progress;
};

/// Rows written, by file. Errors: io, corrupt, cancelled.
Result<std::vector<FileCount>> export_portfolio(Database& tables, const ExportOptions& options);

}  // namespace kneerail::exchange
