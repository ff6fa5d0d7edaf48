#pragma once

// A forecast in parts. Sites share a model, and its fit needs all of them: one process makes it and
// writes it site by site into a fit file. Then any number of processes, one after another or side
// by side, each say the rows of their sites: they read one site of the fit and of the register at a
// time, and hold no more. Last the parts are joined. Every row is to the last bit what one process
// would have said (core/forecast/whole/portfolio_fit.h).
//
// Fit file: a line of text, the sites' bytes, the index (as-of day, key, sites with their digests),
// its SHA-256. Part file: a line, its head, the rows of one site after another, SHA-256 of all
// before it; what is said of the whole stands in the first part alone. The lines name the version
// of the models (forecast::model_version()): no program reads the files of another. The key is a
// digest of all that the forecast is made from: parts of two forecasts are never joined. Neither
// file is a record; whoever lost one makes it again.

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/forecast/whole/kept_models.h"
#include "core/forecast/whole/portfolio_fit.h"
#include "schema/database.h"
#include "schema/digest.h"
#include "schema/store/portfolio_store.h"

namespace kneerail {

/// Digest of what one site's rows are made from.
struct SiteInput {
  std::string site;
  std::int64_t parts = 0;
  Digest digest{};
};
/// Of every site of the portfolio, ascending by name.
std::vector<SiteInput> site_inputs(const forecast::Portfolio& portfolio);
/// Digest of all the forecast is made from: sites, as-of day, settings, version of the models.
Digest forecast_key(const forecast::Portfolio& portfolio, const std::vector<SiteInput>& inputs);

/// The first line of such a file: "kneerail forecast fit 2 of models 1-...".
std::string forecast_line(std::string_view kind);

/// How many records the register has: more than at the fit, and something came since.
Result<std::int64_t> records_of(Database& tables);

/// Number `part` of `of`, from 1.
struct ShardNumber {
  int part = 1;
  int of = 1;
};
/// "2/7"; nothing for anything else, or a number outside 1 to `of`.
std::optional<ShardNumber> shard_number(std::string_view text);

/// The sites of one shard: the largest first, each to the shard that has fewest parts so far. None
/// where there are fewer sites than shards.
std::vector<std::string> sites_of_shard(const std::vector<SiteInput>& sites, ShardNumber shard);

/// Where a shard's fit comes from, site by site.
class FitSource {
 public:
  virtual ~FitSource() = default;
  [[nodiscard]] virtual Date as_of() const = 0;
  [[nodiscard]] virtual const Digest& key() const = 0;
  [[nodiscard]] virtual const std::vector<SiteInput>& sites() const = 0;
  [[nodiscard]] virtual const forecast::ForecastHead& head() const = 0;
  /// Of the register when the fitted portfolio was read.
  [[nodiscard]] virtual std::int64_t records() const = 0;
  /// Errors: io, corrupt.
  virtual Result<forecast::PortfolioFit> fit_of(const std::string& site) = 0;
};
/// Errors: not_found, io, corrupt (damaged, cut short, or written by another program).
Result<std::unique_ptr<FitSource>> open_fit(const std::filesystem::path& file);
/// Writes a fit site by site. Errors: io, and those of the fit.
Result<> write_fit(const std::filesystem::path& file, FitSource& fit);
/// Reads a register site by site, lets go of it, and fits it: in memory are one site's readings and
/// what the fit needs of all (forecast::FitBySite). Errors: those of the register and of the fit.
Result<std::unique_ptr<FitSource>> fit_register(std::unique_ptr<PortfolioSites> register_sites,
                                                const forecast::RunOptions& options,
                                                std::int64_t records);

/// What every part file says of itself.
struct ShardHead {
  Digest key{};
  std::int32_t part = 1;
  std::int32_t of = 1;
  Date as_of;
  std::optional<Date> on;  ///< the date asked
  std::vector<std::string> sites;
  forecast::ForecastHead forecast;
  std::int64_t records = 0;  ///< FitSource::records()
};

/// Writes a part file site by site; it has its name once it is whole.
class ShardWriter {
 public:
  /// Errors: io.
  static Result<std::unique_ptr<ShardWriter>> create(const std::filesystem::path& file,
                                                     const ShardHead& head);
  virtual ~ShardWriter() = default;
  virtual Result<> add(const forecast::Portfolio& site, const forecast::ForecastRows& rows) = 0;
  virtual Result<> finish() = 0;
};

/// The day the first of the part files is reckoned from. Errors: as join_shards() of that file.
Result<Date> joined_as_of(const std::vector<std::filesystem::path>& files);

struct JoinedShards {
  ShardHead head;  ///< of part 1
  forecast::ForecastRows rows;
  std::vector<std::int32_t> not_in_it;  ///< places of parts of the register that no file speaks of
};
/// Puts part files together, one open at a time. `portfolio` gives the places of parts; it needs no
/// readings. Errors: not_found (a file, or a part of the forecast, is missing), invalid_input (one
/// given twice, or of another forecast), corrupt (damaged or cut short; what is no part file, or
/// one of another program), conflict (a part the register does not have).
Result<JoinedShards> join_shards(const std::vector<std::filesystem::path>& files,
                                 const forecast::Portfolio& portfolio);

}  // namespace kneerail
