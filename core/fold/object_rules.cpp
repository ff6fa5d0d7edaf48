#include <algorithm>
#include <limits>
#include <set>

#include "core/fold/folding.h"
#include "core/fold/objects.h"

// Objects: which records name them, and whether they were erased or kept. See objects.h.

namespace kneerail::fold {

namespace {

constexpr std::int64_t always = std::numeric_limits<std::int64_t>::min();
constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();

struct Term {
  MergeKey hold;
  std::int64_t from_ms = always;
  std::int64_t until_ms = never;

  [[nodiscard]] bool covers(std::int64_t ms) const { return from_ms <= ms && ms < until_ms; }
};

std::int64_t kind_of_use(const Row& use) {
  return number_in(use, at(object_use_columns, "kind"));
}

void ask_object(Folding& folding, const cbor::Bytes& sha) {
  folding.ask({.stage = Stage::object, .text = std::string(sha.begin(), sha.end())});
}

/// The feeds whose holds bear on an object.
std::set<Uuid> feeds_of(Folding& folding, const std::vector<Row>& uses) {
  std::set<Uuid> feeds;
  for (const Row& use : uses) {
    const std::int64_t kind = kind_of_use(use);
    if (kind == kind::object_erased) continue;
    feeds.insert(id_in(use, at(object_use_columns, "feed")));
    if (kind != kind::create && kind != kind::set) continue;
    const Uuid person = id_in(use, at(object_use_columns, "subject"));
    for (const Row& row : folding.rows_of_key(table_feed_writer, {person}))
      feeds.insert(id_in(row, at(feed_writer_columns, "feed")));
  }
  return feeds;
}

std::vector<Term> terms_in(Folding& folding, const std::set<Uuid>& feeds) {
  std::vector<Term> terms;
  for (const Uuid& feed : feeds) {
    for (const Row& row : folding.rows(table_hold, hold_by_feed, {feed})) {
      const auto hold = folding.fact(id_in(row, at(hold_columns, "record")));
      if (!hold) continue;
      Term term{hold->key};
      if (hold->placed.stamp) term.from_ms = hold->placed.stamp->recv;
      for (const Fact& end : folding.facts_of(hold->id(), kind::hold_ended)) {
        if (end.counts() && end.placed.stamp)
          term.until_ms = std::min(term.until_ms, end.placed.stamp->recv);
      }
      terms.push_back(term);
    }
  }
  return terms;
}

struct Erasure {
  std::int64_t due_ms = 0;
  Uuid record;
  auto operator<=>(const Erasure&) const = default;
};

/// Those that are stamped and not held for review, by the moment the bytes would go.
std::vector<Erasure> erasures_of(Folding& folding, const std::vector<Row>& uses) {
  std::vector<Erasure> erasures;
  for (const Row& use : uses) {
    if (kind_of_use(use) != kind::object_erased) continue;
    const auto fact = folding.row(table_fact, {id_in(use, at(object_use_columns, "record"))});
    if (!fact) continue;
    const PlacedRecord placed = placed_of_fact(*fact);
    if (!placed.stamp || (placed.stamp->flags & 1) != 0) continue;
    erasures.push_back({placed.stamp->recv + erasure_wait_ms, placed.record.id});
  }
  std::sort(erasures.begin(), erasures.end());
  return erasures;
}

void decide(Folding& folding, const std::vector<Row>& uses, Row& row) {
  const std::vector<Erasure> erasures = erasures_of(folding, uses);
  if (erasures.empty()) return;
  const std::vector<Term> terms = terms_in(folding, feeds_of(folding, uses));
  for (const Erasure& erasure : erasures) {
    const Term* keeper = nullptr;
    for (const Term& term : terms) {
      if (term.covers(erasure.due_ms) && (keeper == nullptr || term.hold < keeper->hold))
        keeper = &term;
    }
    in(row, at(object_state_columns, "erased_by")) = erasure.record;
    in(row, at(object_state_columns, "erase_on_ms")) = erasure.due_ms;
    in(row, at(object_state_columns, "kept_by")) =
        keeper == nullptr ? Cell() : Cell(keeper->hold.record);
    if (keeper == nullptr) return;  // the first that nothing keeps
  }
}

}  // namespace

void note_objects(Folding& folding, const PlacedRecord& placed) {
  const Record& record = placed.record;
  for (const NamedObject& object : objects_of(record)) {
    folding.put(table_object_use, Row{object.sha, record.id, std::int64_t{record.kind}, placed.feed,
                                      record.subject, cell(object.size_bytes)});
    ask_object(folding, object.sha);
  }
}

void ask_erased_objects(Folding& folding) {
  for (const Row& use :
       folding.rows(table_object_use, object_use_by_kind, {std::int64_t{kind::object_erased}}))
    ask_object(folding, std::get<cbor::Bytes>(in(use, at(object_use_columns, "sha"))));
}

void derive_object(Folding& folding, const Job& job) {
  const cbor::Bytes sha(job.text.begin(), job.text.end());
  const std::vector<Row> uses = folding.rows_of_key(table_object_use, {sha});
  if (uses.empty()) return;
  Row row{sha, Cell(), Cell(), Cell(), Cell(), Cell()};
  Cell& kind = in(row, at(object_state_columns, "kind"));
  Cell& size_bytes = in(row, at(object_state_columns, "size_bytes"));
  for (const Row& use : uses) {
    if (kind_of_use(use) == kind::object_erased) continue;
    if (kind == Cell()) kind = kind_of_use(use);
    if (size_bytes == Cell()) size_bytes = in(use, at(object_use_columns, "size_bytes"));
  }
  decide(folding, uses, row);
  folding.put(table_object_state, row);
}

}  // namespace kneerail::fold
