#pragma once

// Invented portfolios with known truth, for the tests of the forecast: a simple world that the
// model nearly describes, and departures from it on request. Everything comes from one seed.

#include <cstdint>
#include <string>
#include <vector>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

struct Recipe {
  std::uint64_t seed = 1;
  int sites = 2;
  int zones = 2;          ///< per site
  int runs = 3;           ///< per zone
  int parts = 12;         ///< per run
  int days = 6;           ///< visit days per site, a year apart, the last half a year ago
  double measured = 0.8;  ///< chance that a part is read on a day
  double unknown_start = 0.15;
  double rate_over_class = 1;
  double replicate_sd_um = 3;
  double drift_um = 0;  ///< of the first site's gauge on its third and fourth day
  int swaps = 0;        ///< parts replaced without a record before the last two days
  bool foils = true;
  bool grades = false;  ///< at each visit of a part, by what is left; then gauges read rust, too
};

struct Truth {
  double exhausted_years = 0;  ///< from the as-of date
  double rate_um_per_year = 0;
  double start_um = 0;
  bool swapped = false;
};

struct Made {
  Portfolio portfolio;
  std::vector<Truth> truth;        ///< by place in portfolio.parts
  std::vector<double> offsets_um;  ///< of the gauge, by place in portfolio.visits
};

Made made_portfolio(const Recipe& recipe);

/// The same portfolio with parts, visits, readings and works in another order.
Portfolio shuffled(const Portfolio& portfolio, std::uint64_t seed);

}  // namespace kneerail::forecast
