#include "schema/store/later_visits.h"

#include <algorithm>
#include <map>
#include <utility>

#include "schema/store/portfolio_tables.h"

namespace kneerail {

Result<std::vector<LaterVisit>> visits_after(Database& tables, Date as_of) {
  auto from = PortfolioTables::open(tables, {});
  if (!from) return fail(from.error(), "The visits of the register could not be read: ");
  const auto& visits = (*from)->visits();
  std::map<std::pair<Date, std::string>, std::int64_t> readings;
  for (const auto& visit : visits)
    if (visit.day > as_of) readings.emplace(std::pair(visit.day, visit.site), 0);
  std::vector<LaterVisit> later;
  if (readings.empty()) return later;
  const auto counted = (*from)->each_reading([&](const ReadingFact& fact) {
    const auto& visit = visits[static_cast<std::size_t>(fact.visit)];
    if (visit.day > as_of)
      readings[{visit.day, visit.site}] += static_cast<std::int64_t>(fact.values.size());
    return Result<>(Done{});
  });
  if (!counted) return fail(counted.error());
  for (const auto& [key, count] : readings) later.push_back({key.second, key.first, count});
  return later;
}

}  // namespace kneerail
