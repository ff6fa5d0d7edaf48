#pragma once

// A folder of portfolio files becomes records of a register, through the same door as a touch. Two
// passes: first every row is checked and every bad one listed; then, if all are good or the good
// ones are enough, they are written, some thousands at a time. Identifiers follow from what the
// files call things, so that a second import of the same folder changes nothing and one that was
// stopped is completed by the next.
//
// Files: portfolio.csv, components.csv, visits.csv, readings.csv, interventions.csv; only
// components.csv must be there, others are not read. What was imported and then mended in its file
// is corrected in the register, with the record that was made first left as it is (see mends.h). A
// row that is taken out of a file takes nothing out of the register.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "schema/exchange/bad_rows.h"
#include "schema/exchange/checked_portfolio.h"
#include "schema/store/register.h"

namespace kneerail::exchange {

struct ImportOptions {
  std::filesystem::path folder;   ///< of the files
  std::filesystem::path staging;  ///< a file that may be made and is removed; empty: in memory
  bool good_rows = false;         ///< import what is good, leave out the rest
  std::optional<Date> today;      ///< visits and works after it are noted; none: none are
  std::string organisation_name = "Imported register";  ///< for a register that has none
  Progress progress;
};

struct ImportReport {
  bool imported = false;  ///< false: rows are bad and good_rows was not set; nothing was written
  std::vector<FileCount> files;
  BadRows bad;
  std::vector<std::string> notes;

  [[nodiscard]] std::int64_t records_made() const;
  [[nodiscard]] std::int64_t already_there() const;
  [[nodiscard]] std::int64_t corrected() const;
  [[nodiscard]] std::int64_t left_out() const;
};

/// Errors: not_found (no folder, no components.csv), invalid_input (a header that cannot be used),
/// io, conflict (register opened for reading), cancelled (progress said stop; what was written
/// stays and is whole). Bad rows are in the report.
Result<ImportReport> import_portfolio(Register& into, const ImportOptions& options);

}  // namespace kneerail::exchange
