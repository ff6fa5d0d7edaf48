#include "core/fold/tally.h"

#include <algorithm>

#include "core/fold/row_layout.h"

namespace kneerail::fold {

namespace {

constexpr int looks_at = at(coverage_columns, "looks");

const Cell& in(const Row& row, int column) {
  return row[static_cast<std::size_t>(column)];
}
std::int64_t number_in(const Row& row, int column) {
  return number_of(in(row, column));
}

void add_look(Tally& tally, const Uuid& thing, LookBits looks) {
  if (looks != 0) tally.looks[thing] |= looks;
}

LookBits looks_of_grade(const Row& row) {
  const bool far =
      number_in(row, at(reading_columns, "how")) >= code_of(HowLooked::looked_from_afar);
  return far ? look_seen : look_seen | look_near;
}

LookBits looks_of_push(const Row& row) {
  const bool pushed = number_in(row, at(reading_columns, "what")) != code_of(Felt::not_pushed);
  return look_seen | look_near | (pushed ? look_pushed : 0);
}

}  // namespace

LookBits Tally::look(const Uuid& thing) const {
  const auto found = looks.find(thing);
  return found == looks.end() ? 0 : found->second;
}

void Tally::count(std::int64_t kind, std::int64_t t) {
  for (std::size_t place = 0; place < counted_kinds.size(); ++place) {
    if (counted_kinds[place].first == kind) ++counts[place];
  }
  first_t = std::min(first_t.value_or(t), t);
  last_t = std::max(last_t.value_or(t), t);
}

void Tally::take(const Tally& other) {
  if (other.empty()) return;
  for (std::size_t place = 0; place < counts.size(); ++place) counts[place] += other.counts[place];
  for (const auto& [thing, look] : other.looks) looks[thing] |= look;
  first_t = std::min(first_t.value_or(*other.first_t), *other.first_t);
  last_t = std::max(last_t.value_or(*other.last_t), *other.last_t);
}

void take_reading(const Row& row, Tally& tally) {
  const bool counts = number_in(row, at(reading_columns, "held")) == 0 &&
                      !id_at(row, at(reading_columns, "voided_by"));
  if (!counts) return;
  const std::int64_t kind = number_in(row, at(reading_columns, "kind"));
  tally.count(kind, number_in(row, at(reading_columns, "t")));
  if (kind != kind::grade && kind != kind::hand_load) return;
  if (std::get<Uuid>(in(row, at(reading_columns, "who"))).is_zero()) return;
  const bool fresh = number_in(row, at(reading_columns, "carried")) == 0;
  add_look(
      tally, std::get<Uuid>(in(row, at(reading_columns, "subject"))),
      (kind == kind::grade ? looks_of_grade(row) : looks_of_push(row)) | (fresh ? look_fresh : 0));
}

void take_fact(const Fact& fact, Tally& tally) {
  if (!fact.counts()) return;
  const Uuid& subject = fact.record().subject;
  tally.count(fact.kind(), fact.time.t);
  if (fact.kind() == kind::not_reached) add_look(tally, subject, look_not_reached);
  if (fact.kind() != kind::finding || fact.record().who.is_zero()) return;
  add_look(tally, subject, look_seen | look_near | look_fresh);
}

Tally tally_of(const Row& coverage) {
  Tally tally;
  for (std::size_t place = 0; place < counted_kinds.size(); ++place) {
    tally.counts[place] = number_in(coverage, counted_kinds[place].second);
  }
  tally.first_t = number_in(coverage, at(coverage_columns, "first_t"));
  tally.last_t = number_in(coverage, at(coverage_columns, "last_t"));
  const auto* bytes = std::get_if<cbor::Bytes>(&in(coverage, looks_at));
  if (bytes == nullptr) return tally;
  const auto list = cbor::decode(*bytes);
  check(list.has_value(), "the fold wrote the looks");
  for (const cbor::Value& pair : *list->array()) {
    tally.looks[*(*pair.array())[0].uuid()] = *(*pair.array())[1].number();
  }
  return tally;
}

void put_tally(const Tally& tally, Row& coverage) {
  const auto put = [&coverage](int column, Cell value) {
    coverage[static_cast<std::size_t>(column)] = std::move(value);
  };
  for (std::size_t place = 0; place < counted_kinds.size(); ++place) {
    put(counted_kinds[place].second, tally.counts[place]);
  }
  put(at(coverage_columns, "first_t"), *tally.first_t);
  put(at(coverage_columns, "last_t"), *tally.last_t);
  cbor::Array list;
  for (const auto& [thing, look] : tally.looks) list.push_back(cbor::Array{thing, look});
  if (!list.empty()) put(looks_at, cbor::encode(cbor::Value(std::move(list))));
}

}  // namespace kneerail::fold
