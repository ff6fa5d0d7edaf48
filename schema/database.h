#pragma once

// SQLite behind a few calls: the only pair of files that includes sqlite3.h. A statement is
// prepared once, bound by place, stepped, read by column; a transaction rolls back unless it was
// committed.

#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/id.h"
#include "core/base/result.h"

struct sqlite3;
struct sqlite3_stmt;

namespace kneerail {

class Database;

/// What somebody who waits for statements can do meanwhile: leave them off, and see how much they
/// do.
struct Watch {
  const std::atomic<bool>* stop = nullptr;  ///< true: the statement that runs fails with cancelled
  int every = 1000;  ///< steps of SQLite's own machine from one look to the next, about
  std::int64_t steps =
      0;  ///< so far: the same on a busy machine; short statements count with every 1
};

/// A prepared statement. Places of parameters count from 1, of columns from 0.
class Statement {
 public:
  Statement() = default;
  Statement(Statement&&) noexcept;
  Statement& operator=(Statement&&) noexcept;
  ~Statement();

  Statement& bind(int place, std::int64_t value);
  Statement& bind(int place, double value);
  Statement& bind(int place, std::string_view text);
  Statement& bind(int place, std::span<const std::uint8_t> bytes);
  Statement& bind(int place, const Uuid& id);
  /// Without a copy: the text or the bytes stay where they are until the statement has run.
  Statement& bind_in_place(int place, std::string_view text);
  Statement& bind_in_place(int place, std::span<const std::uint8_t> bytes);
  Statement& bind_null(int place);

  /// True while there is a row. Errors: io, corrupt, conflict (busy).
  Result<bool> step();
  /// Runs to the end and makes ready for the next run.
  Result<> run();
  void reset();

  [[nodiscard]] bool is_null(int column) const;
  [[nodiscard]] std::int64_t number(int column) const;
  [[nodiscard]] double real(int column) const;
  [[nodiscard]] std::string_view text(int column) const;  ///< valid until the next step
  [[nodiscard]] std::span<const std::uint8_t> bytes(
      int column) const;                      ///< valid until the next step
  [[nodiscard]] Uuid uuid(int column) const;  ///< zero when not sixteen bytes

 private:
  friend class Database;
  Statement(sqlite3* database, sqlite3_stmt* statement)
      : database_(database), statement_(statement) {}
  sqlite3* database_ = nullptr;
  sqlite3_stmt* statement_ = nullptr;
};

class Database {
 public:
  static constexpr int usual_cache_kib = 32 * 1024;
  enum class Access { read, write, create };
  struct Options {
    std::string path;
    Access access = Access::write;
    std::string vfs;  ///< empty: the machine's own file layer
    /// For reading where the disk has no room for the log's index: it is kept in memory, which
    /// keeps all others out. Errors: conflict, where another has it open.
    bool alone = false;
    int cache_kib = usual_cache_kib;  ///< of pages that are held in memory at most
  };
  static Result<Database> open(const Options& options);
  Database(Database&&) noexcept;
  Database& operator=(Database&&) noexcept;
  ~Database();

  Result<Statement> prepare(std::string_view sql);
  /// Runs statements separated by semicolons.
  Result<> run(std::string_view sql);
  /// The first column of the first row as a number. Errors: not_found when there is no row.
  Result<std::int64_t> number(std::string_view sql);
  [[nodiscard]] std::int64_t changes() const;
  /// Looked at while statements run. It outlives the next call, or the database; null: nobody
  /// watches.
  void watch(Watch* watch);
  [[nodiscard]] sqlite3* handle() const { return database_; }

 private:
  friend class Transaction;
  explicit Database(sqlite3* database) : database_(database) {}
  /// Runs a statement that is kept prepared in its place.
  Result<> run_kept(std::optional<Statement>& place, std::string_view sql);

  sqlite3* database_ = nullptr;
  std::optional<Statement> begin_, commit_;
};

/// What the database holds at one moment, for all that is read until it ends; a writer goes on
/// meanwhile. Within another, or within a transaction, it is a part of that.
class Snapshot {
 public:
  static Result<Snapshot> begin(Database& database);
  Snapshot(Snapshot&&) noexcept;
  ~Snapshot();

 private:
  explicit Snapshot(Database* database) : database_(database) {}
  Database* database_;
};

class Transaction {
 public:
  /// Begins at once, as a writer.
  static Result<Transaction> begin(Database& database);
  Transaction(Transaction&&) noexcept;
  ~Transaction();
  Result<> commit();

 private:
  explicit Transaction(Database* database) : database_(database) {}
  Database* database_;
};

}  // namespace kneerail
