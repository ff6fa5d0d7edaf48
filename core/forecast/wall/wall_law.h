#pragma once

// The ways a tube may lose its wall, each with its weight. In one way everything is a number but
// the start of the coating and the wall when new, which are normal:
//
//   wall(t) = W - [s h(t - T) + i (t - T_in)] / 1000               mm; t from the tube's start
//   zinc first   T = when the coating of that way is at 0 um; bare steel: T = 0
//   outside      ln s = ln(zinc rate of the way) + ln F + 0.50 z   um/yr, mean of 20 years
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
// so that W given a way is N(m, 1/p). The third term of e_j is that no wall follows a law exactly;
// 0.30 and 0.50 were chosen on invented portfolios with known truth, on the safe side.
// Where zinc may be gone by the last reading, the start of the coating is put on 3 nodes too.
// Sources: series of coating and steel, and steel 10 to 40 times as fast as zinc: the tables of ISO
// 9223:2012 and the lives of ISO 14713-1; exponent: ISO 9224:2012 (0.523 mean, 0.575 upper; 0.75
// here, on the safe side); wall of new welded tube: tolerance of EN 10255. Shares and chances of
// rust inside are common practice, no source.
// Limits: even loss; no pits, no crevice at a fitting's mouth, no ground line.

#include <vector>

#include "core/corrosion/attack.h"
#include "core/forecast/predictive.h"
#include "core/forecast/wall/wall_data.h"
#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

/// h(t) and its inverse from a table of equal steps: many are asked for in each chance.
class PathTable {
 public:
  explicit PathTable(const corrosion::AttackPath& path);

  /// Ages below 0 count one to one, beyond the table by the path's own line.
  [[nodiscard]] double effective_age(double age_years) const;
  [[nodiscard]] double age(double effective_age_years) const;

 private:
  std::vector<double> effective_;
  std::vector<double> age_;
  double slope_;  ///< of effective age, past the table
};

struct WallWay {
  double weight = 0;
  double zinc_um_per_year = 0;  ///< 0: bare
  double start_um = 0;          ///< coating
  double start_variance = 0;    ///< um^2
  double ahead = 1;             ///< loss of zinc after the as-of date, times
  double steel_um_per_year = 0;
  double inside_um_per_year = 0;
  double hollow_age_now = 0;  ///< years for which the inside has rusted by the as-of date
  bool open = false;          ///< its hollow rusts
  double wall_mm = 0;         ///< mean and sd of the wall when new
  double wall_sd_mm = 0;
};

struct WallQuestion {
  const WallTube* tube;
  const Posterior* coating;   ///< null: bare steel
  Clock clock;                ///< of the coating; of bare steel its path is not used
  double hollow_age_now = 0;  ///< from the tube's first year
  Date as_of;
  const PathTable* zinc_path;
  const PathTable* steel_path;
};

/// Weights sum to 1.
std::vector<WallWay> wall_ways(const WallQuestion& question);

/// When the zinc of a way ends, with what is the same for all ways of a tube worked out once.
class ZincEnd {
 public:
  explicit ZincEnd(const WallQuestion& question);

  /// Age at which the coating is at 0 um, the start at its mean; 0 for bare steel.
  [[nodiscard]] double age(const WallWay& way) const;
  /// Chance that it is there at an age: the root of predictive.h.
  [[nodiscard]] double gone_chance(const WallWay& way, double age_years) const;
  /// Metal lost from both faces, um, so many years after the as-of date.
  [[nodiscard]] double lost_um(const WallQuestion& question, const WallWay& way,
                               double years) const;

 private:
  [[nodiscard]] double effective(double age_years) const {
    return path_ != nullptr ? path_->effective_age(age_years) : age_years;
  }

  const statistics::NormalTable& normal_ = statistics::normal_table();
  const PathTable* path_;  ///< null: start not known, age counts one to one
  double age_now_;
  double now_;  ///< effective
  double excess_um2_;
};

}  // namespace kneerail::forecast
