#include "schema/store/bay_store.h"

#include <algorithm>
#include <tuple>

#include "core/records/rule_set.h"
#include "core/records/torque_reading.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

struct Named {
  std::string name;
  cbor::Map rest;  ///< the fields that have no column
};
/// Empty where it has not been received.
Result<Named> thing_of(Database& tables, const Uuid& id) {
  Named thing;
  auto done = each_row(tables, "SELECT rest, name FROM entity WHERE id = ?1", {id},
                       [&](const Statement& row) -> Result<> {
                         auto map = map_in(row, 0);
                         if (!map) return fail(map.error());
                         thing.rest = std::move(*map);
                         if (!row.is_null(1)) thing.name = row.text(1);
                         return Done{};
                       });
  if (!done) return fail(done.error());
  return thing;
}

/// Rows of [use class, drop, least height].
std::optional<std::int64_t> least_height(const cbor::Map& geometry,
                                         std::optional<std::int64_t> use_class,
                                         std::int64_t drop_mm) {
  constexpr int rows_key = 1;
  std::optional<std::int64_t> least;
  const auto* rows = geometry.find(rows_key);
  if (rows == nullptr || rows->array() == nullptr) return least;
  for (const cbor::Value& row : *rows->array()) {
    if (row.array() == nullptr || row.array()->size() != 3) continue;
    const auto* of_class = (*row.array())[0].number();
    const auto* from_drop = (*row.array())[1].number();
    const auto* height = (*row.array())[2].number();
    if (of_class == nullptr || from_drop == nullptr || height == nullptr) continue;
    if (use_class == *of_class && drop_mm >= *from_drop)
      least = std::max(least.value_or(*height), *height);
  }
  return least;
}

void take_limits(BayRules& rules, const cbor::Map& rule_set,
                 std::optional<std::int64_t> use_class) {
  enum : int { gap_below = 3, gap_between = 4 };
  const auto* limits = rule_set.find(rule_set_field::limits);
  if (limits == nullptr || limits->map() == nullptr) return;
  const auto* geometry = limits->map()->find(limit_key::geometry);
  if (geometry == nullptr || geometry->map() == nullptr) return;
  rules.height_least_mm = least_height(*geometry->map(), use_class, rules.drop_mm.value_or(0));
  rules.gap_below_most_mm = number_in(*geometry->map(), gap_below);
  rules.gap_between_most_mm = number_in(*geometry->map(), gap_between);
}

/// When something was written, and whether it tightened, or what was felt.
struct Handled {
  std::int64_t l = 0;
  std::int64_t c = 0;
  std::optional<Felt> felt;
  auto operator<=>(const Handled&) const = default;
};

}  // namespace

Result<BayRules> bay_rules(Database& tables, const BayPlace& place) {
  const auto site = thing_of(tables, place.site);
  if (!site) return fail(site.error());
  const auto run = thing_of(tables, place.run);
  if (!run) return fail(run.error());
  const auto bay = thing_of(tables, place.bay);
  if (!bay) return fail(bay.error());
  const auto own = [&](int of_bay, int of_run) {
    const auto said = number_in(bay->rest, of_bay);
    return said ? said : number_in(run->rest, of_run);
  };
  BayRules rules;
  rules.drop_mm = own(bay_field::drop_behind, run_field::drop_behind);
  if (const auto below = own(bay_field::what_is_below, run_field::what_is_below))
    rules.below = static_cast<WhatIsBelow>(*below);
  rules.rule_set = id_in(site->rest, site_field::rule_set);
  if (!rules.rule_set) return rules;
  const auto rule_set = thing_of(tables, *rules.rule_set);
  if (!rule_set) return fail(rule_set.error());
  rules.name = rule_set->name;
  take_limits(rules, rule_set->rest, number_in(run->rest, run_field::use_class));
  return rules;
}

Result<BayLooks> looks_at_bay(Database& tables, const BayQuestion& question) {
  BayLooks looks;
  auto done = each_row(
      tables,
      "SELECT kind, what, v1, v2, visit FROM reading WHERE subject = ?1 AND kind IN (24, 25, 26) "
      "AND voided_by IS NULL AND held = 0 ORDER BY l, c, record",
      {question.bay}, [&](const Statement& row) -> Result<> {
        const Uuid visit = row.uuid(4);
        if (question.visit ? visit != *question.visit : visit == question.not_of_visit)
          return Done{};
        if (row.number(0) == HandLoad::kind) {
          looks.felt = static_cast<Felt>(row.number(1));
        } else if (row.number(0) == Geometry::kind) {
          looks.measured_mm[static_cast<Measured>(row.number(1))] = row.number(2);
        } else {
          looks.gate = GateCheck{visit,
                                 static_cast<ClosesByItself>(row.number(1)),
                                 static_cast<YesNo>(row.number(2)),
                                 static_cast<YesNo>(row.number(3)),
                                 {}};
        }
        return Done{};
      });
  if (!done) return fail(done.error());
  return looks;
}

Result<bool> gives_still(Database& tables, const GivesQuestion& question) {
  std::vector<Handled> events;
  auto done =
      each_row(tables,
               "SELECT l, c, what FROM reading WHERE subject = ?1 AND visit = ?2 AND "
               "kind = 24 AND voided_by IS NULL AND held = 0",
               {question.bay, question.visit}, [&](const Statement& row) -> Result<> {
                 events.push_back({row.number(0), row.number(1), static_cast<Felt>(row.number(2))});
                 return Done{};
               });
  if (!done) return fail(done.error());
  for (const Uuid& part : question.parts) {
    done = each_row(tables,
                    "SELECT l, c, censoring FROM reading WHERE subject = ?1 AND visit = ?2 AND "
                    "kind = 22 AND voided_by IS NULL AND held = 0",
                    {part, question.visit}, [&](const Statement& row) -> Result<> {
                      if (static_cast<Censoring>(row.number(2)) != Censoring::not_measurable)
                        events.push_back({row.number(0), row.number(1), {}});
                      return Done{};
                    });
    if (!done) return fail(done.error());
  }
  std::sort(events.begin(), events.end());
  bool gives = false;
  bool tightened = false;
  for (const Handled& event : events) {
    if (!event.felt) tightened = true;
    if (event.felt == Felt::gives) {
      gives = true;
      tightened = false;
    }
    if (event.felt == Felt::moves || (event.felt == Felt::firm && tightened)) gives = false;
  }
  return gives;
}

}  // namespace kneerail
