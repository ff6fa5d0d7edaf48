#include <algorithm>

#include "core/fold/folding.h"

// Visits: which are one, each person's part on each device, and its seal.

namespace kneerail::fold {

namespace {

/// Visits that a counting record says are one with this one.
std::vector<Uuid> joined_with(Folding& folding, const Uuid& visit) {
  std::vector<Uuid> others;
  for (const Fact& one : folding.facts_of(visit, kind::same_visit)) {
    const auto other = about_of(one.placed);
    if (one.counts() && other) others.push_back(*other);
  }
  for (const Fact& one : folding.facts_about(visit, kind::same_visit)) {
    if (one.counts()) others.push_back(one.record().subject);
  }
  return others;
}

/// Everything that a visit has seen counts in another visit now.
void ask_seen_of(Folding& folding, const Uuid& visit) {
  for (const Row& row : folding.rows(table_reading, reading_by_visit, {visit})) {
    const Uuid subject = id_in(row, at(reading_columns, "subject"));
    folding.news_of({subject, visit}).again = true;
    if (number_in(row, at(reading_columns, "kind")) != kind::grade) continue;
    folding.ask({.stage = Stage::latest, .a = subject, .n = kind::grade});
  }
  for (const Row& row : folding.rows(table_fact, fact_by_visit, {visit})) {
    ask_seen(folding, placed_of_fact(row).record);
  }
}

}  // namespace

std::vector<Uuid> group_of(Folding& folding, const Uuid& visit) {
  std::vector<Uuid> group{visit};
  for (std::size_t next = 0; next < group.size(); ++next) {
    for (const Uuid& other : joined_with(folding, group[next])) {
      if (std::find(group.begin(), group.end(), other) == group.end()) group.push_back(other);
    }
  }
  return group;
}

Uuid one_visit(Folding& folding, const Uuid& visit) {
  const auto row = folding.row(table_visit_group, {visit});
  return row ? id_in(*row, at(visit_group_columns, "one")) : visit;
}

void derive_visit_group(Folding& folding, const Job& job) {
  const std::vector<Uuid> group = group_of(folding, job.a);
  const Uuid one = *std::min_element(group.begin(), group.end());
  for (const Uuid& visit : group) {
    const auto row = group.size() > 1 ? std::optional(Row{visit, one}) : std::nullopt;
    const Uuid one_before = one_visit(folding, visit);
    if (!folding.put_or_erase(table_visit_group, row, {visit})) continue;
    folding.ask({.stage = Stage::plain, .a = visit});
    ask_seen_of(folding, visit);
    ask_coverage_of_visit(folding, one_before, true);
    ask_coverage_of_visit(folding, one, true);
    // Those it was one with before may have lost it.
    for (const Fact& fact : folding.facts_of(visit, kind::same_visit)) {
      if (const auto other = about_of(fact.placed)) {
        folding.ask({.stage = Stage::visit_group, .a = *other});
      }
    }
    for (const Fact& fact : folding.facts_about(visit, kind::same_visit)) {
      folding.ask({.stage = Stage::visit_group, .a = fact.record().subject});
    }
  }
}

namespace {

struct Part {
  Uuid visit;
  Uuid person;
  Uuid device;
};

bool is_of(const Part& part, const PlacedRecord& placed) {
  return placed.record.who == part.person && placed.device == part.device;
}

std::int64_t count_after(Folding& folding, const Part& part, std::int64_t last_seq) {
  std::int64_t count = 0;
  for (const Row& row : folding.rows(table_fact, fact_by_visit, {part.visit})) {
    const bool after = number_in(row, at(fact_columns, "seq")) > last_seq &&
                       id_in(row, at(fact_columns, "who")) == part.person &&
                       id_in(row, at(fact_columns, "dev")) == part.device &&
                       number_in(row, at(fact_columns, "kind")) != kind::sealed;
    if (after) ++count;
  }
  for (const Row& row : folding.rows(table_reading, reading_by_visit, {part.visit})) {
    const bool after = number_in(row, at(reading_columns, "seq")) > last_seq &&
                       id_in(row, at(reading_columns, "who")) == part.person &&
                       id_in(row, at(reading_columns, "dev")) == part.device;
    if (after) ++count;
  }
  return count;
}

std::vector<Fact> openings_of(Folding& folding, const Part& part) {
  std::vector<Fact> openings;
  auto opened = folding.fact(part.visit);
  if (opened && opened->kind() == kind::visit_opened && is_of(part, opened->placed)) {
    openings.push_back(*std::move(opened));
  }
  for (Fact& joined : folding.facts_of(part.visit, kind::visit_joined)) {
    if (is_of(part, joined.placed)) openings.push_back(std::move(joined));
  }
  return openings;
}

void put_opening(Row& row, const Fact& opening) {
  const cbor::Map& body = opening.shown;
  in(row, at(visit_part_columns, "opened")) = opening.id();
  in(row, at(visit_part_columns, "joined_t")) = opening.time.t;
  if (opening.kind() == kind::visit_joined) {
    in(row, at(visit_part_columns, "task")) = cell_of(body.find(1), Type::bytes);
  }
  const std::vector<std::int64_t> aboard = numbers_in(body, 6);
  if (!aboard.empty()) in(row, at(visit_part_columns, "aboard_site")) = aboard[0];
  if (aboard.size() > 1) in(row, at(visit_part_columns, "aboard_organisation")) = aboard[1];
  in(row, at(visit_part_columns, "program")) = cell_of(body.find(7), Type::text);
}

}  // namespace

void derive_visit_part(Folding& folding, const Job& job) {
  const Part part{job.a, job.b, job.c};
  const std::vector<Fact> openings = openings_of(folding, part);
  std::vector<Fact> seals = folding.facts_of(part.visit, kind::sealed);
  std::erase_if(seals, [&part](const Fact& s) { return !is_of(part, s.placed) || s.held(); });
  std::optional<Row> row;
  if (!openings.empty() || !seals.empty()) {
    const Fact& any = openings.empty() ? seals.front() : openings.front();
    row = Row(std::size(visit_part_columns));
    in(*row, at(visit_part_columns, "visit")) = part.visit;
    in(*row, at(visit_part_columns, "person")) = part.person;
    in(*row, at(visit_part_columns, "dev")) = part.device;
    in(*row, at(visit_part_columns, "feed")) = any.placed.feed;
    in(*row, at(visit_part_columns, "sealed_again")) =
        static_cast<std::int64_t>(seals.empty() ? 0 : seals.size() - 1);
    in(*row, at(visit_part_columns, "after_seal")) = std::int64_t{0};
  }
  const auto by_key = [](const Fact& a, const Fact& b) { return a.key < b.key; };
  if (!openings.empty()) {
    put_opening(*row, *std::min_element(openings.begin(), openings.end(), by_key));
  }
  if (!seals.empty()) {
    const Fact& seal = *std::max_element(seals.begin(), seals.end(), by_key);
    const std::int64_t last = number_in(seal.record().body, 2).value_or(seal.placed.seq);
    in(*row, at(visit_part_columns, "sealed")) = seal.id();
    in(*row, at(visit_part_columns, "last_seq")) = last;
    in(*row, at(visit_part_columns, "sealed_t")) = seal.time.t;
    in(*row, at(visit_part_columns, "after_seal")) = count_after(folding, part, last);
  }
  if (folding.put_or_erase(table_visit_part, row, {part.visit, part.person, part.device})) {
    folding.ask({.stage = Stage::plain, .a = part.visit});
  }
}

void ask_after_seal(Folding& folding, const PlacedRecord& placed) {
  const auto visit = visit_of(placed.record);
  if (!visit) return;
  const auto part = folding.row(table_visit_part, {*visit, placed.record.who, placed.device});
  if (!part) return;
  const auto last = number_at(*part, at(visit_part_columns, "last_seq"));
  if (last && placed.seq > *last) {
    folding.ask(
        {.stage = Stage::visit_part, .a = *visit, .b = placed.record.who, .c = placed.device});
  }
}

namespace {

/// The span of everything that the visit has.
Folding::Span whole_span(Folding& folding, const Uuid& visit) {
  Folding::Span span;
  const auto take = [&span](std::int64_t t) {
    span.first_t = std::min(span.first_t.value_or(t), t);
    span.last_t = std::max(span.last_t.value_or(t), t);
  };
  for (const Row& row : folding.rows(table_reading, reading_by_visit, {visit})) {
    take(number_in(row, at(reading_columns, "t")));
  }
  for (const Row& row : folding.rows(table_fact, fact_by_visit, {visit})) {
    take(folding.loaded(placed_of_fact(row)).time.t);
  }
  return span;
}

/// What came in only widens the span; it is read again when a time has moved, or
/// where some may have come in before the visit was opened.
void put_span(Folding& folding, const Uuid& visit, Row& row) {
  Folding::Span span = folding.take_span(visit);
  const auto kept = folding.row(table_visit, {visit});
  if (span.again || !(kept || folding.began_empty())) {
    span = whole_span(folding, visit);
  } else if (kept) {
    const std::int64_t first = number_in(*kept, at(visit_columns, "first_t"));
    const std::int64_t last = number_in(*kept, at(visit_columns, "last_t"));
    span.first_t = std::min(span.first_t.value_or(first), first);
    span.last_t = std::max(span.last_t.value_or(last), last);
  }
  in(row, at(visit_columns, "first_t")) = cell(span.first_t);
  in(row, at(visit_columns, "last_t")) = cell(span.last_t);
}

}  // namespace

void fill_visit(Folding& folding, const Fact& visit, Row& row) {
  const Uuid one = one_visit(folding, visit.id());
  if (one != visit.id()) in(row, at(visit_columns, "merged_into")) = one;
  const std::vector<Row> parts = folding.rows_of_key(table_visit_part, {visit.id()});
  const bool complete =
      !parts.empty() && std::all_of(parts.begin(), parts.end(), [](const Row& part) {
        return id_at(part, at(visit_part_columns, "sealed")).has_value();
      });
  in(row, at(visit_columns, "complete")) = std::int64_t{complete ? 1 : 0};
  if (complete) {
    const auto sealed = [](const Row& part) {
      return number_in(part, at(visit_part_columns, "sealed_t"));
    };
    in(row, at(visit_columns, "sealed_t")) = sealed(*std::ranges::max_element(parts, {}, sealed));
  }
  put_span(folding, visit.id(), row);
}

void put_visit(Folding& folding, const Row& row) {
  const Uuid visit = id_in(row, at(plain_start, "record"));
  const auto before = folding.row(table_visit, {visit});
  folding.put(table_visit, row);
  const int sealed = at(visit_columns, "sealed_t");
  if (in(row, sealed) == (before ? in(*before, sealed) : Cell())) return;
  ask_coverage_of_visit(folding, one_visit(folding, visit), false);
}

}  // namespace kneerail::fold
