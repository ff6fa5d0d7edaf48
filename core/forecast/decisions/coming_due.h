#pragma once

// What comes due before a day: how many parts of each run will likely have lost their coating by
// then, and how many may have.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/coating_forecast.h"

namespace kneerail::forecast {

struct RunComing {
  std::string site;  ///< as the portfolio calls them
  std::string run;
  int parts = 0;   ///< with an answer
  int likely = 0;  ///< as likely reached by the day as not, or more
  int may = 0;     ///< reached by the day with at least the owner's chance; `likely` among them
};

struct ComingQuestion {
  double years = 1;  ///< from the as-of date to the day
  /// The owner's chance by consequence of the run (1 high, 2 medium, 3 low; [0] is not used).
  /// Absent: none is set, and `may` counts only what is likely.
  std::array<std::optional<double>, 4> chance;
};

/// The rows of "coating exhausted" of a site, by run. Ascending by run.
std::vector<RunComing> coming_due(const Portfolio& portfolio,
                                  const std::vector<LimitForecast>& rows, const std::string& site,
                                  const ComingQuestion& question);

}  // namespace kneerail::forecast
