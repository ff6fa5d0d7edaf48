#pragma once

// The ways a tube may lose its wall, each with its weight. In one way everything is a number but
// the start of the coating and the wall when new, which are normal:
//
//   wall(t) = W - [s h(t - T) + i (t - T_in)] / 1000               mm; t from the tube's start
//   zinc first   T = when the coating of that way is at 0 um; bare steel: T = 0
//   outside      ln s = ln(zinc rate of the way) + ln F + 0.60 z   um/yr, mean of 20 years
//   inside       dry: i = 0.03 x the class's steel loss; else ln i = ln(0.4 x it) + 0.8 z', a rate
//                of its own, zinc outside or not, that does not slow down (a wet hollow is never
//                washed); T_in = 0, or with chance 0.3 half the age by now: a drain can block later
//   h(a)         effective age of the steel's path, a^0.75 to 20 years and a line after
//                (core/corrosion/attack.h)
//   W            N(0.97 nominal, (0.03 nominal)^2) before any reading
//
// F is the zone's own steel loss over its zinc loss where it gives one, else the setting (22). The
// zinc's ways are the nodes of the coating's posterior (posterior.h), small neighbours put
// together; z lies on 7 Gauss-Hermite nodes, z' on 9 equal ones. A wall reading (mean of a day's
// places) weighs every way by the density of all readings, W integrated out:
//
//   e_j = 0.06^2/places + 0.03^2 + (0.30 L_j)^2    mm^2; L_j: loss of the way by then, mm
//   p = 1/v0 + sum 1/e_j     m = W0 + (sum d_j/e_j)/p     d_j = y_j + L_j - W0
//   ln weight += -1/2 [sum d_j^2/e_j - (sum d_j/e_j)^2/p + sum ln e_j + ln p]
//
// A bound (the gauge could not read so little) weighs by its chance, Phi((y - m + L)/S) with S^2 =
// 1/p + e, and moves W's mean and variance to those of what it cuts off.
// So that W given a way is N(m, 1/p). The third term of e_j is that no wall follows a law exactly;
// 0.30 and 0.60 were chosen on invented portfolios with known truth, on the safe side.
// Where zinc may be gone by the last reading, the start of the coating is put on 3 nodes too.
// Sources: series of coating and steel, and steel 10 to 40 times as fast as zinc: the tables of ISO
// 9223:2012 and the lives of ISO 14713-1; exponent: ISO 9224:2012 (0.523 mean, 0.575 upper; 0.75
// here, on the safe side); wall of new welded tube: tolerance of EN 10255. Shares and chances of
// rust inside are common practice, no source.
// Limits: even loss; no pits, no crevice at a fitting's mouth, no ground line.

#include <cstdint>
#include <vector>

#include "core/forecast/wall/wall_data.h"
#include "core/forecast/wall/zinc_end.h"

namespace kneerail::forecast {

struct WallQuestion {
  const WallTube* tube;
  const Posterior* coating;   ///< null: bare steel
  Clock clock;                ///< of the coating; of bare steel its path is not used
  double hollow_age_now = 0;  ///< from the tube's first year
  Date as_of;
  const PathTable* zinc_path;
  const PathTable* steel_path;
};

/// What several ways have in common but for the zinc and the steel outside.
struct InsideWay {
  double um_per_year = 0;
  double hollow_age_now = 0;  ///< years for which the inside has rusted by the as-of date
  bool open = false;          ///< its hollow rusts
  double wall_mm = 0;         ///< mean and sd of the wall when new
  double wall_sd_mm = 0;

  /// So many years after the as-of date.
  [[nodiscard]] double lost_um(double years) const {
    const double rusted = hollow_age_now + years;
    return rusted > 0 ? um_per_year * rusted : 0;
  }
};

struct WallWay {
  double weight = 0;
  double steel_um_per_year = 0;
  std::uint32_t zinc = 0;    ///< in WallWays::zincs
  std::uint32_t inside = 0;  ///< in WallWays::insides
};

struct WallWays {
  std::vector<ZincWay> zincs;
  std::vector<InsideWay> insides;
  /// By zinc, then steel; weights sum to 1. None where none comes out a number.
  std::vector<WallWay> ways;
};
WallWays wall_ways(const WallQuestion& question, const ZincEnd& end);

}  // namespace kneerail::forecast
