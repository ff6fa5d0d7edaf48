#pragma once

// What a bay is asked: the limits of the owner's rule set there, what was felt and measured last,
// and whether a bay that gave has been made firm since.

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/entities.h"
#include "core/records/gate_check.h"
#include "core/records/geometry.h"
#include "core/records/hand_load.h"
#include "schema/database.h"

namespace kneerail {

/// Limits of the site's rule set as they bear on one bay. Absent: not set, or not said.
struct BayRules {
  std::optional<Uuid> rule_set;
  std::string name;  ///< of the rule set
  std::optional<std::int64_t> height_least_mm;
  std::optional<std::int64_t> gap_below_most_mm;
  std::optional<std::int64_t> gap_between_most_mm;
  std::optional<std::int64_t> drop_mm;  ///< behind the bay, else behind its run
  std::optional<WhatIsBelow> below;
};
struct BayPlace {
  Uuid site;
  Uuid run;
  Uuid bay;
};
/// The least height is the highest that is asked for the run's use class at drops up to its own.
/// Errors: io, corrupt.
Result<BayRules> bay_rules(Database& tables, const BayPlace& place);

/// The last of each kind; void and held ones say nothing.
struct BayLooks {
  std::optional<Felt> felt;
  std::map<Measured, std::int64_t> measured_mm;
  std::optional<GateCheck> gate;
};
struct BayQuestion {
  Uuid bay;
  std::optional<Uuid> visit;  ///< only of that one; none: of any other than `not_of_visit`
  Uuid not_of_visit;
};
/// Errors: io, corrupt.
Result<BayLooks> looks_at_bay(Database& tables, const BayQuestion& question);

/// In that visit the bay gave, and was not pushed firm after one of those parts' screws had been
/// tightened; nor did it move, which is worse. Errors: io.
struct GivesQuestion {
  Uuid bay;
  Uuid visit;
  std::vector<Uuid> parts;  ///< with screws, that hold the bay
};
Result<bool> gives_still(Database& tables, const GivesQuestion& question);

}  // namespace kneerail
