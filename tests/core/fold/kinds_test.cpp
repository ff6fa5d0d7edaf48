#include "core/records/kinds.h"

#include <catch2/catch.hpp>

#include "core/fold/row_layout.h"
#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

/// The least value that a field of a reading may have.
cbor::Value least(const FieldInfo& field) {
  switch (field.shape) {
    case Shape::id:
      return id(100);
    case Shape::code:
      return field.words.from;
    case Shape::list:
      return cbor::Array{least(*field.parts.begin())};
    default:
      return field.min;
  }
}

}  // namespace

TEST_CASE("the fold takes for readings what the kinds say are readings", "[core][fold]") {
  for (const KindInfo* kind : all_kinds()) {
    INFO("kind " << kind->kind << ", " << kind->name);
    CHECK(is_reading(kind->kind) == kind->reading);
  }
}

TEST_CASE("what a reading must have stands in columns of its row", "[core][fold]") {
  for (const KindInfo* kind : all_kinds()) {
    if (!kind->reading) continue;
    Fact fact;
    fact.placed.record.kind = kind->kind;
    for (const FieldInfo& field : kind->fields) {
      if (field.required) fact.placed.record.body.set(field.key, least(field));
    }
    fact.shown = fact.placed.record.body;
    INFO("kind " << kind->kind << ", " << kind->name);
    const Row row = reading_row(fact);
    CHECK(row[static_cast<std::size_t>(at(reading_columns, "rest"))] == Cell());
  }
}

}  // namespace kneerail::fold::test
