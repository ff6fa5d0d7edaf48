#pragma once

// A register as files that a spreadsheet opens: one for each type of thing (sites.csv, zones.csv,
// runs.csv, posts.csv, bays.csv, components.csv ...), with the columns id, parent and one for each
// field. Out and in again into an empty register gives the same things with the same identifiers.
//
// `id` is what the owner calls the thing where it came with a file, else its identifier. Things
// that are in the register already are left alone: a field is changed in the register.

#include <filesystem>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "schema/exchange/bad_rows.h"
#include "schema/exchange/portfolio_import.h"
#include "schema/store/register.h"

namespace kneerail::exchange {

/// Rows written, by file; types without a thing have no file. Errors: io, corrupt.
Result<std::vector<FileCount>> export_register(Database& tables,
                                               const std::filesystem::path& folder);

/// Files of the folder that are there, in the order of what stands in what. `options.staging` is
/// not used. Errors as those of import_portfolio; bad rows are in the report.
Result<ImportReport> import_register(Register& into, const ImportOptions& options);

}  // namespace kneerail::exchange
