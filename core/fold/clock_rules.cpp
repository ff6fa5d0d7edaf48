#include <algorithm>
#include <map>

#include "core/fold/folding.h"

// The offset of each clock segment. A segment that met the hub is measured. One that ended by a
// jump takes the next one's offset and the size of the jump; one that ended by a reboot takes the
// next one's offset, and its times are cut to the contacts before and after. Where no later segment
// knows, the last known offset stands, provisionally.

namespace kneerail::fold {

namespace {

/// What the clock records of one segment say.
struct Segment {
  std::optional<std::int64_t> boot;
  std::int64_t monotonic_ms = 0;  ///< at its first clock record
  std::int64_t wall_ms = 0;
  bool begun = false;
  struct Contact {
    std::int64_t uncertainty_ms = 0;
    MergeKey key;
    std::int64_t hub_ms = 0;
    std::int64_t wall_ms = 0;
  };
  std::optional<Contact> contact;  ///< the surest
  ClockOffset offset;
  bool known = false;
};

bool surer(const Segment::Contact& a, const Segment::Contact& b) {
  return std::tie(a.uncertainty_ms, a.key) < std::tie(b.uncertainty_ms, b.key);
}

void take(Segment& segment, const Fact& clock) {
  const cbor::Map& body = clock.record().body;
  const std::int64_t monotonic = number_in(body, 3).value_or(0);
  const std::int64_t wall = number_in(body, 4).value_or(0);
  if (!segment.begun || monotonic < segment.monotonic_ms) {
    segment.begun = true;
    segment.boot = number_in(body, 2);
    segment.monotonic_ms = monotonic;
    segment.wall_ms = wall;
  }
  const auto hub = number_in(body, 6);
  if (!hub) return;
  const Segment::Contact contact{number_in(body, 7).value_or(0), clock.key, *hub, wall};
  if (!segment.contact || surer(contact, *segment.contact)) segment.contact = contact;
}

void measure(Segment& segment) {
  if (!segment.contact) return;
  segment.offset.offset_ms = segment.contact->hub_ms - segment.contact->wall_ms;
  segment.offset.quality = quality::measured;
  segment.offset.uncertainty_ms = segment.contact->uncertainty_ms;
  segment.known = true;
}

void take_from_next(Segment& segment, const Segment& next) {
  if (segment.known || !next.known || !segment.begun || !next.begun) return;
  segment.known = true;
  segment.offset = next.offset;
  segment.offset.lower_ms = segment.offset.upper_ms = std::nullopt;
  if (segment.boot == next.boot) {
    segment.offset.offset_ms +=
        (next.wall_ms - segment.wall_ms) - (next.monotonic_ms - segment.monotonic_ms);
  } else {
    segment.offset.quality = quality::assumed;
    segment.offset.uncertainty_ms = std::nullopt;
  }
}

using Segments = std::map<std::int64_t, Segment>;

void bound_the_assumed(Segments& segments) {
  std::optional<std::int64_t> before;
  for (auto& [g, segment] : segments) {
    if (segment.offset.quality == quality::assumed) segment.offset.lower_ms = before;
    if (segment.contact)
      before = std::max(before.value_or(segment.contact->hub_ms), segment.contact->hub_ms);
  }
  std::optional<std::int64_t> after;
  for (auto at = segments.rbegin(); at != segments.rend(); ++at) {
    Segment& segment = at->second;
    if (segment.offset.quality == quality::assumed) segment.offset.upper_ms = after;
    if (segment.contact)
      after = std::min(after.value_or(segment.contact->hub_ms), segment.contact->hub_ms);
  }
}

void settle(Segments& segments) {
  for (auto& [g, segment] : segments) measure(segment);
  for (auto at = segments.rbegin(); at != segments.rend(); ++at) {
    if (at == segments.rbegin()) continue;
    take_from_next(at->second, std::prev(at)->second);
  }
  std::int64_t last_known = 0;
  for (auto& [g, segment] : segments) {
    if (segment.known) {
      last_known = segment.offset.offset_ms;
    } else {
      segment.offset.offset_ms = last_known;
    }
  }
  bound_the_assumed(segments);
}

/// Every record of the segment has another time now.
void refresh_segment(Folding& folding, const Uuid& dev, const Uuid& feed, std::int64_t g) {
  for (const Row& row : folding.rows(table_fact, fact_by_segment, {dev, feed, g})) {
    const PlacedRecord placed = placed_of_fact(row);
    if (placed.record.kind != kind::clock) refresh(folding, placed);
    if (const auto visit = visit_of(placed.record)) folding.respan(*visit);
  }
  for (const Row& use : folding.rows_of_key(table_clock_use, {dev, feed, g})) {
    const Uuid visit = id_in(use, at(clock_use_columns, "visit"));
    for (const Row& row : folding.rows(table_reading, reading_by_visit, {visit})) {
      if (id_in(row, at(reading_columns, "dev")) == dev &&
          id_in(row, at(reading_columns, "feed")) == feed &&
          number_in(row, at(reading_columns, "g")) == g) {
        refresh_reading(folding, row);
      }
    }
  }
}

}  // namespace

void derive_segments(Folding& folding, const Job& job) {
  Segments segments;
  const Uuid& dev = job.a;
  const Uuid& feed = job.b;
  for (const Row& row : folding.rows_of_key(table_clock_segment, {dev, feed})) {
    segments[number_in(row, at(clock_segment_columns, "g"))];
  }
  for (const Row& row : folding.rows(table_fact, fact_by_about, {dev, std::int64_t{kind::clock}})) {
    Fact clock;
    clock.placed = placed_of_fact(row);
    clock.key = merge_key(clock.placed);
    if (clock.placed.device != dev || clock.placed.feed != feed) continue;
    const std::int64_t g = number_in(clock.record().body, 1).value_or(clock.record().g);
    take(segments[g], clock);
  }
  settle(segments);
  for (const auto& [g, segment] : segments) {
    if (folding.put(table_clock_segment, clock_row(dev, feed, g, segment.offset))) {
      refresh_segment(folding, dev, feed, g);
    }
  }
}

void ensure_clock(Folding& folding, const PlacedRecord& placed) {
  const std::int64_t g = placed.record.g;
  if (!folding.row(table_clock_segment, {placed.device, placed.feed, g})) {
    folding.put_unseen(table_clock_segment, clock_row(placed.device, placed.feed, g, {}));
    derive_segments(folding, {.stage = Stage::segments, .a = placed.device, .b = placed.feed});
  }
  if (!is_reading(placed.record.kind)) return;
  const Uuid visit = visit_of(placed.record).value_or(Uuid{});
  if (!folding.row(table_clock_use, {placed.device, placed.feed, g, visit})) {
    folding.put_unseen(table_clock_use, Row{placed.device, placed.feed, g, visit});
  }
}

}  // namespace kneerail::fold
