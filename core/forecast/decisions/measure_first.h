#pragma once

// Which parts to measure where the time does not do for all: those whose rate is known least and
// whose limit is near come first, then what makes the readings of a site lean on one another.
//
// A reading is worth most where the part's own rate is open and the answer is needed soon: the
// share of the rate's variance still open (1 less own_share) times the chance that a coating limit
// is reached within two visits. After these, one part of each run that nobody has measured; then,
// for each gauge of the site, one part it has measured before, which ties its sessions together.

#include <cstdint>
#include <string>
#include <vector>

#include "core/forecast/coating_forecast.h"
#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

enum class WhyMeasure { open_and_near, run_never_measured, ties_a_gauge };

struct ToMeasure {
  std::int32_t part = 0;  ///< place in Portfolio::parts
  WhyMeasure why = WhyMeasure::open_and_near;
  double worth = 0;  ///< 0 to 1, as above; 0 for the other reasons
  std::string words;
};

struct MeasureQuestion {
  std::string site;                ///< as the portfolio calls it
  double years_of_two_visits = 4;  ///< from the as-of date
  double share_of_a_zone = 0.2;    ///< of its parts with a coating forecast, rounded up
};

/// In that order, no part twice; of each zone at most its share by the first reason. Parts without
/// an answered coating row are not asked for: no gauge can tell them.
std::vector<ToMeasure> measure_first(const Portfolio& portfolio,
                                     const std::vector<LimitForecast>& rows,
                                     const MeasureQuestion& question);

}  // namespace kneerail::forecast
