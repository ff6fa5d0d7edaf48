#pragma once

// A row of a forecast read between what it says: its seven quantiles and its chances on four dates,
// straight lines between them. Nothing is read beyond the last of them.

#include "core/forecast/coating_forecast.h"

namespace kneerail::forecast {

/// Years from the as-of date until the limit is reached with that chance (over 0, under 1): 0 where
/// it is by now, inf where no reported figure gets there.
double years_to_chance(const LimitForecast& row, double chance);

/// The chance that the limit is reached within that many years (0 or more) of the as-of date. It
/// never falls with the years; beyond the last figure it is that of the last. 0 where the row is
/// not answered.
double chance_within(const LimitForecast& row, double years);

}  // namespace kneerail::forecast
