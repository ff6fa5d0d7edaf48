#pragma once

// How the offset of a gauge moves. Over what its inspector's habit adds, the offset of a session is
//
//   b = walk + the day's own     the day's own: normal, of sd Spreads::offset_um
//
// where the walk is 0 on the gauge's first day at the site and grows by independent normal steps of
// variance drift^2 times the years between (a random walk; Harvey 1989, Forecasting, Structural
// Time Series Models and the Kalman Filter, 2.3.6). Each gauge has a drift of its own, estimated
// with a weak prior: most gauges hold still, and one that drifts is believed on the days between
// two checks on a foil. Includes Eigen: only for .cpp files.

#include <vector>

#include "core/forecast/coating_data.h"
#include "core/forecast/dense_inside.h"
#include "core/forecast/spread_estimate.h"

namespace kneerail::forecast {

/// The sessions of one gauge at a site, by day, and the years since the first of them.
struct GaugeDays {
  std::vector<int> sessions;  ///< within the site
  std::vector<double> years;
};

std::vector<GaugeDays> days_by_gauge(const CoatingData& data, const CoatingSite& site);

/// Covariance of the walk between those days, um^2, for a drift in um a root of a year.
Matrix walk_covariance(const std::vector<double>& years, double drift_um);

/// Precision of a gauge's offsets about the habits: walk and the days' own together.
Matrix offset_precision(const GaugeDays& gauge, double drift_um, double own_sd_um);

/// What the second moments of a gauge's offsets say of its walk and of the days' own.
struct WalkMoments {
  Moments steps;                ///< of the walk, per year
  std::vector<double> own_um2;  ///< of each session
};
WalkMoments walk_moments(const GaugeDays& gauge, double drift_um, double own_sd_um,
                         const Matrix& second_moments);

}  // namespace kneerail::forecast
