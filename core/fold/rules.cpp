#include "core/fold/rules.h"

#include <algorithm>
#include <array>

namespace kneerail::fold {

MergeKey merge_key(const PlacedRecord& placed) {
  const Record& record = placed.record;
  const std::int64_t eff = placed.stamp ? std::min(record.l, placed.stamp->recv) : record.l;
  return {eff, record.l, record.c, placed.device, record.id};
}

bool may_have_seen(const Fact& later, const Fact& earlier) {
  const PlacedRecord& a = later.placed;
  const PlacedRecord& b = earlier.placed;
  if (a.feed == b.feed && a.device == b.device) return a.seq > b.seq;
  return b.stamp && later.time.t >= b.stamp->recv;
}

bool is_reading(int kind) {
  return kind >= kind::grade && kind <= kind::gate_check;
}

bool makes_rows(int kind) {
  constexpr std::array known{1,  2,  9,  10, 11, 12, 13, 14, 20, 21, 22, 23, 24, 25, 26, 30, 31,
                             32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 45, 46, 47, 48, 50, 51,
                             52, 55, 56, 57, 58, 60, 61, 64, 70, 71, 72, 80, 85, 86, 87};
  return kind >= kind::must_understand_min || std::binary_search(known.begin(), known.end(), kind);
}

std::optional<Uuid> about_of(const PlacedRecord& placed) {
  const cbor::Map& body = placed.record.body;
  switch (placed.record.kind) {
    case kind::same_visit:
    case kind::same_work:
    case kind::strike_step:
    case kind::stock_moved:
      return id_in(body, 1);
    case kind::told_answered:
      return id_in(body, 2);
    case kind::work:
      return id_in(body, 3);
    case kind::closed:
      return id_in(body, 6);
    case kind::clock:
      return placed.device;
    default:
      return std::nullopt;
  }
}

std::optional<Uuid> visit_of(const Record& record) {
  switch (record.kind) {
    case kind::visit_opened:
      return record.id;
    case kind::visit_joined:
    case kind::sealed:
      return record.subject;
    case kind::not_reached:
    case kind::finding:
    case kind::photograph:
    case kind::hazard_raised:
    case kind::work:
    case kind::instrument_check:
      return id_in(record.body, 1);
    case kind::opened:
      return id_in(record.body, 2);
    case kind::told_answered:
      return id_in(record.body, 3);
    default:
      return is_reading(record.kind) ? id_in(record.body, 1) : std::nullopt;
  }
}

bool correctable(int kind, std::int64_t key) {
  if (is_reading(kind)) return key != 1;
  switch (kind) {
    case kind::create:
      return key == 3 || key == 5;
    case kind::finding:
      return key != 1 && key != 4;
    case kind::finding_ended:
      return key != 4;
    case kind::told_answered:
      return key != 2 && key != 3;
    case kind::work:
      return key != 1 && key != 3;
    case kind::closed:
      return key != 4 && key != 6;
    case kind::strike_step:
    case kind::stock_moved:
      return key != 1;
    case kind::same_visit:
    case kind::same_work:
    case kind::sealed:
    case kind::hazard_raised:
    case kind::correction:
    case kind::voided:
    case kind::settled:
    case kind::clock:
    case kind::object_erased:
      return false;
    default:
      return true;
  }
}

cbor::Map corrected_body(const Record& record, const cbor::Map& corrected) {
  cbor::Map body = record.body;
  for (const auto& [key, value] : corrected.pairs()) {
    const std::int64_t* number = key.number();
    if (number != nullptr && correctable(record.kind, *number)) body.set(key, value);
  }
  return body;
}

namespace {

/// The body key in which a record says when it was seen.
int stated_time_key(int kind) {
  switch (kind) {
    case kind::photograph:
      return 10;
    case kind::made_safe:
      return 3;
    case kind::told:
      return 1;
    case kind::closed:
      return 2;
    default:
      return 94;
  }
}

bool may_state_time(int kind) {
  return (kind >= kind::event && kind <= kind::strike_hours) || kind == kind::instrument_check ||
         kind == kind::read_by;
}

}  // namespace

Timed time_of(const Record& record, const cbor::Map& shown, const ClockOffset& clock) {
  Timed typed{record.l + record.w + clock.offset_ms, clock.quality};
  if (clock.lower_ms && typed.t < *clock.lower_ms) typed = {*clock.lower_ms, quality::uncertain};
  if (clock.upper_ms && typed.t > *clock.upper_ms) typed = {*clock.upper_ms, quality::uncertain};
  if (!may_state_time(record.kind)) return typed;
  const auto stated = number_in(shown, stated_time_key(record.kind));
  if (!stated) return typed;
  if (*stated > typed.t) return {typed.t, quality::uncertain};
  return {*stated, quality::as_stated};
}

std::optional<int> life_state_field(int type) {
  constexpr std::array<int, 13> fields{0, 0, 7, 6, 10, 8, 5, 8, 0, 5, 3, 0, 3};
  if (type < 1 || type >= static_cast<int>(fields.size())) return std::nullopt;
  const int field = fields[static_cast<std::size_t>(type)];
  return field == 0 ? std::nullopt : std::optional(field);
}

std::optional<int> tag_field(int type) {
  if (type == code_of(EntityType::post)) return 4;
  if (type == code_of(EntityType::component)) return 9;
  return std::nullopt;
}

std::optional<std::int64_t> number_in(const cbor::Map& body, std::int64_t key) {
  const cbor::Value* value = body.find(key);
  if (value == nullptr || value->number() == nullptr) return std::nullopt;
  return *value->number();
}

std::optional<Uuid> id_in(const cbor::Map& body, std::int64_t key) {
  const cbor::Value* value = body.find(key);
  return value == nullptr ? std::nullopt : value->uuid();
}

bool truth_in(const cbor::Map& body, std::int64_t key) {
  const cbor::Value* value = body.find(key);
  return value != nullptr && value->truth() != nullptr && *value->truth();
}

std::vector<Uuid> ids_of(const cbor::Value& list) {
  std::vector<Uuid> ids;
  if (list.array() == nullptr) return ids;
  for (const cbor::Value& one : *list.array()) {
    if (const auto id = one.uuid()) ids.push_back(*id);
  }
  return ids;
}

std::vector<Uuid> ids_in(const cbor::Map& body, std::int64_t key) {
  const cbor::Value* value = body.find(key);
  return value == nullptr ? std::vector<Uuid>{} : ids_of(*value);
}

std::vector<std::int64_t> numbers_in(const cbor::Map& body, std::int64_t key) {
  std::vector<std::int64_t> numbers;
  const cbor::Value* value = body.find(key);
  if (value == nullptr || value->array() == nullptr) return numbers;
  for (const cbor::Value& one : *value->array()) {
    if (one.number() != nullptr) numbers.push_back(*one.number());
  }
  return numbers;
}

}  // namespace kneerail::fold
