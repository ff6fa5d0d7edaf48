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

/// Whether the options go together. Errors: invalid_input.
Result<> check_together(const ShardOptions& options);

/// How the rows are to be reckoned.
struct HowReckoned {
  std::optional<Date> as_of = {};  ///< none: not said on the command line
  std::optional<Date> on = {};     ///< a date asked
  int threads = 0;
};

/// That a date asked does not lie before the day the forecast is from. Errors: invalid_input.
Result<> check_date_comes(std::optional<Date> on, Date as_of);

/// Fits all sites and writes the fit. Errors: those of the forecast, io.
Result<> write_fit_of(const forecast::Portfolio& portfolio, const HowReckoned& how,
                      const std::string& file);

/// Reckons one part of a portfolio that is fitted here, and writes it. How many parts of the
/// register it has. Errors: those of the forecast, io.
Result<std::int64_t> write_shard(const forecast::Portfolio& portfolio, const HowReckoned& how,
                                 const ShardOptions& options);

/// The same with the fit in the file `options.fit`, reading one site of the register at a time.
/// Errors: also those of that file, conflict (the register changed since the fit was made, or
/// another day is asked).
Result<std::int64_t> write_shard_of_fit(Database& tables, const HowReckoned& how,
                                        const ShardOptions& options);

}  // namespace kneerail::commands
