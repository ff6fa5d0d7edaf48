#include <algorithm>

#include "core/fold/folding.h"

// Retiring is a field like any other; what stands in a retired thing is out of service with it.
// What was done to a thing after it was retired, by somebody who had not seen that, is a
// disagreement. A record on the chain of the retirement itself and after it had seen it; one on
// another chain is asked about.

namespace kneerail::fold {

namespace {

constexpr int depth_max = 8;

std::optional<Row> retirement_row(Folding& folding, const Uuid& entity) {
  Uuid above = entity;
  for (int depth = 0; depth < depth_max; ++depth) {
    const auto row = folding.row(table_entity, {above});
    if (!row) return std::nullopt;
    if (const auto by = id_at(*row, at(entity_columns, "retired_by"))) {
      const auto set = folding.fact(*by);
      return Row{entity, above, *by, set ? set->time.t : std::int64_t{0}};
    }
    const auto parent = id_at(*row, at(entity_columns, "parent"));
    if (!parent) return std::nullopt;
    above = *parent;
  }
  return std::nullopt;
}

bool had_seen(const PlacedRecord& set, const Uuid& feed, const Uuid& dev, std::int64_t seq) {
  return set.feed == feed && set.device == dev && set.seq < seq;
}

}  // namespace

void derive_retirement(Folding& folding, const Job& job) {
  const Uuid& entity = job.a;
  const auto row = retirement_row(folding, entity);
  if (!folding.put_or_erase(table_retirement, row, {entity})) return;
  folding.ask({.stage = Stage::seen_after, .a = entity});
  ask_coverage_rows(folding, entity);
  const auto itself = folding.row(table_entity, {entity});
  if (itself) {
    const auto* tag = std::get_if<std::string>(&in(*itself, at(entity_columns, "tag")));
    if (tag != nullptr) folding.ask({.stage = Stage::tag, .text = *tag});
  }
  for (const Row& child : folding.rows(table_entity, entity_by_parent, {entity})) {
    folding.ask({.stage = Stage::retirement, .a = id_in(child, at(entity_columns, "id"))});
  }
}

void derive_seen_after(Folding& folding, const Job& job) {
  const Uuid& entity = job.a;
  Disagreeing seen{entity, disagreement::seen_after_retired, 0, {}, {}, {}};
  const auto retirement = folding.row(table_retirement, {entity});
  const auto set = retirement ? folding.fact(id_in(*retirement, at(retirement_columns, "set_by")))
                              : std::nullopt;
  if (!set) {
    put_disagreement(folding, seen);
    return;
  }
  seen.feed = set->placed.feed;
  seen.records.push_back(set->id());
  seen.winner = set->id();
  for (const int kind : {kind::finding, kind::work, kind::strike_step}) {
    for (const Fact& fact : folding.facts_of(entity, kind)) {
      const PlacedRecord& placed = fact.placed;
      const bool after = fact.counts() && fact.time.t > set->time.t;
      if (after && !had_seen(set->placed, placed.feed, placed.device, placed.seq)) {
        seen.records.push_back(fact.id());
      }
    }
  }
  for (const Row& row : folding.rows(table_reading, reading_by_subject, {entity})) {
    const bool counts = number_in(row, at(reading_columns, "held")) == 0 &&
                        !id_at(row, at(reading_columns, "voided_by"));
    if (counts && number_in(row, at(reading_columns, "t")) > set->time.t &&
        !had_seen(set->placed, id_in(row, at(reading_columns, "feed")),
                  id_in(row, at(reading_columns, "dev")),
                  number_in(row, at(reading_columns, "seq")))) {
      seen.records.push_back(id_in(row, at(reading_columns, "record")));
    }
  }
  put_disagreement(folding, seen);
}

}  // namespace kneerail::fold
