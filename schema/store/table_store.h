#pragma once

// The fold's tables in SQLite: one prepared statement a question, made when it is first asked.

#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/fold/tables.h"
#include "schema/database.h"

namespace kneerail {

enum class Indexes { now, later };

/// Creates the folded tables. Errors: io. With `later`, create_index() has to follow for each.
Result<> create_tables(Database& database, Indexes indexes);
Result<> create_index(Database& database, const fold::Table& table, const fold::Index& index);
/// Drops every table that is made from the journal, those of other fold versions too.
Result<> drop_tables(Database& database);

class SqlTables final : public fold::TableStore {
 public:
  /// Where indexes are made later, one that is asked for before is made then.
  explicit SqlTables(Database& database, Indexes indexes = Indexes::now);

  std::optional<fold::Row> row(int table, std::span<const fold::Cell> key) override;
  void put(int table, fold::Row row) override;
  void erase(int table, std::span<const fold::Cell> key) override;
  std::vector<fold::Row> rows(int table, int index, std::span<const fold::Cell> values) override;
  std::vector<fold::Row> rows_of_key(int table, std::span<const fold::Cell> key_start) override;
  [[nodiscard]] std::optional<Error> error() const override { return error_; }
  /// After the transaction was rolled back.
  void forget_error() { error_.reset(); }
  /// Makes the indexes that are not there yet.
  void finish_indexes();

 private:
  struct Questions {
    std::optional<Statement> row, put, erase;
    std::map<std::pair<int, std::size_t>, Statement> begins;  ///< (index or -1, count of values)
    std::vector<bool> indexed;
  };

  Statement* made(std::optional<Statement>& place, const std::string& sql);
  Statement* begins_with(int table, int index, std::size_t count);
  std::vector<fold::Row> all(const fold::Table& table, Statement& statement);
  bool need_index(int table, int index);
  void note(const Error& error);

  Database& database_;
  Indexes indexes_;
  std::vector<Questions> questions_;
  std::optional<Error> error_;
};

/// The row a statement stands on, its first columns being the table's.
fold::Row row_of(const fold::Table& table, const Statement& statement);
/// The cell stays where it is until the statement has run.
void bind_cell(Statement& statement, int place, const fold::Cell& cell);
/// "a, b, c" of a table's columns.
std::string column_list(const fold::Table& table);

}  // namespace kneerail
