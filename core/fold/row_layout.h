#pragma once

// Which field of a record's body stands in which column: one list a kind, read in both directions.
// Shared by both folds.

#include <span>

#include "core/fold/columns.h"
#include "core/fold/rules.h"

namespace kneerail::fold {

struct Field {
  int key;
  int column;
  bool truth = false;  ///< a truth value kept as 0 or 1
};

/// One kind of record that shows as one row.
struct Layout {
  int table;
  std::span<const Field> fields;
};

/// The layout of a plain kind; null for others, readings included.
const Layout* layout_of(int kind);

/// Absent when the value is missing or of another type than the column.
Cell cell_of(const cbor::Value* value, Type type);

Cell cell(const std::optional<Uuid>& id);
Cell cell(const std::optional<std::int64_t>& number);
/// CBOR array, ascending and each once.
Cell sorted_ids_cell(std::vector<Uuid> ids);
std::vector<Uuid> ids_of(const Cell& list);
std::int64_t number_of(const Cell& cell, std::int64_t otherwise = 0);
std::optional<std::int64_t> number_at(const Row& row, int column);
std::optional<Uuid> id_at(const Row& row, int column);

/// The row of a plain kind: start, fields and rest. What its rules derive is still absent, numbers
/// that must be there are 0.
Row plain_row(const Fact& fact, const Layout& layout);

Row fact_row(const PlacedRecord& placed);
PlacedRecord placed_of_fact(const Row& row);

/// A reading as shown.
Row reading_row(const Fact& reading);
/// The record a row of table reading was made from, as first written.
PlacedRecord placed_of_reading(const Row& row);
/// Spot, screw, or the thing measured for geometry; 0 where a kind has no place.
std::int64_t place_of_reading(const Row& row);
MergeKey key_of_reading(const Row& row);

Row clock_row(const Uuid& dev, const Uuid& feed, std::int64_t g, const ClockOffset& offset);
ClockOffset clock_of(const Row& row);
Row change_row(const Uuid& record, const Change& change);
Change change_of(const Row& row);

/// The fields of an entity that have no column.
cbor::Map rest_of(const Row& entity);

/// The column of an entity's field, by type; -1 where it stands in `rest`.
int entity_column(int type, std::int64_t field);

}  // namespace kneerail::fold
