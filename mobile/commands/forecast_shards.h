#pragma once

// The forecast in parts: `--fit`, `--shard` and `--join` of the forecast command.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/forecast/portfolio.h"
#include "schema/database.h"
#include "schema/exchange/forecast_files.h"
#include "schema/store/place_store.h"

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

/// A portfolio, and how many records its register had when it was read.
struct ReadPortfolio {
  const forecast::Portfolio& portfolio;
  std::int64_t records = 0;
};

/// Reads the register site by site, fits it and writes the fit. Errors: those of the forecast, io.
Result<> write_fit_of(Database& tables, const HowReckoned& how, const std::string& file);

/// Reckons one part with the fit in the file `options.fit`, or with one made here where none is
/// named, and writes it. In memory is one site at a time. How many parts of the register it has.
/// Errors: those of the forecast and of the fit's file, io, conflict (the register changed since
/// the fit was made, or another day is asked).
Result<std::int64_t> write_shard(Database& tables, const HowReckoned& how,
                                 const ShardOptions& options);

/// What a joined forecast does not know of the register, in sentences: parts that no file speaks
/// of, and how many records came since. Empty: it knows all.
std::vector<std::string> not_in_join(const JoinedShards& joined, const ReadPortfolio& read,
                                     const Places& places);

}  // namespace kneerail::commands
