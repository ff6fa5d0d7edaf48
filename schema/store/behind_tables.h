#pragma once

// Tables whose rows are written on a thread of their own, in the order in which they were put,
// while the one who puts goes on. A question first waits for what was put before it. The tables
// below are only ever touched by one of the two threads at a time.

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "core/fold/tables.h"

namespace kneerail {

class BehindTables final : public fold::TableStore {
 public:
  /// `below` outlives this; nobody else uses it, or its database, before wait().
  explicit BehindTables(fold::TableStore& below);
  /// What still waits is dropped.
  ~BehindTables() override;
  BehindTables(const BehindTables&) = delete;
  BehindTables& operator=(const BehindTables&) = delete;

  std::optional<fold::Row> row(int table, std::span<const fold::Cell> key) override;
  void put(int table, fold::Row row) override;
  void erase(int table, std::span<const fold::Cell> key) override;
  std::vector<fold::Row> rows(int table, int index, std::span<const fold::Cell> values) override;
  std::vector<fold::Row> rows_of_key(int table, std::span<const fold::Cell> key_start) override;
  /// As of what was written so far; of everything after wait().
  [[nodiscard]] std::optional<Error> error() const override;

  /// Done on that thread before any row that still waits: for what the rows have no part in.
  void run_first(std::function<void()> task);
  /// Until all that was put is written.
  void wait();

 private:
  struct Write {
    int table;
    bool there;     ///< else the row of this key is erased
    fold::Row row;  ///< or its key
  };
  using Writes = std::vector<Write>;

  void add(Write write);
  void send();
  void work();
  void write(Writes& writes);

  fold::TableStore& below_;
  Writes gathered_;  ///< by the one who puts, not yet sent
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<std::function<void()>> first_;
  std::deque<Writes> sent_;
  bool busy_ = false;
  bool ends_ = false;
  std::optional<Error> error_;
  std::thread thread_;
};

}  // namespace kneerail
