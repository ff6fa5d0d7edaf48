#pragma once

// Hybrid logical clocks: time that never runs against cause and effect, and stays near the wall
// clock when that is right. A device keeps one per feed. A record that was written with another in
// sight always has the larger merge key, however wrong either clock is; of two that did not see
// each other the key only says which is shown meanwhile.
//
// Why: let b be in sight when F is written. On one chain l, c and recv do not fall. Otherwise b was
// stamped before, so l(F) >= e(b) + 1, and recv(F) > recv(b) >= e(b), because recv strictly rises
// in a feed; so min(l, recv) of F is above that of b, which is e(b).

#include <compare>
#include <cstdint>
#include <optional>

#include "core/records/record.h"

namespace kneerail {

struct HybridTime {
  std::int64_t l = 0;  ///< ms since 1970 UTC
  int c = 0;           ///< counts entries of one l
  auto operator<=>(const HybridTime&) const = default;
};

/// The clock after an entry of one's own, which is also the entry's time. now_ms: wall clock plus
/// the last known offset to the hub. A counter that is used up moves l on by 1 ms.
HybridTime own_entry(HybridTime clock, std::int64_t now_ms);

/// e of a record: its l, but no later than the hub received it. Unsent: its l.
std::int64_t effective_ms(std::int64_t l, std::optional<std::int64_t> recv_ms);

/// The clock after a record with a stamp was pulled or acknowledged.
HybridTime seen(HybridTime clock, std::int64_t record_l, std::int64_t recv_ms);

/// The clock after a push that leaves nothing unsent in the feed, from the greatest e of all its
/// records; a clock that ran ahead is forgotten. Nothing when the feed has no record.
HybridTime all_sent(std::optional<std::int64_t> greatest_e_ms);

/// Larger wins. Total: no two records of one feed have the same.
struct MergeKey {
  std::int64_t e = 0;
  std::int64_t l = 0;
  int c = 0;
  Uuid device;
  auto operator<=>(const MergeKey&) const = default;
};
MergeKey merge_key(const Record& record, const Uuid& device, const std::optional<Stamp>& stamp);
MergeKey merge_key(const PlacedRecord& placed);

// The algorithm as published, without stamps: Kulkarni, Demirbas, Madappa, Avva and Leone 2014,
// "Logical physical clocks", figure 5. The reference rows are evaluated with it.

/// A local or send event at physical time pt_ms: l' = max(l, pt), c' = c + 1 if l' = l, else 0.
HybridTime published_send(HybridTime clock, std::int64_t pt_ms);
/// A receive event: l' = max(l, lm, pt); c' = max(c, cm) + 1 if l' = l = lm, c + 1 if l' = l,
/// cm + 1 if l' = lm, else 0.
HybridTime published_receive(HybridTime clock, HybridTime message, std::int64_t pt_ms);

/// What a device's two clocks show at one moment.
struct ClockMoment {
  std::int64_t boot = 0;          ///< counts the device's starts
  std::int64_t monotonic_ms = 0;  ///< since that start
  std::int64_t wall_ms = 0;
  bool operator==(const ClockMoment&) const = default;
};

inline constexpr std::int64_t jump_ms_max = 2'000;

/// How far the wall clock went ahead of the monotonic one between two moments of one boot, ms.
std::int64_t jump_ms(const ClockMoment& from, const ClockMoment& to);
/// Whether a new clock segment begins: another boot, or wall and monotonic clock have come to
/// disagree by more than 2 s since the segment began.
bool begins_segment(const ClockMoment& segment_begin, const ClockMoment& now);

}  // namespace kneerail
