#include <algorithm>
#include <map>

#include "core/fold/folding.h"

// Corrections, voids and settlings: what they say about one record (table change), and the rows of
// disagreement. A record that is changed asks for its rows again.

namespace kneerail::fold {

namespace {

/// Of the corrections of one body key, those that no other correction of it had seen.
struct KeyHeads {
  std::vector<const Fact*> all;

  [[nodiscard]] std::vector<const Fact*> heads() const {
    std::vector<const Fact*> heads;
    for (const Fact* one : all) {
      const bool seen = std::any_of(all.begin(), all.end(), [one](const Fact* other) {
        const std::vector<Uuid> bases = ids_in(other->record().body, 3);
        return other != one && std::find(bases.begin(), bases.end(), one->id()) != bases.end();
      });
      if (!seen) heads.push_back(one);
    }
    return heads.empty() ? all : heads;
  }
};

const cbor::Map* values_of(const Fact& correction) {
  const cbor::Value* values = correction.record().body.find(1);
  return values == nullptr ? nullptr : values->map();
}

const cbor::Value& value_under(const Fact& correction, std::int64_t key) {
  return *values_of(correction)->find(key);
}

bool all_equal(const std::vector<const Fact*>& heads, std::int64_t key) {
  return std::all_of(heads.begin(), heads.end(), [&](const Fact* head) {
    return value_under(*head, key) == value_under(*heads.front(), key);
  });
}

/// Shows the winner of one body key and writes what disagrees with it.
const Fact* decide_key(Folding& folding, const Uuid& target, std::int64_t key,
                       const std::vector<const Fact*>& heads, Change& change) {
  const Fact* winner = *std::max_element(
      heads.begin(), heads.end(), [](const Fact* a, const Fact* b) { return a->key < b->key; });
  Disagreeing two{target, disagreement::correction, key, winner->placed.feed, {}, winner->id()};
  if (!all_equal(heads, key)) {
    for (const Fact* head : heads) two.records.push_back(head->id());
  }
  const auto named = put_disagreement(folding, two);
  for (const Fact* head : heads) {
    if (named == head->id()) winner = head;
  }
  change.corrected.set(key, value_under(*winner, key));
  return winner;
}

void take_corrections(Folding& folding, const Uuid& target, Change& change) {
  const std::vector<Fact> corrections = folding.facts_of(target, kind::correction);
  std::map<std::int64_t, KeyHeads> by_key;
  for (const Fact& correction : corrections) {
    const cbor::Map* values = values_of(correction);
    if (values == nullptr || !correction.counts()) continue;
    for (const auto& [key, value] : values->pairs()) {
      if (key.number() != nullptr) by_key[*key.number()].all.push_back(&correction);
    }
  }
  for (const Row& row :
       folding.rows_of_key(table_disagreement, {target, std::int64_t{disagreement::correction}})) {
    const std::int64_t key = number_in(row, at(disagreement_columns, "detail"));
    if (!by_key.contains(key)) {
      folding.erase(table_disagreement, {target, std::int64_t{disagreement::correction}, key});
    }
  }
  const Fact* last = nullptr;
  for (const auto& [key, corrected] : by_key) {
    const Fact* winner = decide_key(folding, target, key, corrected.heads(), change);
    if (last == nullptr || last->key < winner->key) last = winner;
  }
  if (last != nullptr) change.corrected_by = last->id();
}

}  // namespace

void derive_change(Folding& folding, const Job& job) {
  const Uuid& target = job.a;
  Change change;
  take_corrections(folding, target, change);
  const Fact* first = nullptr;
  const std::vector<Fact> voids = folding.facts_of(target, kind::voided);
  for (const Fact& one : voids) {
    if (one.counts() && (first == nullptr || one.key < first->key)) first = &one;
  }
  if (first != nullptr) change.voided_by = first->id();
  const Fact* release = nullptr;
  const std::vector<Fact> settlings = folding.facts_of(target, kind::settled);
  for (const Fact& one : settlings) {
    const bool releases = one.counts() && number_in(one.record().body, 2) == 3;
    if (releases && (release == nullptr || release->key < one.key)) release = &one;
  }
  if (release != nullptr) change.released_by = release->id();

  const bool says_something = change.voided_by || change.corrected_by || change.released_by;
  const auto row = says_something ? std::optional(change_row(target, change)) : std::nullopt;
  if (!folding.put_or_erase(table_change, row, {target})) return;
  if (const auto fact = folding.row(table_fact, {target})) {
    const PlacedRecord placed = placed_of_fact(*fact);
    refresh(folding, placed);
    if (const auto visit = visit_of(placed.record)) folding.respan(*visit);
  } else if (const auto reading = folding.row(table_reading, {target})) {
    refresh_reading(folding, *reading);
  }
}

std::optional<Settlement> settlement(Folding& folding, const Uuid& subject,
                                     const std::vector<Uuid>& records) {
  std::optional<Settlement> settled;
  MergeKey last;
  for (const Fact& one : folding.facts_of(subject, kind::settled)) {
    if (!one.counts() || (settled && one.key < last)) continue;
    const std::vector<Uuid> named = ids_in(one.record().body, 1);
    const bool all = std::all_of(records.begin(), records.end(), [&named](const Uuid& record) {
      return std::find(named.begin(), named.end(), record) != named.end();
    });
    if (!all) continue;
    settled = Settlement{one.id(), id_in(one.record().body, 2), number_in(one.record().body, 2)};
    last = one.key;
  }
  return settled;
}

std::optional<Uuid> put_disagreement(Folding& folding, const Disagreeing& disagreeing) {
  const std::int64_t what = disagreeing.what;
  if (disagreeing.records.size() < 2) {
    folding.erase(table_disagreement, {disagreeing.subject, what, disagreeing.detail});
    return disagreeing.winner;
  }
  const auto settled = settlement(folding, disagreeing.subject, disagreeing.records);
  std::optional<Uuid> winner = disagreeing.winner;
  const std::vector<Uuid>& records = disagreeing.records;
  if (settled && settled->decision &&
      std::find(records.begin(), records.end(), *settled->decision) != records.end()) {
    winner = settled->decision;
  }
  folding.put(table_disagreement,
              Row{disagreeing.subject, what, disagreeing.detail, disagreeing.feed,
                  sorted_ids_cell(records), cell(winner), settled ? Cell(settled->by) : Cell(),
                  settled ? cell(settled->code) : Cell()});
  return winner;
}

}  // namespace kneerail::fold
