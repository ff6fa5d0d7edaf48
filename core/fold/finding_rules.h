#pragma once

// Codes about findings, and the one rule of what holds people back.

#include <cstdint>
#include <vector>

namespace kneerail::fold {

/// Kind 33, key 1.
namespace measure {
inline constexpr std::int64_t closed_off = 1;
inline constexpr std::int64_t propped = 2;
inline constexpr std::int64_t taped = 3;
inline constexpr std::int64_t struck = 4;
inline constexpr std::int64_t reported = 5;
inline constexpr std::int64_t guarded = 6;
inline constexpr std::int64_t closed_below = 7;
}  // namespace measure

/// Kind 37, key 1.
namespace look {
inline constexpr std::int64_t in_place = 1;
inline constexpr std::int64_t put_back = 2;
inline constexpr std::int64_t gone = 3;
inline constexpr std::int64_t not_seen = 4;
}  // namespace look

/// Column hazard_state of table finding.
namespace hazard_state {
inline constexpr std::int64_t none = 0;
inline constexpr std::int64_t open = 1;
inline constexpr std::int64_t made_safe = 2;
inline constexpr std::int64_t ended = 3;
}  // namespace hazard_state

/// Whether these measures make a hazard safe. Tape warns, a call tells, a closure below keeps
/// others from under it: none of them holds anyone back. A rail that is down is a hazard itself,
/// so struck holds only beside closed off or guarded, or behind a standing closure.
bool hold_people_back(const std::vector<std::int64_t>& measures, bool behind_barrier);

}  // namespace kneerail::fold
