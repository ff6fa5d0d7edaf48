#pragma once

// Invented portfolios of set screws with known truth, for the tests of the set-screw forecast:
// screws that lose torque with the logarithm of time at their fitting's own rate, checked by a
// wrench that clicks or moves the screw, which is then tightened again. Everything comes from one
// seed.

#include <cstdint>
#include <vector>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

struct ScrewRecipe {
  std::uint64_t seed = 1;
  int sites = 3;
  int zones = 3;     ///< per site
  int runs = 3;      ///< per zone
  int fittings = 8;  ///< per run
  int screws = 1;    ///< per fitting
  int days = 5;      ///< check days per site, two years apart, the last half a year ago
  double checked = 0.7;
  double target_nm = 40;
  double minimum_nm = 28;
  double wrench_nm = 30;         ///< what the wrench is set at
  bool wrench_recorded = false;  ///< with each reading
  double middle_loss_nm = 3;     ///< per tenfold of days
  double part_sd = 0.5;          ///< of ln loss
  double zone_sd = 0.3;
  double site_sd = 0.2;
  double as_left_sd = 0.06;  ///< of the target
  double wrench_sd = 0.05;
  double moved_sd = 0.08;
  double unknown_start = 0.2;
  double struck = 0;  ///< chance of a strike and a re-erecting in each interval
  double wear = 0.1;  ///< ln loss per strike
};

struct ScrewTruth {
  double years_under =
      0;               ///< from the as-of date until a screw is under the minimum; negative: past
  double loss_nm = 0;  ///< of the fitting, unworn
};

struct MadeScrews {
  Portfolio portfolio;
  std::vector<ScrewTruth> truth;  ///< by place in portfolio.parts
};

MadeScrews made_screws(const ScrewRecipe& recipe);

}  // namespace kneerail::forecast
