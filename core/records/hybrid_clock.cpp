#include "core/records/hybrid_clock.h"

#include <algorithm>

namespace kneerail {
namespace {

constexpr int counter_max = 65'535;
constexpr std::int64_t l_max = (std::int64_t{1} << 53) - 1;

HybridTime counted_on(HybridTime clock) {
  if (clock.c < counter_max) return {clock.l, clock.c + 1};
  return {clock.l + 1, 0};
}

}  // namespace

HybridTime own_entry(HybridTime clock, std::int64_t now_ms) {
  const std::int64_t now = std::min(now_ms, l_max);
  if (now > clock.l) return {now, 0};
  return counted_on(clock);
}

std::int64_t effective_ms(std::int64_t l, std::optional<std::int64_t> recv_ms) {
  return recv_ms ? std::min(l, *recv_ms) : l;
}

HybridTime seen(HybridTime clock, std::int64_t record_l, std::int64_t recv_ms) {
  const std::int64_t after = effective_ms(record_l, recv_ms) + 1;
  return after > clock.l ? HybridTime{after, 0} : clock;
}

HybridTime all_sent(std::optional<std::int64_t> greatest_e_ms) {
  return greatest_e_ms ? HybridTime{*greatest_e_ms + 1, 0} : HybridTime{};
}

MergeKey merge_key(const Record& record, const Uuid& device, const std::optional<Stamp>& stamp) {
  const auto recv = stamp ? std::optional(stamp->recv) : std::nullopt;
  return {effective_ms(record.l, recv), record.l, record.c, device};
}

MergeKey merge_key(const PlacedRecord& placed) {
  return merge_key(placed.record, placed.device, placed.stamp);
}

HybridTime published_send(HybridTime clock, std::int64_t pt_ms) {
  const std::int64_t l = std::max(clock.l, pt_ms);
  return {l, l == clock.l ? clock.c + 1 : 0};
}

HybridTime published_receive(HybridTime clock, HybridTime message, std::int64_t pt_ms) {
  const std::int64_t l = std::max({clock.l, message.l, pt_ms});
  if (l == clock.l && l == message.l) return {l, std::max(clock.c, message.c) + 1};
  if (l == clock.l) return {l, clock.c + 1};
  if (l == message.l) return {l, message.c + 1};
  return {l, 0};
}

std::int64_t jump_ms(const ClockMoment& from, const ClockMoment& to) {
  return (to.wall_ms - from.wall_ms) - (to.monotonic_ms - from.monotonic_ms);
}

bool begins_segment(const ClockMoment& segment_begin, const ClockMoment& now) {
  if (now.boot != segment_begin.boot) return true;
  const std::int64_t jump = jump_ms(segment_begin, now);
  return jump > jump_ms_max || jump < -jump_ms_max;
}

}  // namespace kneerail
