#include "core/forecast/decisions/chances.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/forecast/predictive.h"

namespace kneerail::forecast {

namespace {

/// Everything the row says, rising.
std::vector<ChanceAt> known_points(const LimitForecast& row) {
  std::vector<ChanceAt> points;
  for (std::size_t i = 0; i < row.p_by.size(); ++i)
    points.push_back({row.p_by[i], chance_years[i]});
  for (std::size_t i = 0; row.has_years && i < row.years.size(); ++i)
    points.push_back({quantile_levels[i], row.years[i]});
  if (!row.has_years) points.insert(points.end(), row.later.begin(), row.later.end());
  std::sort(points.begin(), points.end(), [](const ChanceAt& a, const ChanceAt& b) {
    return std::pair(a.chance, a.years) < std::pair(b.chance, b.years);
  });
  return points;
}

}  // namespace

double years_to_chance(const LimitForecast& row, double chance) {
  constexpr double never = std::numeric_limits<double>::infinity();
  if (!row.answered) return never;
  if (row.p_by[0] >= chance) return 0;
  ChanceAt before{row.p_by[0], 0};
  for (const ChanceAt& point : known_points(row)) {
    if (point.years == never) return never;
    if (point.chance >= chance) {
      const double rise = point.chance - before.chance;
      const double share = rise > 0 ? (chance - before.chance) / rise : 1;
      return std::max(0.0, before.years + share * (point.years - before.years));
    }
    if (point.years > before.years) before = point;
  }
  return never;
}

double chance_within(const LimitForecast& row, double years) {
  if (!row.answered) return 0;
  ChanceAt before{row.p_by[0], 0};
  for (const ChanceAt& point : known_points(row)) {
    if (point.years <= before.years) {
      if (point.years == before.years) before.chance = point.chance;  // two figures for one day
      continue;
    }
    if (point.years > years) {
      if (!std::isfinite(point.years)) break;
      const double share = (years - before.years) / (point.years - before.years);
      return before.chance + share * (point.chance - before.chance);
    }
    before = point;
  }
  return before.chance;
}

}  // namespace kneerail::forecast
