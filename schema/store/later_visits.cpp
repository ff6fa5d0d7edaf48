#include "schema/store/later_visits.h"

#include <algorithm>
#include <map>
#include <utility>

#include "schema/store/organisation_days.h"
#include "schema/store/portfolio_tables.h"

namespace kneerail {

namespace {

/// Whether any visit or reading is of a later day: else the register need not be read again.
Result<bool> has_later(Database& tables, Date as_of) {
  const auto days = organisation_days(tables);
  if (!days) return fail(days.error());
  for (const char* query : {"SELECT max(t) FROM visit WHERE voided_by IS NULL AND held = 0",
                            "SELECT max(joined_t) FROM visit_part", "SELECT max(t) FROM reading"}) {
    auto rows = tables.prepare(query);
    if (!rows) return fail(rows.error());
    if (const auto row = rows->step(); !row) return fail(row.error());
    if (rows->is_null(0)) continue;
    // One of noon UTC is of that day everywhere, so the last entry's day there is not the latest.
    const Instant last{rows->number(0)};
    if (std::max(days->zone.day(last), utc_day(last)) > as_of) return true;
  }
  return false;
}

}  // namespace

Result<std::vector<LaterVisit>> visits_after(Database& tables, Date as_of) {
  const auto later_ones = has_later(tables, as_of);
  if (!later_ones)
    return fail(later_ones.error(), "The visits of the register could not be read: ");
  if (!*later_ones) return std::vector<LaterVisit>();
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
    if (visit.day > as_of && !fact.is_void && !fact.is_held)
      readings[{visit.day, visit.site}] += static_cast<std::int64_t>(fact.values.size());
    return Result<>(Done{});
  });
  if (!counted) return fail(counted.error());
  for (const auto& [key, count] : readings) later.push_back({key.second, key.first, count});
  return later;
}

}  // namespace kneerail
