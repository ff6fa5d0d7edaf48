#pragma once

// How a forecast stands against the truth: shares of true dates inside the bands, the continuous
// ranked probability score from the seven quantiles, rank, and how often a part that comes due
// soon was promised too long.

#include <array>
#include <string>
#include <vector>

#include "core/forecast/coating_forecast.h"
#include "core/forecast/wall/wall_forecast.h"
#include "tests/portfolio/world.h"

namespace kneerail::portfolio_test {

/// One part's quantiles (5, 10, 25, 50, 75, 90, 95 %) and truth, years.
struct Scored {
  std::array<double, 7> years{};
  double truth = 0;
};

struct Scores {
  std::size_t parts = 0;
  double inside_50 = 0;
  double inside_80 = 0;
  double inside_90 = 0;
  double under_5 = 0;  ///< truth before the 5 % quantile
  double over_95 = 0;
  double crps_years = 0;  ///< truth and quantiles within 60 years either way
  double rank = 0;        ///< Spearman's, of median and truth
  double late_10 = 0;     ///< of those truly due within 10 years, 5 % quantile after the truth
};

/// Of at least one part.
Scores scores_of(const std::vector<Scored>& scored);

struct Stratum {
  std::string name;
  std::vector<Scored> scored;
};

/// The coating rows of a forecast of that world that are answered, by stratum; "all" first. Adds to
/// what `strata` holds.
void add_coating(const World& world, const forecast::CoatingForecast& forecast,
                 std::vector<Stratum>& strata);

/// The same of walls: "walls", those read ("walls read") and those not.
void add_walls(const World& world, const forecast::WallForecasts& forecast,
               std::vector<Stratum>& strata);

/// A line of the table, and its head.
std::string head();
std::string line(const std::string& name, const Scores& scores);

}  // namespace kneerail::portfolio_test
