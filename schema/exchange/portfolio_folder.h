#pragma once

// The forecast's input straight from a folder of portfolio files, without a register: for a look at
// somebody's numbers, and for the benchmark. Rows are checked as an import checks them.

#include <filesystem>

#include "core/base/result.h"
#include "core/base/time_zone.h"
#include "core/forecast/portfolio.h"
#include "schema/exchange/bad_rows.h"
#include "schema/exchange/checked_portfolio.h"

namespace kneerail::exchange {

struct FolderPortfolio {
  forecast::Portfolio portfolio;
  BadRows bad;  ///< left out of the portfolio
  std::vector<FileCount> files;
  std::vector<std::string> notes;
};

/// Coatings that were kept out as millimetres typed as micrometres are in `left_out` with the
/// reason unit_mm. `as_of` empty: the file's own day, else that of the last visit. A folder names
/// no time zone: `zone` says which day a reading with a time of its own is of.
/// Errors: not_found, invalid_input (a header that cannot be used), io.
Result<FolderPortfolio> read_portfolio_folder(const std::filesystem::path& folder,
                                              std::optional<Date> as_of = {},
                                              const forecast::Settings& settings = {},
                                              const TimeZone& zone = {});

}  // namespace kneerail::exchange
