#pragma once

// What the fold writes to: named tables of plain cells behind one narrow interface, so that the
// same rules fill SQLite on a tablet and a map in a test. schema/tables.sql creates the same
// tables; a test compares the two.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/cbor.h"

namespace kneerail::fold {

/// Absent, a whole number, an identifier, text, or bytes (digests, CBOR).
using Cell = std::variant<std::monostate, std::int64_t, Uuid, std::string, cbor::Bytes>;
using Row = std::vector<Cell>;

enum class Type { number, id, text, bytes };

struct Column {
  std::string_view name;
  Type type;
  bool optional = false;
};

struct Index {
  std::string_view name;
  std::vector<int> columns;  ///< places in the table's columns
};

struct Table {
  std::string_view name;
  int key_columns;  ///< the first so many columns are the key
  std::vector<Column> columns;
  std::vector<Index> indexes;
};

/// Every table of the fold, in a fixed order. The place of a table here is its number.
const std::vector<Table>& tables();
/// Raised whenever the same records would give other rows than before.
extern const int fold_version;

/// A failed read or write is remembered: later calls do nothing, and whoever owns the transaction
/// asks error() before it commits.
class TableStore {
 public:
  virtual ~TableStore() = default;
  virtual std::optional<Row> row(int table, std::span<const Cell> key) = 0;
  virtual void put(int table, Row row) = 0;  ///< replaces the row of the same key
  virtual void erase(int table, std::span<const Cell> key) = 0;
  /// Rows whose columns of that index begin with these values, in the order of the table's key.
  virtual std::vector<Row> rows(int table, int index, std::span<const Cell> values) = 0;
  /// Rows whose key begins with these cells, in key order.
  virtual std::vector<Row> rows_of_key(int table, std::span<const Cell> key_start) = 0;
  [[nodiscard]] virtual std::optional<Error> error() const = 0;
};

}  // namespace kneerail::fold
