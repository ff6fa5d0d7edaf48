#include <algorithm>
#include <tuple>

#include "core/fold/naive.h"

// The judge's first steps: each record once, the clocks, what is void, settled and corrected, and
// with that the time of each record.

namespace kneerail::fold::naive {

namespace {

using Segment = std::tuple<Uuid, Uuid, std::int64_t>;  // device, feed, segment

/// Each record once, at the place that the hub numbered first; unsent: the smallest place.
std::vector<PlacedRecord> once(std::span<const PlacedRecord> placed) {
  using Place = std::tuple<Uuid, Uuid, Uuid, std::int64_t>;
  std::map<Place, PlacedRecord> by_place;
  for (const PlacedRecord& one : placed) {
    if (!makes_rows(one.record.kind)) continue;
    PlacedRecord& kept =
        by_place.try_emplace({one.record.id, one.feed, one.device, one.seq}, one).first->second;
    if (one.stamp) kept.stamp = one.stamp;
  }
  std::map<Uuid, PlacedRecord> by_id;
  for (const auto& [place, one] : by_place) {
    const auto [found, fresh] = by_id.try_emplace(one.record.id, one);
    if (fresh) continue;
    const std::optional<Stamp>& kept = found->second.stamp;
    if (one.stamp && (!kept || one.stamp->hseq < kept->hseq)) found->second = one;
  }
  std::vector<PlacedRecord> all;
  for (const auto& [id, one] : by_id) all.push_back(one);
  return all;
}

struct Clocked {
  const PlacedRecord* first = nullptr;    ///< the segment's clock record with the least uptime
  const PlacedRecord* contact = nullptr;  ///< its surest meeting with the hub
};

std::int64_t body_number(const PlacedRecord& clock, std::int64_t key) {
  return number_in(clock.record.body, key).value_or(0);
}

void take(Clocked& segment, const PlacedRecord& clock) {
  if (segment.first == nullptr || body_number(clock, 3) < body_number(*segment.first, 3)) {
    segment.first = &clock;
  }
  if (!number_in(clock.record.body, 6)) return;
  const auto sureness = [](const PlacedRecord& one) {
    return std::pair(body_number(one, 7), merge_key(one));
  };
  if (segment.contact == nullptr || sureness(clock) < sureness(*segment.contact)) {
    segment.contact = &clock;
  }
}

using Segments = std::map<std::int64_t, Clocked>;

/// Walks on to the first segment that met the hub, over jumps and reboots.
std::optional<ClockOffset> known(const Segments& segments, std::int64_t g) {
  ClockOffset offset{0, quality::measured, {}, {}, {}};
  for (auto now = segments.find(g);; ++now) {
    if (const PlacedRecord* contact = now->second.contact) {
      offset.offset_ms += body_number(*contact, 6) - body_number(*contact, 4);
      if (offset.quality == quality::measured) offset.uncertainty_ms = body_number(*contact, 7);
      return offset;
    }
    const auto next = std::next(now);
    if (next == segments.end()) return std::nullopt;
    const PlacedRecord* here = now->second.first;
    const PlacedRecord* there = next->second.first;
    if (here == nullptr || there == nullptr) return std::nullopt;
    if (number_in(here->record.body, 2) != number_in(there->record.body, 2)) {
      offset.quality = quality::assumed;
      continue;
    }
    offset.offset_ms += (body_number(*there, 4) - body_number(*here, 4)) -
                        (body_number(*there, 3) - body_number(*here, 3));
  }
}

ClockOffset offset_of(const Segments& segments, std::int64_t g) {
  ClockOffset offset;
  if (const auto found = known(segments, g)) {
    offset = *found;
  } else {
    for (const auto& [earlier, unused] : segments) {
      const auto there = earlier < g ? known(segments, earlier) : std::nullopt;
      if (there) offset.offset_ms = there->offset_ms;
    }
  }
  if (offset.quality != quality::assumed) return offset;
  for (const auto& [other, segment] : segments) {
    if (segment.contact == nullptr) continue;
    const std::int64_t hub = body_number(*segment.contact, 6);
    if (other < g) offset.lower_ms = std::max(offset.lower_ms.value_or(hub), hub);
    if (other > g) offset.upper_ms = std::min(offset.upper_ms.value_or(hub), hub);
  }
  return offset;
}

std::map<Segment, ClockOffset> put_clocks(std::span<const PlacedRecord> arrived,
                                          const std::vector<PlacedRecord>& all, TableStore& store) {
  std::map<std::pair<Uuid, Uuid>, Segments> chains;
  for (const PlacedRecord& one : arrived) {
    if (!makes_rows(one.record.kind)) continue;
    chains[{one.device, one.feed}][one.record.g];
    if (!is_reading(one.record.kind)) continue;
    store.put(table_clock_use, Row{one.device, one.feed, std::int64_t{one.record.g},
                                   visit_of(one.record).value_or(Uuid{})});
  }
  for (const PlacedRecord& one : all) {
    if (one.record.kind != kind::clock) continue;
    const std::int64_t g = number_in(one.record.body, 1).value_or(one.record.g);
    take(chains[{one.device, one.feed}][g], one);
  }
  std::map<Segment, ClockOffset> offsets;
  for (const auto& [chain, segments] : chains) {
    for (const auto& [g, segment] : segments) {
      const ClockOffset offset = offset_of(segments, g);
      offsets[{chain.first, chain.second, g}] = offset;
      store.put(table_clock_segment, clock_row(chain.first, chain.second, g, offset));
    }
  }
  return offsets;
}

}  // namespace

std::vector<Fact> facts_of(std::span<const PlacedRecord> placed, TableStore& store) {
  const std::vector<PlacedRecord> all = once(placed);
  const std::map<Segment, ClockOffset> offsets = put_clocks(placed, all, store);
  std::vector<Fact> facts;
  for (const PlacedRecord& one : all) {
    if (!is_reading(one.record.kind)) store.put(table_fact, fact_row(one));
    Fact fact;
    fact.placed = one;
    fact.shown = one.record.body;
    fact.key = merge_key(one);
    const ClockOffset& clock = offsets.at({one.device, one.feed, one.record.g});
    fact.time = time_of(one.record, fact.shown, clock);
    facts.push_back(std::move(fact));
  }
  return facts;
}

namespace {

/// The corrections of one body key that no other correction of that key names as seen.
Facts heads(const Facts& corrections) {
  Facts unseen;
  for (const Fact* one : corrections) {
    bool seen = false;
    for (const Fact* other : corrections) {
      if (other != one && contains(ids_in(other->record().body, 3), one->id())) seen = true;
    }
    if (!seen) unseen.push_back(one);
  }
  return unseen.empty() ? corrections : unseen;
}

cbor::Value corrected_value(const Fact& correction, std::int64_t key) {
  return *correction.record().body.find(1)->map()->find(key);
}

Facts touching(const Facts& corrections, std::int64_t key) {
  Facts found;
  for (const Fact* one : corrections) {
    const cbor::Value* values = one->record().body.find(1);
    if (values != nullptr && values->map() != nullptr && values->map()->has(key)) {
      found.push_back(one);
    }
  }
  return found;
}

void correct(const World& world, Fact& target) {
  const Facts corrections = world.counting(kind::correction, target.id());
  std::set<std::int64_t> keys;
  for (const Fact* one : corrections) {
    const cbor::Value* values = one->record().body.find(1);
    if (values == nullptr || values->map() == nullptr) continue;
    for (const auto& [key, value] : values->map()->pairs()) {
      if (key.number() != nullptr) keys.insert(*key.number());
    }
  }
  Facts shown;
  for (const std::int64_t key : keys) {
    const Facts left = heads(touching(corrections, key));
    const Fact* winner = largest_key(left);
    std::vector<Uuid> ids;
    bool differ = false;
    for (const Fact* one : left) {
      ids.push_back(one->id());
      differ = differ || corrected_value(*one, key) != corrected_value(*winner, key);
    }
    if (!differ) ids.clear();
    const auto named = clash(world, {target.id(), disagreement::correction, key,
                                     winner->placed.feed, ids, winner->id()});
    for (const Fact* one : left) {
      if (one->id() == named) winner = one;
    }
    target.change.corrected.set(key, corrected_value(*winner, key));
    shown.push_back(winner);
  }
  if (!shown.empty()) target.change.corrected_by = largest_key(shown)->id();
}

void mark_void(const World& world, Fact& target) {
  for (const Fact* one : world.counting(kind::voided, target.id())) {
    const Fact* before = target.change.voided_by ? world.find(*target.change.voided_by) : nullptr;
    if (before == nullptr || one->key < before->key) target.change.voided_by = one->id();
  }
}

void mark_released(const World& world, Fact& target) {
  Facts releases;
  for (const Fact* one : world.counting(kind::settled, target.id())) {
    if (number_in(one->record().body, 2) == 3) releases.push_back(one);
  }
  if (!releases.empty()) target.change.released_by = largest_key(releases)->id();
}

/// Records that are not here yet may have been corrected all the same.
Fact& fact_for(World& world, std::map<Uuid, Fact>& absent, const Uuid& id) {
  for (Fact& fact : world.facts) {
    if (fact.id() == id) return fact;
  }
  Fact& fact = absent[id];
  fact.placed.record.id = id;
  return fact;
}

}  // namespace

void put_changes(World& world) {
  std::set<Uuid> targets;
  for (const int kind : {kind::voided, kind::settled, kind::correction}) {
    for (const Fact* one : world.of_kind(kind)) targets.insert(one->record().subject);
  }
  std::map<Uuid, Fact> absent;
  // Nothing undoes a void; only a void undoes a settling; both undo a correction.
  for (const Uuid& id : targets) mark_void(world, fact_for(world, absent, id));
  for (const Uuid& id : targets) mark_released(world, fact_for(world, absent, id));
  for (const Uuid& id : targets) {
    Fact& target = fact_for(world, absent, id);
    correct(world, target);
    target.shown = corrected_body(target.record(), target.change.corrected);
    const Change& change = target.change;
    if (change.voided_by || change.corrected_by || change.released_by) {
      world.put(table_change, change_row(id, change));
    }
  }
  for (Fact& fact : world.facts) {
    const auto kept = world.store.row(
        table_clock_segment,
        std::vector<Cell>{fact.placed.device, fact.placed.feed, std::int64_t{fact.record().g}});
    fact.time = time_of(fact.record(), fact.shown, clock_of(*kept));
  }
  std::sort(world.facts.begin(), world.facts.end(),
            [](const Fact& a, const Fact& b) { return a.timed_key() < b.timed_key(); });
}

}  // namespace kneerail::fold::naive
