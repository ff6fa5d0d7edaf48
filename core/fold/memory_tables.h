#pragma once

// The folded tables in memory: what tests and the judge fold into. Ordered maps, one a table and
// one an index; a row of any table is found in O(log n).

#include <map>
#include <set>

#include "core/fold/tables.h"

namespace kneerail::fold {

class MemoryTableStore final : public TableStore {
 public:
  using Key = std::vector<Cell>;
  using Rows = std::map<Key, Row>;

  MemoryTableStore();
  std::optional<Row> row(int table, std::span<const Cell> key) override;
  void put(int table, Row row) override;
  void erase(int table, std::span<const Cell> key) override;
  std::vector<Row> rows(int table, int index, std::span<const Cell> values) override;
  std::vector<Row> rows_of_key(int table, std::span<const Cell> key_start) override;
  [[nodiscard]] std::optional<Error> error() const override { return std::nullopt; }

  /// Every row of a table in key order.
  [[nodiscard]] const Rows& all(int table) const;
  bool operator==(const MemoryTableStore& other) const;

 private:
  struct Held {
    Rows rows;
    std::vector<std::set<Key>> indexes;  ///< the index's cells, then the key's
  };
  Key index_key(int table, std::size_t index, const Row& row) const;
  void forget(int table, const Row& row);
  std::vector<Held> tables_;
};

/// What differs, for a person: table, key and the cells; empty when nothing does.
std::string difference(const MemoryTableStore& left, const MemoryTableStore& right);

}  // namespace kneerail::fold
