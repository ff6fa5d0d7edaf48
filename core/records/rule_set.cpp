#include "core/records/rule_set.h"

#include <algorithm>

namespace kneerail {
namespace {

using namespace field;

constexpr FieldInfo share(int key, std::string_view name) {
  return number(key, name, Unit::tenth_percent, 0, 1'000);
}
constexpr FieldInfo hours(int key, std::string_view name) {
  return number(key, name, Unit::hours, 0, 87'600);
}
constexpr FieldInfo length(int key, std::string_view name) {
  return number(key, name, Unit::mm, 0, 100'000);
}

constexpr FieldInfo deflection_parts[] = {deflection(1, "most deflection"), load(2, "test load")};
constexpr FieldInfo interval_parts[] = {
    must(count(1, "use class", 1, 9)),
    must(count(2, "corrosivity category", 1, 6)),
    must(number(3, "time between visits", Unit::days, 1, 36'500)),
};
constexpr FieldInfo one_interval = tuple(0, "interval", interval_parts);
constexpr FieldInfo hazard_parts[] = {hours(1, "time to made safe"),
                                      number(2, "time to ended", Unit::days, 0, 36'500)};
constexpr FieldInfo height_parts[] = {
    must(count(1, "use class", 1, 9)),
    must(number(2, "drop", Unit::mm_as_m, 0, 1'000'000)),
    must(length(3, "least rail height")),
};
constexpr FieldInfo one_height = tuple(0, "height", height_parts);
constexpr FieldInfo geometry_parts[] = {
    list(1, "least rail heights", 0, 100, one_height),
    length(2, "greatest post spacing"),
    length(3, "greatest gap below"),
    length(4, "greatest gap between"),
};
constexpr FieldInfo one_hours = hours(0, "time allowed");
constexpr FieldInfo one_chance = share(0, "chance");
constexpr FieldInfo cost_parts[] = {money(1, "cost of a visit"), money(2, "cost of a work hour"),
                                    money(3, "cost of a day with a bay closed")};
constexpr FieldInfo carried_parts[] = {count(1, "visits a grade may be carried", 0, 1'000),
                                       count(2, "visits a part may go unseen", 0, 1'000)};
constexpr FieldInfo one_load = line_load(0, "line load");
constexpr FieldInfo telling_parts[] = {hours(1, "time from hazard to told"),
                                       hours(2, "time from told to looked at")};

}  // namespace

namespace rule_set_detail {
constexpr FieldInfo limit_parts[20] = {
    thickness(limit_key::zinc_gone, "coating at which the zinc counts as gone"),
    thickness(limit_key::first_maintenance, "coating at which first maintenance is due"),
    share(limit_key::wall_share_least, "least share of nominal wall"),
    share(limit_key::torque_share_least, "least share of torque target"),
    map(limit_key::deflection, "deflection at the test load", deflection_parts),
    count(limit_key::replace_grade, "grade at which a part is replaced", 2, 5),
    list(limit_key::visit_interval, "longest time between visits", 0, 54, one_interval),
    map(limit_key::hazard_time, "time allowed for a hazard", hazard_parts),
    hours(limit_key::instrument_check_age, "age of an instrument check"),
    share(limit_key::sample_share, "share of fittings to sample"),
    map(limit_key::geometry, "geometry", geometry_parts),
    share(limit_key::spare_chance, "chance of having the spare"),
    table(limit_key::visit_after_event, "time allowed for the visit after an event", one_hours),
    table(limit_key::limit_chance, "chance at which a limit counts as reached", one_chance),
    share(limit_key::discount_rate, "discount rate"),
    map(limit_key::costs, "costs", cost_parts),
    table(limit_key::closure_look, "time between looks at a closure", one_hours),
    map(limit_key::carried, "visits without a fresh look", carried_parts),
    map(limit_key::telling, "time allowed for telling", telling_parts),
    table(limit_key::line_load, "line load along the top rail", one_load),
};
}  // namespace rule_set_detail

constexpr Fields limit_fields = {rule_set_detail::limit_parts, 20};

std::optional<std::int64_t> longest_interval_days(const cbor::Map& limits, std::int64_t use_class,
                                                  std::int64_t category) {
  std::optional<std::int64_t> shortest;
  const auto* intervals = limits.find(limit_key::visit_interval);
  if (intervals == nullptr || intervals->array() == nullptr) return shortest;
  for (const cbor::Value& one : *intervals->array()) {
    const auto* row = one.array();
    if (row == nullptr || row->size() != 3) continue;
    const auto* use = (*row)[0].number();
    const auto* air = (*row)[1].number();
    const auto* days = (*row)[2].number();
    if (use == nullptr || air == nullptr || days == nullptr) continue;
    if (*use == use_class && *air == category) shortest = std::min(*days, shortest.value_or(*days));
  }
  return shortest;
}

}  // namespace kneerail
