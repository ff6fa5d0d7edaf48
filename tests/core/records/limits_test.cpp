// Walks the table of every kind and every type of thing: a body with what must be there is
// accepted, the least and the greatest value of each field too, one beyond each, another type and
// a missing field are not.

#include <catch2/catch.hpp>
#include <set>

#include "core/records/entities.h"
#include "core/records/kinds.h"
#include "core/records/plain_text.h"
#include "core/records/rule_set.h"

using namespace kneerail;

namespace {

enum class Which { least, greatest };

Uuid some_id(std::uint8_t last) {
  Uuid id;
  id.bytes[0] = 1;
  id.bytes[15] = last;
  return id;
}

cbor::Value sample(const FieldInfo& field, Which which);

cbor::Value samples(const FieldInfo& field, Which which) {
  cbor::Array items;
  // Not all of the many allowed: some lists in a row are longer than a record may be.
  const std::int64_t count =
      which == Which::least ? field.min : std::min<std::int64_t>(field.max, 60);
  for (std::int64_t i = 0; i < count; ++i) items.push_back(sample(*field.parts.first, which));
  return items;
}

cbor::Value tuple_of(const FieldInfo& field, Which which) {
  cbor::Array items;
  for (const FieldInfo& part : field.parts) {
    if (which == Which::greatest || part.required) items.push_back(sample(part, which));
  }
  return items;
}

cbor::Value map_of(const FieldInfo& field, Which which) {
  cbor::Map map;
  for (const FieldInfo& part : field.parts) {
    if (which == Which::greatest || part.required) map.set(part.key, sample(part, which));
  }
  return map;
}

cbor::Value sample(const FieldInfo& field, Which which) {
  const std::int64_t end = which == Which::least ? field.min : field.max;
  switch (field.shape) {
    case Shape::number:
    case Shape::code:
      return end;
    case Shape::truth:
      return which == Which::greatest;
    case Shape::text: {
      std::string text;
      for (std::int64_t i = 0; i < end; ++i) text += "ü";  // two bytes, one character
      return text;
    }
    case Shape::id:
      return some_id(7);
    case Shape::bytes:
      return cbor::Bytes(static_cast<std::size_t>(end), 7);
    case Shape::list:
      return samples(field, which);
    case Shape::tuple:
      return tuple_of(field, which);
    case Shape::map:
      return map_of(field, which);
    case Shape::table:
      return cbor::Map{{1, sample(*field.parts.first, which)}};
    case Shape::one_of:
      return sample(field.parts.first[which == Which::least ? 0 : field.parts.count - 1], which);
    case Shape::mark:
      return cbor::Array{1, cbor::Array{0, 10'000}, "a"};
    case Shape::any:
      break;
  }
  return 0;
}

/// Values of the right shape that are just outside the limits.
std::vector<cbor::Value> beyond(const FieldInfo& field) {
  switch (field.shape) {
    case Shape::number:
    case Shape::code:
      return {field.min - 1, field.max + 1};
    case Shape::text:
      return {std::string(static_cast<std::size_t>(field.max) + 1, 'a'), "a\tb", "a\xC2\x85"};
    case Shape::bytes:
      return {cbor::Bytes(static_cast<std::size_t>(field.min) - 1, 7),
              cbor::Bytes(static_cast<std::size_t>(field.max) + 1, 7)};
    case Shape::id:
      return {cbor::Bytes(15, 7), cbor::Bytes(17, 7)};
    case Shape::list: {
      const auto one = sample(*field.parts.first, Which::least);
      std::vector<cbor::Value> all{cbor::Array(static_cast<std::size_t>(field.max) + 1, one)};
      if (field.min > 0)
        all.emplace_back(cbor::Array(static_cast<std::size_t>(field.min) - 1, one));
      for (const auto& wrong : beyond(*field.parts.first)) all.emplace_back(cbor::Array{wrong});
      return all;
    }
    case Shape::tuple: {
      auto longer = *sample(field, Which::greatest).array();
      longer.emplace_back(0);
      return {cbor::Array{}, longer};
    }
    case Shape::mark:
      return {cbor::Array{0, cbor::Array{0, 0}}, cbor::Array{6, cbor::Array{0, 0}}, cbor::Array{1},
              cbor::Array{1, cbor::Array{0, 10'001}}, cbor::Array{1, cbor::Array{-1, 0}}};
    default:
      return {};
  }
}

cbor::Value another_type(const FieldInfo& field) {
  if (field.shape == Shape::truth) return 1;
  return true;
}

/// What a kind's rule asks for beside the required fields.
void complete(Record& record) {
  switch (record.kind) {
    case 1:
      record.subject = record.id;
      break;
    case 22:
      record.body.set(4, 250);
      record.body.set(10, 250);
      record.body.set(5, 2);
      break;
    case 38:
      record.body.set(3, "the rail moves");
      break;
    case 39:
      record.body.set(2, some_id(8));
      break;
    case 70:
      record.body.set(1, cbor::Map{{2, 3}});
      break;
    case 72:
      record.body.set(1, cbor::Array{some_id(7)});
      break;
    default:
      break;
  }
}

Record least_record(const KindInfo& kind) {
  Record record;
  record.kind = kind.kind;
  record.id = some_id(1);
  record.subject = some_id(2);
  for (const FieldInfo& field : kind.fields) {
    if (field.required) record.body.set(field.key, sample(field, Which::least));
  }
  complete(record);
  return record;
}

std::string said(const Result<>& result) {
  return result ? "" : result.error().message;
}

void check_field_limits(const FieldInfo& field, std::string_view of) {
  INFO(of << ", " << field.name);
  CHECK(said(check_field(field, sample(field, Which::least), of)).empty());
  CHECK(said(check_field(field, sample(field, Which::greatest), of)).empty());
  for (const auto& wrong : beyond(field)) {
    const std::string sentence = said(check_field(field, wrong, of));
    CHECK(sentence.find(field.name) != std::string::npos);
    CHECK(sentence.ends_with(". Nothing was saved."));
  }
  if (field.shape != Shape::any) CHECK_FALSE(check_field(field, another_type(field), of));
}

}  // namespace

TEST_CASE("every field of every kind is accepted to its limits and refused beyond", "[core]") {
  for (const KindInfo* kind : all_kinds()) {
    for (const FieldInfo& field : kind->fields) check_field_limits(field, kind->name);
    for (const FieldInfo* field : common_fields(*kind)) check_field_limits(*field, kind->name);
  }
  for (const EntityInfo* entity : all_entities())
    for (const FieldInfo& field : entity->fields) check_field_limits(field, entity->name);
  for (const FieldInfo& field : limit_fields) check_field_limits(field, "rule set");
}

TEST_CASE("a record of every kind needs what must be there, in its own type", "[core]") {
  for (const KindInfo* kind : all_kinds()) {
    INFO("kind " << kind->kind << " " << kind->name);
    const Record least = least_record(*kind);
    CHECK(said(check_limits(least)).empty());
    const auto back = decode_record(encode(least));
    REQUIRE(back);
    CHECK(*back == least);
    for (const FieldInfo& field : kind->fields) {
      INFO(field.name);
      Record record = least;
      if (field.required) {
        record.body.erase(field.key);
        CHECK(said(check_limits(record)).find(std::string(field.name) + " is missing") !=
              std::string::npos);
      }
      record = least;
      record.body.set(field.key, another_type(field));
      CHECK_FALSE(check_limits(record));
      for (const auto& wrong : beyond(field)) {
        record.body.set(field.key, wrong);
        CHECK_FALSE(check_limits(record));
      }
    }
  }
}

TEST_CASE("numbers of kinds, types, keys and names stand once", "[core]") {
  std::set<int> numbers;
  for (const KindInfo* kind : all_kinds()) {
    CHECK(numbers.insert(kind->kind).second);
    CHECK(kind_info(kind->kind) == kind);
    std::set<int> keys;
    for (const FieldInfo& field : kind->fields) CHECK(keys.insert(field.key).second);
  }
  CHECK(kind_info(999) == nullptr);
  int type = 0;
  for (const EntityInfo* entity : all_entities()) {
    CHECK(entity->type == ++type);
    CHECK(entity_info(type) == entity);
    std::set<std::string> columns;
    for (const FieldInfo& field : entity->fields) CHECK(columns.insert(column_name(field)).second);
  }
  CHECK(entity_info(13) == nullptr);
}

TEST_CASE("the longest time between visits is of one use in one air, the shortest said", "[core]") {
  const auto row = [](std::int64_t use, std::int64_t air, std::int64_t days) {
    return cbor::Value(cbor::Array{cbor::Value(use), cbor::Value(air), cbor::Value(days)});
  };
  cbor::Map limits;
  CHECK_FALSE(longest_interval_days(limits, 1, 5));
  limits.set(std::int64_t{limit_key::visit_interval},
             cbor::Array{row(1, 5, 365), row(1, 3, 730), row(1, 5, 180), row(2, 5, 90)});
  CHECK(longest_interval_days(limits, 1, 5) == 180);
  CHECK(longest_interval_days(limits, 1, 3) == 730);
  CHECK_FALSE(longest_interval_days(limits, 3, 5));
}
