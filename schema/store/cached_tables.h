#pragma once

// Rows kept in memory in front of another table store until flush(): one transaction folds many
// records, and most of them change the same few rows. The fold then reads and writes here, and each
// changed row goes down once, in key order.
//
// What is here is known to be complete for some beginnings of a key or of an index ("all rows of
// this visit"): a question that was asked once is answered from memory from then on. Over empty
// tables everything is known from the start, and nothing is asked below until rows had to make
// room.

#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "core/fold/tables.h"
#include "schema/store/key_filter.h"

namespace kneerail {

enum class Below { has_rows, is_empty };

class CachedTables final : public fold::TableStore {
 public:
  /// `below` outlives this.
  CachedTables(fold::TableStore& below, Below state);

  std::optional<fold::Row> row(int table, std::span<const fold::Cell> key) override;
  void put(int table, fold::Row row) override;
  void erase(int table, std::span<const fold::Cell> key) override;
  std::vector<fold::Row> rows(int table, int index, std::span<const fold::Cell> values) override;
  std::vector<fold::Row> rows_of_key(int table, std::span<const fold::Cell> key_start) override;
  [[nodiscard]] std::optional<Error> error() const override { return below_.error(); }

  /// Changed rows go down; all stay here.
  void flush();
  /// The tables with most rows go down and are forgotten here, when more than so many cells are
  /// held. A cell takes 60 to 100 bytes, its share of the keys counted.
  void make_room(std::size_t cells_max);
  /// Forgets everything, changed rows too: the transaction was rolled back.
  void forget();

 private:
  struct Slot {
    fold::Row row;  ///< only the key's cells where there is no such row
    bool there = false;
    bool changed = false;
  };
  using Slots = std::unordered_map<std::string, Slot>;
  /// Slots in the order of an index or of the key, for the questions about beginnings.
  struct Order {
    bool kept = false;
    std::map<std::string, Slots::value_type*> slots;
    std::unordered_set<std::string> complete;  ///< beginnings of which every row is here
  };
  struct Held {
    Slots slots;
    std::vector<Slots::value_type*> changed;  ///< since they last went down
    std::vector<Order> orders;                ///< by key, then by each index
    std::optional<KeyFilter> forgotten;       ///< keys below, where everything there came from here
  };

  std::vector<fold::Row> begins_with(int table, int order, std::span<const fold::Cell> values);
  void keep_order(int table, int order);
  void place_in_orders(int table, Slots::value_type& slot);
  void take_from_orders(int table, Slots::value_type& slot);
  void load(int table, int order, std::span<const fold::Cell> values);
  void change(int table, Slots::value_type& slot, fold::Row row, bool there);
  std::vector<Slots::value_type*> take_changed(int table);
  void flush(int table);
  void move_down(int table);
  void forget(int table);
  [[nodiscard]] std::size_t cells_of(std::size_t table) const;

  fold::TableStore& below_;
  bool all_came_from_here_;
  std::vector<Held> held_;
};

}  // namespace kneerail
