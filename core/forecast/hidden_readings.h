#pragma once

// The hidden readings of the back-dated forecast: which they are, and how well each was foretold.

#include <array>
#include <optional>
#include <vector>

#include "core/forecast/parallel.h"
#include "core/forecast/posterior.h"

namespace kneerail::forecast {

inline constexpr int strata = 4;  ///< 0, 1, 2 to 3, 4 and more readings before the cut

/// One hidden reading against its forecast.
struct HiddenReading {
  double years_ahead = 0;  ///< from the cut
  std::int32_t session = 0;
  int stratum = 0;
  double below = 0;    ///< forecast chance of a reading as small or smaller
  bool bound = false;  ///< read bare metal or rust: `below` is the chance of as little zinc
};

/// All of one site, and the log score per stratum at each spread scale.
struct HiddenSite {
  std::optional<Date> cut;  ///< nothing is hidden at a site with one visit day
  std::vector<HiddenReading> readings;
  std::array<std::array<double, constant::scale_steps>, strata> ln_score{};
};

/// ln of the spread scale at a step, equal steps from -0.9 to 0.9.
double ln_scale_at(int step);

/// The visit day from which on a site's readings are hidden.
std::optional<Date> cut_day(const CoatingData& data, const CoatingSite& site);

/// Forecasts the last hidden reading of each segment of the site. `visible` of its segments is the
/// count before the cut. Leaves off when the workers are stopped.
void foretell(const CoatingData& data, const SharedEffects& effects, const CoatingSite& site,
              const Workers& workers, HiddenSite& out);

}  // namespace kneerail::forecast
