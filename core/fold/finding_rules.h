#pragma once

// How a hazard stands, and the one rule of what holds people back.

#include <cstdint>
#include <vector>

#include "core/records/made_safe.h"

namespace kneerail::fold {

/// Column hazard_state of table finding.
namespace hazard_state {
inline constexpr std::int64_t none = 0;
inline constexpr std::int64_t open = 1;
inline constexpr std::int64_t made_safe = 2;
inline constexpr std::int64_t ended = 3;
}  // namespace hazard_state

/// Whether these measures make a hazard safe; codes of Measure. Tape warns, a call tells, a closure
/// below keeps others from under it: none of them holds anyone back. A rail that is down is a
/// hazard itself, so struck holds only beside closed off or guarded, or behind a standing closure.
bool hold_people_back(const std::vector<std::int64_t>& measures, bool behind_barrier);

}  // namespace kneerail::fold
