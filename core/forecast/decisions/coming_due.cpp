#include "core/forecast/decisions/coming_due.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/forecast/decisions/chances.h"

namespace kneerail::forecast {

std::vector<RunComing> coming_due(const Portfolio& portfolio,
                                  const std::vector<LimitForecast>& rows, const std::string& site,
                                  const ComingQuestion& question) {
  std::map<std::string, RunComing> runs;
  for (const LimitForecast& row : rows) {
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
