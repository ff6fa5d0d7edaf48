#include <algorithm>

#include "core/fold/naive.h"
#include "core/fold/objects.h"

// The judge's objects. It asks at each erasure, for each hold there is, whether that hold keeps it.

namespace kneerail::fold::naive {

namespace {

using Uses = std::map<Uuid, const Fact*>;  // by record, in the order of their ids

bool is_standing(const World& world, const Fact& hold, std::int64_t ms) {
  if (hold.placed.stamp && hold.placed.stamp->recv > ms) return false;
  for (const Fact* end : world.counting(kind::hold_ended, hold.id())) {
    if (end->placed.stamp && end->placed.stamp->recv <= ms) return false;
  }
  return true;
}

bool is_covered(const World& world, const Uses& uses, const Uuid& feed) {
  for (const auto& [record, use] : uses) {
    if (use->kind() == kind::object_erased) continue;
    if (use->placed.feed == feed) return true;
    const bool registers = use->kind() == kind::create || use->kind() == kind::set;
    if (registers && world.writers.contains({use->record().subject, feed})) return true;
  }
  return false;
}

const Fact* keeper_of(const World& world, const Uses& uses, std::int64_t due_ms) {
  Facts keeping;
  for (const Fact* hold : world.of_kind(kind::hold)) {
    if (is_standing(world, *hold, due_ms) && is_covered(world, uses, hold->placed.feed))
      keeping.push_back(hold);
  }
  const auto first = std::min_element(keeping.begin(), keeping.end(),
                                      [](const Fact* a, const Fact* b) { return a->key < b->key; });
  return first == keeping.end() ? nullptr : *first;
}

void put_state(const World& world, const Cell& sha, const Uses& uses) {
  Row row{sha, Cell(), Cell(), Cell(), Cell(), Cell()};
  std::map<std::pair<std::int64_t, Uuid>, const Fact*> kept;
  std::map<std::pair<std::int64_t, Uuid>, const Fact*> effective;
  for (auto use = uses.rbegin(); use != uses.rend(); ++use) {
    const Fact& fact = *use->second;
    if (fact.kind() != kind::object_erased) {
      row[at(object_state_columns, "kind")] = std::int64_t{fact.kind()};
      for (const NamedObject& object : objects_of(fact.record())) {
        if (Cell(object.sha) == sha && object.size_bytes)
          row[at(object_state_columns, "size_bytes")] = *object.size_bytes;
      }
      continue;
    }
    const auto& stamp = fact.placed.stamp;
    if (!stamp || stamp->flags % 2 == 1) continue;
    const std::int64_t due_ms = stamp->recv + 14LL * 86'400'000;
    const Fact* keeper = keeper_of(world, uses, due_ms);
    (keeper == nullptr ? effective : kept)[{due_ms, fact.id()}] = keeper;
  }
  if (!effective.empty() || !kept.empty()) {
    const auto& [erasure, keeper] = effective.empty() ? *kept.rbegin() : *effective.begin();
    row[at(object_state_columns, "erased_by")] = erasure.second;
    row[at(object_state_columns, "erase_on_ms")] = erasure.first;
    if (keeper != nullptr) row[at(object_state_columns, "kept_by")] = keeper->id();
  }
  world.put(table_object_state, row);
}

}  // namespace

void put_writers(World& world, std::span<const PlacedRecord> arrived) {
  for (const PlacedRecord& one : arrived) {
    if (makes_rows(one.record.kind) && !one.record.who.is_zero())
      world.writers.insert({one.record.who, one.feed});
  }
  for (const auto& [person, feed] : world.writers) world.put(table_feed_writer, Row{person, feed});
}

void put_objects(World& world) {
  std::map<Cell, Uses> objects;
  for (const Fact& fact : world.facts) {
    for (const NamedObject& object : objects_of(fact.record())) {
      objects[object.sha][fact.id()] = &fact;
      world.put(table_object_use,
                Row{object.sha, fact.id(), std::int64_t{fact.kind()}, fact.placed.feed,
                    fact.record().subject, cell(object.size_bytes)});
    }
  }
  for (const auto& [sha, uses] : objects) put_state(world, sha, uses);
}

}  // namespace kneerail::fold::naive
