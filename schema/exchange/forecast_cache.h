#pragma once

// What was forecast last, kept beside the register under a key of what it was made from, so that
// nothing is reckoned twice. Not in the register's own file: whoever only reads it may keep a
// forecast too, while another process writes. It can be deleted at any time; damaged, or of another
// program, it is as if it were not there.
//
// What is the same by its digest (each_part_input() of every part, as-of day, settings, version of
// the models) is not reckoned again. Where a few parts differ, because something was entered or
// corrected, only these are, with what all parts share held as it was fitted. All is fitted again
// when a visit was sealed since (sealed here, or come by synchronising), when parts came, went or
// changed their place, when more than one in twenty parts differ, and on another day.

#include <cstdint>
#include <filesystem>
#include <optional>

#include "core/base/result.h"
#include "core/forecast/whole/portfolio_fit.h"
#include "schema/database.h"
#include "schema/digest.h"

namespace kneerail {

/// Digest of the visits sealed so far: one more, and held forecasts are fitted anew.
Result<Digest> sealed_visits(Database& tables);

struct CacheQuestion {
  std::filesystem::path file;
  Digest sealed{};      ///< sealed_visits()
  bool afresh = false;  ///< true: fit and reckon all, whatever is kept
};

/// How much of it was reckoned now.
struct Reckoned {
  bool fitted = false;     ///< all parts and what they share
  std::int64_t parts = 0;  ///< whose rows were reckoned
  std::int64_t held = 0;   ///< whose rows, now or before, were reckoned since the fit
};

struct CachedForecast {
  forecast::AllLimits made;
  Reckoned reckoned;
  bool kept = false;  ///< on disk for the next time; false: the folder may not be written
};

/// The forecast, from the file where it is of these inputs, and kept there for the next time.
/// Errors: those of the forecast.
Result<CachedForecast> cached_forecast(const forecast::Portfolio& portfolio,
                                       const forecast::RunOptions& options,
                                       const CacheQuestion& question);

/// The fit and the rows themselves, for who tells of parts from them.
struct KeptForecast {
  forecast::PortfolioFit fit;
  forecast::ForecastRows rows;
};

/// Nothing where none is kept of these very inputs, or some of its parts were reckoned since it was
/// fitted.
std::optional<KeptForecast> kept_forecast(const forecast::Portfolio& portfolio,
                                          const std::filesystem::path& file);

/// Keeps what was fitted and said of the whole as one, as cached_forecast() does. False: the folder
/// may not be written.
bool keep_forecast(const forecast::Portfolio& portfolio, const KeptForecast& made,
                   const CacheQuestion& question);

}  // namespace kneerail
