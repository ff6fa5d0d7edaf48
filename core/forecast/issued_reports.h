#pragma once

// Reports issued earlier against what was read since. A report keeps its PDF and its day, not the
// figures in it; so what it said of each part's coating is reckoned again from what was known by
// that day: later readings of all sites are hidden, the shared effects fitted again to the rest,
// and the last reading of each part since then held against its forecast, as in back_dated.h.
//
// Limits: reckoned by today's program, with corrections entered since, and with the spreads of the
// whole fit; so it judges the way of forecasting, not the printed page. Readings are nearer than
// dates: bands that held for readings may still not hold for lives.

#include <cstddef>
#include <string>
#include <vector>

#include "core/forecast/coating_forecast.h"

namespace kneerail::forecast {

/// Each day on which a report was issued asks for a fit of its own: so many, the latest, are
/// judged.
inline constexpr std::size_t report_days_judged = 12;

struct JudgedReports {
  /// By report (site, then day): each horizon, counted from the report's day, then each stratum. A
  /// report since which nothing was read has no row.
  std::vector<TrackRecord> rows;
  std::vector<std::string> notes;  ///< which reports were not judged, in sentences
};

/// Nothing where the portfolio has no report. Errors: as fit_coating_model().
Result<JudgedReports> judge_issued_reports(const Portfolio& portfolio,
                                           const RunOptions& options = {});

}  // namespace kneerail::forecast
