#pragma once

// The forecast in parts: `--fit`, `--shard` and `--join` of the forecast command.

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/forecast/portfolio.h"
#include "mobile/commands/forecast_output.h"
#include "schema/database.h"
#include "schema/exchange/forecast_files.h"
#include "schema/exchange/forecast_join.h"
#include "schema/store/later_visits.h"

namespace CLI {
class App;
}

namespace kneerail::commands {

struct ShardOptions {
  std::string fit;                ///< file of what all sites share; empty: none
  std::string shard;              ///< "2/7"; empty: not asked
  std::string into;               ///< the part file
  std::vector<std::string> join;  ///< part files

  [[nodiscard]] std::vector<std::filesystem::path> parts() const {
    return {join.begin(), join.end()};
  }
};

void add_shard_options(CLI::App& command, ShardOptions& options);

/// Whether the options go together; `given` are the names of all that are on the command line:
/// what a fit, a part or a join has no use for is refused, never passed over. Errors:
/// invalid_input.
Result<> check_together(const ShardOptions& options, const std::vector<std::string>& given);
/// Names of the options that a command was given: "--as-of".
std::vector<std::string> given_options(const CLI::App& command);

/// How the rows are to be reckoned.
struct HowReckoned {
  std::optional<Date> as_of = {};  ///< none: not said on the command line
  std::optional<Date> on = {};     ///< a date asked
  int threads = 0;
};

/// That a date asked does not lie before the day the forecast is from. Errors: invalid_input.
Result<> check_date_comes(std::optional<Date> on, Date as_of);

/// Reads the register site by site, fits it and writes the fit. Errors: those of the forecast, io.
Result<> write_fit_of(Database& tables, const HowReckoned& how, const std::string& file);

/// Reckons one part with the fit in the file `options.fit`, or with one made here where none is
/// named, and writes it. In memory is one site at a time. How many parts of the register it has.
/// Errors: those of the forecast and of the fit's file, io, conflict (the register changed since
/// the fit was made, or another day is asked).
Result<std::int64_t> write_shard(Database& tables, const HowReckoned& how,
                                 const ShardOptions& options);

/// What a joined forecast does not know of the register.
struct MissingOfJoin {
  std::map<std::string, std::int64_t> parts;  ///< that no file speaks of, by site
  std::int64_t records = 0;                   ///< that came since the fit
};
/// In sentences, with the sites' names by identifier. Empty: it knows all.
std::vector<std::string> not_in_join(const MissingOfJoin& missing,
                                     const std::map<std::string, std::string>& sites);

/// A joined forecast that is written as it is read.
struct JoinAsStream {
  std::unique_ptr<ForecastJoin> parts;
  std::string site;  ///< Part::site asked; empty: all
  std::vector<LaterVisit> later;
  std::vector<std::string> unknown;  ///< not_in_join()
};
/// Errors: those of the files and the register; not_found (no such site).
Result<JoinAsStream> open_join(Database& tables, const ShardOptions& options,
                               const std::string& site);
/// Its pieces for print_csv() and print_json(): one part each.
Result<> each_piece(const JoinAsStream& join, const ForecastView& head,
                    const std::function<void(const ForecastView&)>& each);

}  // namespace kneerail::commands
