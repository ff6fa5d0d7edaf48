#include "core/forecast/coming_due.h"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "core/forecast/predictive.h"

namespace kneerail::forecast {

namespace {

constexpr std::array<double, 4> years_of_p_by{0, 1, 2, 5};

struct Known {
  double chance;
  double years;
};

/// Everything the row says, rising.
std::vector<Known> known_points(const LimitForecast& row) {
  std::vector<Known> points;
  for (std::size_t i = 0; i < row.p_by.size(); ++i)
    points.push_back({row.p_by[i], years_of_p_by[i]});
  for (std::size_t i = 0; i < row.years.size(); ++i)
    points.push_back({quantile_levels[i], row.years[i]});
  std::sort(points.begin(), points.end(), [](const Known& a, const Known& b) {
    return std::pair(a.chance, a.years) < std::pair(b.chance, b.years);
  });
  return points;
}

}  // namespace

double years_to_chance(const LimitForecast& row, double chance) {
  constexpr double never = std::numeric_limits<double>::infinity();
  if (!row.answered) return never;
  if (row.p_by[0] >= chance) return 0;
  Known before{row.p_by[0], 0};
  for (const Known& point : known_points(row)) {
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

std::vector<RunComing> coming_due(const Portfolio& portfolio, const CoatingForecast& forecast,
                                  const std::string& site, const ComingQuestion& question) {
  std::map<std::string, RunComing> runs;
  for (const LimitForecast& row : forecast.limits) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(row.part)];
    if (part.site != site || row.limit != Limit::coating_exhausted || !row.answered) continue;
    RunComing& run = runs[part.run];
    ++run.parts;
    constexpr double as_likely_as_not = 0.5;
    const bool likely = years_to_chance(row, as_likely_as_not) <= question.years;
    const auto place = static_cast<std::size_t>(std::clamp(part.consequence, 0, 3));
    const auto& chance = question.chance[place];
    run.likely += likely ? 1 : 0;
    run.may += likely || (chance && years_to_chance(row, *chance) <= question.years) ? 1 : 0;
  }
  std::vector<RunComing> coming;
  for (auto& [name, run] : runs) {
    run.site = site;
    run.run = name;
    coming.push_back(std::move(run));
  }
  return coming;
}

}  // namespace kneerail::forecast
