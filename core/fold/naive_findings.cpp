#include <algorithm>

#include "core/fold/naive.h"

namespace kneerail::fold::naive {

namespace {

/// Every record that says the finding is a hazard, whatever was said about that record.
Facts hazards_of(const World& world, const Fact& finding) {
  Facts hazards = world.of(kind::hazard_raised, finding.id());
  if (truth_in(finding.record().body, 4)) hazards.push_back(&finding);
  return hazards;
}

Facts still_open(const World& world, const Fact& finding) {
  Facts open = hazards_of(world, finding);
  for (const Fact* end : world.counting(kind::finding_ended, finding.id())) {
    const std::vector<Uuid> named = ids_in(end->record().body, 4);
    std::erase_if(open, [&named](const Fact* hazard) { return contains(named, hazard->id()); });
  }
  return open;
}

/// The make-safes that still stand: after the last look that says gone, unless it was put back; and
/// after the last ending, where all that is open was raised later than that.
Facts standing_safe(const World& world, const Fact& finding, const Facts& open) {
  Facts safe = world.counting(kind::made_safe, finding.id());
  const auto drop_before = [&safe](const Fact* event) {
    if (event == nullptr) return;
    std::erase_if(safe, [event](const Fact* s) { return s->timed_key() < event->timed_key(); });
  };
  const Fact* gone = nullptr;
  for (const Fact* look : world.counting(kind::closure_look, finding.id())) {
    if (number_in(look->shown, 1) == code_of(HowItStands::gone)) gone = look;
    if (number_in(look->shown, 1) == code_of(HowItStands::put_back)) gone = nullptr;
  }
  drop_before(gone);
  const Fact* end = nullptr;
  for (const Fact* one : world.counting(kind::finding_ended, finding.id())) {
    if (!ids_in(one->record().body, 4).empty()) end = one;
  }
  bool all_later = end != nullptr;
  for (const Fact* hazard : open) all_later = all_later && hazard->timed_key() > end->timed_key();
  if (all_later) drop_before(end);
  return safe;
}

void put_hazard(const World& world, const Fact& finding, Row& row) {
  const Facts hazards = hazards_of(world, finding);
  const Facts open = still_open(world, finding);
  std::set<std::int64_t> measures;
  for (const Fact* safe : world.counting(kind::made_safe, finding.id())) {
    for (const std::int64_t one : numbers_in(safe->shown, 1)) measures.insert(one);
  }
  if (!measures.empty()) {
    row[at(finding_columns, "measures")] =
        cbor::encode(cbor::Value(cbor::Array(measures.begin(), measures.end())));
  }
  std::vector<std::int64_t> standing;
  for (const Fact* safe : standing_safe(world, finding, open)) {
    for (const std::int64_t one : numbers_in(safe->shown, 1)) standing.push_back(one);
  }
  bool barrier = false;
  for (const Uuid& around : world.upwards(finding.record().subject)) {
    barrier = barrier || world.barriers.contains(around);
  }
  std::int64_t state = hazards.empty() ? hazard_state::none : hazard_state::ended;
  if (!open.empty()) {
    state = hold_people_back(standing, barrier) ? hazard_state::made_safe : hazard_state::open;
  }
  row[at(finding_columns, "hazard_state")] = state;
  if (!hazards.empty()) {
    std::vector<Uuid> ids;
    for (const Fact* hazard : hazards) ids.push_back(hazard->id());
    row[at(finding_columns, "hazard_records")] = sorted_ids_cell(ids);
  }
  const Facts ends = world.counting(kind::finding_ended, finding.id());
  if (open.empty() && !ends.empty()) {
    row[at(finding_columns, "ended_by")] = ends.back()->id();
    row[at(finding_columns, "ended_how")] = cell(number_in(ends.back()->shown, 1));
    row[at(finding_columns, "ended_on")] = cell(number_in(ends.back()->shown, 5));
  }
}

/// In order of (t, key): the last word is how it stands.
void put_watch(const World& world, const Fact& finding, Row& row) {
  const Fact* asks = nullptr;
  for (const Fact& fact : world.facts) {
    const bool safe = fact.kind() == kind::made_safe;
    if ((!safe && fact.kind() != kind::closure_look) || !fact.counts()) continue;
    if (fact.record().subject != finding.id()) continue;
    if (safe || number_in(fact.shown, 1) != code_of(HowItStands::not_seen)) {
      row[at(finding_columns, "stands_by")] = fact.id();
    }
    const auto again = number_in(fact.shown, safe ? 6 : 2);
    if (again && (asks == nullptr || asks->key < fact.key)) {
      asks = &fact;
      row[at(finding_columns, "look_again_by_ms")] = *again;
    }
    const bool told = safe && (fact.shown.has(2) || fact.shown.has(5));
    if (told && row[at(finding_columns, "told_first_t")] == Cell()) {
      row[at(finding_columns, "told_first_t")] = fact.time.t;
    }
  }
}

}  // namespace

void put_findings(World& world) {
  for (const Fact* finding : world.of_kind(kind::finding)) {
    Row row = plain_row(*finding, *layout_of(kind::finding));
    put_hazard(world, *finding, row);
    put_watch(world, *finding, row);
    if (const Fact* next = largest_key(world.counting(kind::next_step, finding->id()))) {
      row[at(finding_columns, "next_record")] = next->id();
      row[at(finding_columns, "next_step")] = cell(number_in(next->shown, 1));
      row[at(finding_columns, "mend_by_day")] = cell(number_in(next->shown, 2));
      row[at(finding_columns, "by_whom")] = cell_of(next->shown.find(4), Type::bytes);
      row[at(finding_columns, "by_whom_words")] = cell_of(next->shown.find(5), Type::text);
      row[at(finding_columns, "put_off")] = cell(number_in(next->shown, 6));
    }
    world.put(table_finding, row);
  }
}

}  // namespace kneerail::fold::naive
