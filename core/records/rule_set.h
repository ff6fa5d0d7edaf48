#pragma once

// The limits an owner sets (field 3 of a rule set): {limit key: value}. None is built in; what is
// missing is left out, never 0. Where a limit has more than one number its value is a map of them,
// or a list of rows.

#include <cstdint>
#include <optional>

#include "core/records/cbor.h"
#include "core/records/field.h"

namespace kneerail {

namespace limit_key {
enum : int {
  zinc_gone = 1,         ///< 0.1 µm
  first_maintenance,     ///< 0.1 µm
  wall_share_least,      ///< of the nominal wall, 0.1 %
  torque_share_least,    ///< of the target, 0.1 %
  deflection,            ///< {1: most deflection 0.1 mm, 2: test load N}
  replace_grade,         ///< 2 to 5
  visit_interval,        ///< [[use class, corrosivity category, days]]
  hazard_time,           ///< {1: hours to made safe, 2: days to ended}
  instrument_check_age,  ///< hours
  sample_share,          ///< 0.1 %
  geometry,              ///< {1: [[use class, drop mm, least height mm]], 2: greatest post
                         ///< spacing, 3: greatest gap below, 4: greatest gap between, mm}
  spare_chance,          ///< 0.1 %
  visit_after_event,     ///< {kind of event: hours}
  limit_chance,          ///< {consequence: 0.1 %}
  discount_rate,         ///< 0.1 %
  costs,                 ///< {1: visit, 2: work hour, 3: day with a bay closed}, 1/100 currency
  closure_look,          ///< {measure of made safe: hours}
  carried,               ///< {1: visits a grade may be carried, 2: visits a part may go unseen}
  telling,               ///< {1: hours from hazard to told, 2: from told to looked at}
  line_load              ///< along the top rail, unfactored, by load class: {use class: N/m}
};
}

/// Days between two visits at the most of runs of that use class in that corrosivity category, by
/// a set of limits; the shortest where it is said twice, nothing where it is not.
std::optional<std::int64_t> longest_interval_days(const cbor::Map& limits, std::int64_t use_class,
                                                  std::int64_t category);

/// The fields of {limit key: value}.
extern const Fields limit_fields;

namespace rule_set_detail {
extern const FieldInfo limit_parts[20];
}
constexpr FieldInfo limits_field(int key) {
  return field::map(key, "limits", rule_set_detail::limit_parts);
}

}  // namespace kneerail
