#pragma once

// When a tube's wall is down to its limit: a mixture over the ways of wall_law.h and 2 nodes of the
// wall when new,
//
//   P(T <= t) = sum w P(zinc gone by t - a),   a = age at which the way's outside loss makes up
//                                              1000 (W - limit) less what is lost inside by t
//
// 1 where the inside alone has brought it there. The wall of the law is the mean of a tube's
// places; from the day on which one of them was read at or under the limit the chance is at least
// that of this place (WallTube::thin). The nodes carry three quarters of the variance of W; the
// rest is normal about them, so that the chance has no steps. No simulation, so no seed. Rises with
// time.

#include <array>
#include <span>
#include <vector>

#include "core/forecast/wall/wall_law.h"

namespace kneerail::forecast {

/// The ways that share one rate of zinc, bare steel's one rate of steel, and what they say
/// together.
struct WallOfRate {
  double weight = 0;       ///< of all ways
  double ln_rate = 0;      ///< ln um/yr, mean of 20 years: of the zinc, of bare steel its own
  std::vector<double> by;  ///< chance that the limit is reached, one for each of the years asked
};

class WallOutlook {
 public:
  /// Keeps the question; what it points to outlives this.
  explicit WallOutlook(const WallQuestion& question);

  /// False: no way had a weight that is a number, and nothing else here is to be asked.
  [[nodiscard]] bool computed() const { return !ways_.ways.empty(); }

  /// Chance that the wall is at or under its limit so many years after the as-of date or before.
  [[nodiscard]] double chance_by(double years) const;

  /// The same apart for each such rate: their mean by weight is chance_by(), or more where a
  /// place was read at or under the limit.
  [[nodiscard]] std::vector<WallOfRate> by_rate(std::span<const double> years) const;

  /// 5, 10, 25, 50, 75, 90, 95 % of the years from the as-of date; inf where the chance within 300
  /// years stays below. Never falling. To 0.005 year or 0.0003 of chance.
  [[nodiscard]] std::array<double, 7> quantiles() const;

  /// Mean wall on the as-of date, mm, at least 0.
  [[nodiscard]] double wall_now_mm() const;
  /// Chance that the zinc is gone outside by the as-of date.
  [[nodiscard]] double zinc_gone_now() const;
  /// Chance that the hollow rusts, after the readings.
  [[nodiscard]] double open_chance() const;
  /// 10, 50, 90 % of the steel's loss outside once its zinc is gone, um/yr, mean of 20 years.
  [[nodiscard]] std::array<double, 3> steel_um_per_year() const;

 private:
  struct Left;  ///< what a way's outside may still lose
  [[nodiscard]] std::vector<Left> left_of_insides(double years) const;
  /// By the places read at or under the limit so many years after the as-of date or before.
  [[nodiscard]] double least_chance(double years) const;
  /// Chance that the limit is reached at an age, in one way.
  [[nodiscard]] double reached(const WallWay& way, const Left& left, double age) const;

  WallQuestion question_;
  ZincEnd zinc_;
  WallWays ways_;
  GoneCurves curves_;
};

}  // namespace kneerail::forecast
