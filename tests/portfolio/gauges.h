#pragma once

// Who measures in the invented world, and with what.

#include <algorithm>
#include <string>
#include <vector>

#include "tests/portfolio/physics.h"

namespace kneerail::portfolio_test {

struct Gauge {
  std::string name;
  double zero_um = 0;
  double gain = 0;
  double on_tubes_um = 0;
  Date drifts_from{1'000'000};
  double drift_um_per_year = 0;

  [[nodiscard]] bool drifting(Date day) const { return day > drifts_from; }
  [[nodiscard]] double offset_um(Date day, bool tube) const {
    const double years = drifting(day) ? std::min(years_between(drifts_from, day), 8.0) : 0;
    return zero_um + (tube ? on_tubes_um : 0) + drift_um_per_year * years;
  }
};

struct Inspector {
  std::string name;
  double habit_um = 0;  ///< presses, tilts, picks
  double eye = 0;       ///< sees more rust (+) or less, logit
};

Gauge gauge(Draw& draw, std::string name, double drifting, Date from, Date to);
Inspector inspector(Draw& draw, std::string name);

/// What the day does to a gauge on top, um.
double day_um(Draw& draw);

/// A replicate on a patch: zinc as the gauge has it, or what a gauge shows on rust.
struct Shown {
  double patch_um = 0;
  double rate_um_per_year = 0;  ///< of the patch
  double offset_um = 0;         ///< gauge, day and inspector
  double gain = 0;
};
/// One draw a visit of a patch: the thickness that its replicates scatter about.
double shown_um(Draw& draw, const Shown& shown);
/// Rounded as gauges do, at times mistyped; never under 0.
double typed_um(Draw& draw, double shown_um);

/// Share of the surface rusted from which on a part is at grade 5.
inline constexpr double grade_5_rusted = 0.33;

/// 1 to 5 from the rusted share and how much of the zinc is gone.
int grade_seen(Draw& draw, const Inspector& by, double rusted, double zinc_gone_share);

}  // namespace kneerail::portfolio_test
