#pragma once

// A portfolio folder with every row checked, by itself and against the others: the first pass of an
// import, and the whole reading of a forecast straight from the folder. Rows that are bad are
// listed and left out; what stays fits together.

#include <array>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/result.h"
#include "schema/exchange/bad_rows.h"
#include "schema/exchange/portfolio_rows.h"
#include "schema/exchange/reading_staging.h"

namespace kneerail::exchange {

/// Called now and then; false stops. `what` is a word or two for a person: "checking readings.csv".
using Progress = std::function<bool(std::int64_t done, std::int64_t all, std::string_view what)>;

struct FileCount {
  std::string file;
  std::int64_t rows_read = 0;
  std::int64_t records_made = 0;
  std::int64_t already_there = 0;  ///< records that an earlier import made
  std::int64_t corrected = 0;      ///< records that an earlier import made, mended in the file
  std::int64_t left_out = 0;       ///< rows
};

/// What components.csv says of a zone, once.
struct ZoneRow {
  std::string id;
  std::string site;
  std::optional<forecast::Category> category;
  std::optional<double> zinc_rate_um_per_year;
  std::optional<std::int64_t> zinc_rate_ln_sd_thousandth;
  std::optional<double> steel_rate_um_per_year;
  std::int64_t line = 0;
};

struct RunRow {
  std::string id;
  std::string zone;
  std::int64_t line = 0;
};

struct SiteRow {
  std::string id;
  std::optional<std::int64_t> first_maintenance_tenth_um;
  std::int64_t line = 0;
};

/// A work whose part is known by its place.
struct CheckedWork {
  std::int32_t component = 0;
  WorkRow row;
};

enum FileNumber : std::size_t {
  portfolio_number,
  components_number,
  visits_number,
  readings_number,
  interventions_number,
  file_count
};

struct CheckedPortfolio {
  std::optional<Date> as_of;
  std::optional<std::int64_t> zinc_gone_tenth_um;
  std::optional<std::int64_t> replace_grade;
  std::vector<SiteRow> sites;            ///< by first mention
  std::vector<ZoneRow> zones;            ///< likewise
  std::vector<RunRow> runs;              ///< likewise
  std::vector<ComponentRow> components;  ///< ascending by identifier
  std::vector<VisitRow> visits;          ///< ascending by identifier
  std::vector<CheckedWork> works;        ///< by part, then day
  std::unique_ptr<ReadingStaging> readings;

  BadRows bad;
  /// Readings that were refused as micrometres typed in millimetres: identifier and part.
  std::vector<std::pair<std::string, std::string>> millimetres;
  std::array<FileCount, file_count> files;
  std::vector<std::string> notes;  ///< columns and keys that are not known, in sentences
};

/// Reads and checks the folder; only components.csv must be there. `staging` is the file that holds
/// the readings meanwhile; empty: in memory. Errors: not_found, invalid_input (a header that cannot
/// be used), io, cancelled (progress said stop). Bad rows are no error.
Result<std::unique_ptr<CheckedPortfolio>> check_portfolio(const std::filesystem::path& folder,
                                                          const std::filesystem::path& staging,
                                                          const Progress& progress = {});

}  // namespace kneerail::exchange
