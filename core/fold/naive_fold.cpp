#include <algorithm>

#include "core/fold/fold.h"
#include "core/fold/naive.h"

namespace kneerail::fold {

namespace naive {

Facts World::of_kind(int kind) const {
  Facts found;
  for (const Fact& fact : facts) {
    if (fact.kind() == kind) found.push_back(&fact);
  }
  return found;
}

Facts World::of(int kind, const Uuid& subject) const {
  Facts found;
  for (const Fact& fact : facts) {
    if (fact.kind() == kind && fact.record().subject == subject) found.push_back(&fact);
  }
  return found;
}

Facts World::counting(int kind, const Uuid& subject) const {
  Facts found;
  for (const Fact* fact : of(kind, subject)) {
    if (fact->counts()) found.push_back(fact);
  }
  return found;
}

const Fact* World::find(const Uuid& id) const {
  for (const Fact& fact : facts) {
    if (fact.id() == id) return &fact;
  }
  return nullptr;
}

std::optional<Uuid> World::parent_of(const Uuid& entity) const {
  const auto found = entities.find(entity);
  if (found == entities.end()) return std::nullopt;
  return id_at(found->second, at(entity_columns, "parent"));
}

std::vector<Uuid> World::upwards(const Uuid& entity) const {
  std::vector<Uuid> chain{entity};
  for (auto above = parent_of(entity); above && chain.size() < 8; above = parent_of(*above)) {
    chain.push_back(*above);
  }
  return chain;
}

const Fact* largest_key(const Facts& facts) {
  const Fact* largest = nullptr;
  for (const Fact* fact : facts) {
    if (largest == nullptr || fact->key > largest->key) largest = fact;
  }
  return largest;
}

bool contains(const std::vector<Uuid>& ids, const Uuid& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

const Fact* settling(const World& world, const std::vector<Uuid>& subjects,
                     const std::vector<Uuid>& records) {
  for (const Uuid& subject : subjects) {
    Facts fitting;
    for (const Fact* one : world.counting(kind::settled, subject)) {
      const std::vector<Uuid> named = ids_in(one->record().body, 1);
      bool all = true;
      for (const Uuid& record : records) all = all && contains(named, record);
      if (all) fitting.push_back(one);
    }
    if (!fitting.empty()) return largest_key(fitting);
  }
  return nullptr;
}

std::optional<Uuid> clash(const World& world, const Clash& clash) {
  if (clash.records.size() < 2) return clash.winner;
  const std::vector<Uuid> subjects =
      clash.settled_on.empty() ? std::vector<Uuid>{clash.subject} : clash.settled_on;
  const Fact* settled = settling(world, subjects, clash.records);
  std::optional<Uuid> winner = clash.winner;
  Row row{clash.subject, std::int64_t{clash.what}, clash.detail, clash.feed,
          sorted_ids_cell(clash.records)};
  row.resize(std::size(disagreement_columns));
  if (settled != nullptr) {
    const auto decision = id_in(settled->record().body, 2);
    if (decision && contains(clash.records, *decision)) winner = decision;
    row[at(disagreement_columns, "settled_by")] = settled->id();
    row[at(disagreement_columns, "decision")] = cell(number_in(settled->record().body, 2));
  }
  row[at(disagreement_columns, "winner")] = cell(winner);
  world.put(table_disagreement, row);
  return winner;
}

}  // namespace naive

void add_all_naively(std::span<const PlacedRecord> placed, TableStore& store) {
  naive::World world(store);
  world.facts = naive::facts_of(placed, store);
  naive::put_changes(world);
  naive::put_register(world);
  naive::put_retirements(world);
  naive::put_visits(world);
  naive::put_readings(world);
  naive::put_coverage(world);
  naive::put_lives(world);
  naive::put_strikes(world);
  naive::put_closures(world);
  naive::put_gaps(world);
  naive::put_findings(world);
  naive::put_plain(world);
  naive::put_stock(world);
  naive::put_writers(world, placed);
  naive::put_objects(world);
}

}  // namespace kneerail::fold
