#pragma once

// Records and stamps in, table rows out. Two ways to the same rows: the incremental fold takes one
// record at a time in any order of arrival; the naive fold takes them all, sorts them and applies
// the rules as they are written, and judges the other.

#include <memory>
#include <span>
#include <vector>

#include "core/base/id.h"
#include "core/fold/tables.h"
#include "core/records/record.h"

namespace kneerail::fold {

/// The components whose forecast may have changed since the set was last emptied: filled by add()
/// when one is given. May name a component more than once.
struct Touched {
  std::vector<Uuid> components;
};

/// Changes the rows that one more record changes. A record that is in already changes nothing; one
/// whose stamp is new since then changes what depends on the stamp. Records may arrive in any
/// order.
void add(const PlacedRecord& placed, TableStore& store, Touched* touched = nullptr);

/// The same for many records: rows that stand for many are made once, in finish(), and not again
/// for each record. Between add() and finish() such rows are behind; after finish() the tables are
/// what add() record by record would have made. One destroyed without finish() leaves them behind.
class Batch {
 public:
  /// What the store holds when the batch begins. Over an empty one nothing that came before has to
  /// be looked for.
  enum class Begins { with_rows, empty };
  explicit Batch(TableStore& store, Touched* touched = nullptr, Begins begins = Begins::with_rows);
  ~Batch();
  Batch(const Batch&) = delete;
  Batch& operator=(const Batch&) = delete;

  void add(const PlacedRecord& placed);
  void finish();
  /// For a batch too large to hold: makes, between two pages of it, what records to come build on
  /// (clocks, entities, lives). What stands for many records still waits.
  void settle();
  /// Makes up to so many of the rows that wait; whether more wait. finish() in steps.
  bool make(int rows_most);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// All rows of all records, by sorting everything first. Slow and obvious. The store must be empty.
void add_all_naively(std::span<const PlacedRecord> placed, TableStore& store);

}  // namespace kneerail::fold
