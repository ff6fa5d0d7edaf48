#include "schema/store/table_store.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "schema/sql_text.h"

namespace kneerail {
namespace {

using fold::Cell;
using fold::Row;
using fold::Table;

std::string name_list(const Table& table, std::span<const int> places) {
  std::string list;
  for (const int place : places) {
    if (!list.empty()) list += ", ";
    list += table.columns[static_cast<std::size_t>(place)].name;
  }
  return list;
}

std::vector<int> key_places(const Table& table) {
  std::vector<int> places;
  for (int place = 0; place < table.key_columns; ++place) places.push_back(place);
  return places;
}

/// "a IS ? AND b IS ?": IS also finds what is absent.
std::string condition(const Table& table, std::span<const int> places) {
  std::string text;
  for (const int place : places) {
    if (!text.empty()) text += " AND ";
    text += std::string(table.columns[static_cast<std::size_t>(place)].name) + " IS ?";
  }
  return text;
}

/// Where the tables stand, an upsert: an index of columns that stay, the key's first of all, is not
/// written again. Where they are filled, most rows are new, and a plain replacement is faster.
std::string put_sql(const Table& table, Indexes indexes) {
  std::string marks, values;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    marks += i == 0 ? "?" : ", ?";
    if (static_cast<int>(i) < table.key_columns) continue;
    const std::string name(table.columns[i].name);
    values += (values.empty() ? "" : ", ") + name + " = excluded." + name;
  }
  const std::string rest =
      " INTO " + std::string(table.name) + " (" + column_list(table) + ") VALUES (" + marks + ")";
  if (indexes == Indexes::later) return "INSERT OR REPLACE" + rest;
  return "INSERT" + rest + " ON CONFLICT (" + name_list(table, key_places(table)) + ") DO " +
         (values.empty() ? "NOTHING" : "UPDATE SET " + values);
}

bool is_local(std::string_view table) {
  static constexpr std::array<std::string_view, 9> local = {
      "journal", "feed", "device", "draft", "setting", "unlock", "fit", "forecast", "step"};
  return std::ranges::find(local, table) != local.end();
}

}  // namespace

std::string column_list(const Table& table) {
  std::string list;
  for (const auto& column : table.columns) {
    if (!list.empty()) list += ", ";
    list += column.name;
  }
  return list;
}

Row row_of(const Table& table, const Statement& statement) {
  Row row;
  row.reserve(table.columns.size());
  for (int place = 0; place < std::ssize(table.columns); ++place) {
    if (statement.is_null(place)) {
      row.emplace_back();
      continue;
    }
    switch (table.columns[static_cast<std::size_t>(place)].type) {
      case fold::Type::number:
        row.emplace_back(statement.number(place));
        break;
      case fold::Type::id:
        row.emplace_back(statement.uuid(place));
        break;
      case fold::Type::text:
        row.emplace_back(std::string(statement.text(place)));
        break;
      case fold::Type::bytes: {
        const auto bytes = statement.bytes(place);
        row.emplace_back(cbor::Bytes(bytes.begin(), bytes.end()));
        break;
      }
    }
  }
  return row;
}

void bind_cell(Statement& statement, int place, const Cell& cell) {
  if (const auto* number = std::get_if<std::int64_t>(&cell)) {
    statement.bind(place, *number);
  } else if (const auto* id = std::get_if<Uuid>(&cell)) {
    statement.bind_in_place(place, std::span<const std::uint8_t>(id->bytes));
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    statement.bind_in_place(place, std::string_view(*text));
  } else if (const auto* bytes = std::get_if<cbor::Bytes>(&cell)) {
    statement.bind_in_place(place, std::span<const std::uint8_t>(*bytes));
  } else {
    statement.bind_null(place);
  }
}

Result<> create_tables(Database& database, Indexes indexes) {
  if (indexes == Indexes::now) return database.run(tables_sql);
  std::string text;
  for (std::string_view rest = tables_sql; !rest.empty();) {
    const auto end = std::min(rest.find('\n'), rest.size() - 1) + 1;
    if (!rest.starts_with("CREATE INDEX")) text += rest.substr(0, end);
    rest.remove_prefix(end);
  }
  return database.run(text);
}

Result<> create_index(Database& database, const Table& table, const fold::Index& index) {
  return database.run("CREATE INDEX " + std::string(index.name) + " ON " + std::string(table.name) +
                      " (" + name_list(table, index.columns) + ")");
}

Result<> drop_tables(Database& database) {
  std::vector<std::string> names;
  {
    auto statement = database.prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'");
    if (!statement) return fail(statement.error());
    for (;;) {
      auto more = statement->step();
      if (!more) return fail(more.error());
      if (!*more) break;
      if (!is_local(statement->text(0))) names.emplace_back(statement->text(0));
    }
  }
  for (const auto& name : names) {
    if (auto done = database.run("DROP TABLE \"" + name + "\""); !done) return done;
  }
  return Done{};
}

SqlTables::SqlTables(Database& database, Indexes indexes)
    : database_(database), indexes_(indexes), questions_(fold::tables().size()) {
  for (std::size_t table = 0; table < questions_.size(); ++table) {
    questions_[table].indexed.assign(fold::tables()[table].indexes.size(), indexes == Indexes::now);
  }
}

void SqlTables::note(const Error& error) {
  if (!error_) error_ = error;
}

Statement* SqlTables::made(std::optional<Statement>& place, const std::string& sql) {
  if (error_) return nullptr;
  if (!place) {
    auto statement = database_.prepare(sql);
    if (!statement) {
      note(statement.error());
      return nullptr;
    }
    place = std::move(*statement);
  }
  return &*place;
}

std::vector<Row> SqlTables::all(const Table& table, Statement& statement) {
  std::vector<Row> found;
  for (;;) {
    auto more = statement.step();
    if (!more) {
      note(more.error());
      return {};
    }
    if (!*more) return found;
    found.push_back(row_of(table, statement));
  }
}

std::optional<Row> SqlTables::row(int table, std::span<const Cell> key) {
  const Table& shape = fold::tables()[static_cast<std::size_t>(table)];
  auto* statement = made(questions_[static_cast<std::size_t>(table)].row,
                         "SELECT " + column_list(shape) + " FROM " + std::string(shape.name) +
                             " WHERE " + condition(shape, key_places(shape)));
  if (statement == nullptr) return std::nullopt;
  for (std::size_t i = 0; i < key.size(); ++i) {
    bind_cell(*statement, static_cast<int>(i) + 1, key[i]);
  }
  auto found = all(shape, *statement);
  if (found.empty()) return std::nullopt;
  return std::move(found.front());
}

void SqlTables::put(int table, Row row) {
  const Table& shape = fold::tables()[static_cast<std::size_t>(table)];
  check(row.size() == shape.columns.size(), "a row has a cell for each column");
  auto& place = questions_[static_cast<std::size_t>(table)].put;
  if (!place) made(place, put_sql(shape, indexes_));
  if (error_) return;
  for (std::size_t i = 0; i < row.size(); ++i) {
    bind_cell(*place, static_cast<int>(i) + 1, row[i]);
  }
  if (auto done = place->run(); !done) note(done.error());
}

void SqlTables::erase(int table, std::span<const Cell> key) {
  const Table& shape = fold::tables()[static_cast<std::size_t>(table)];
  auto* statement = made(
      questions_[static_cast<std::size_t>(table)].erase,
      "DELETE FROM " + std::string(shape.name) + " WHERE " + condition(shape, key_places(shape)));
  if (statement == nullptr) return;
  for (std::size_t i = 0; i < key.size(); ++i) {
    bind_cell(*statement, static_cast<int>(i) + 1, key[i]);
  }
  if (auto done = statement->run(); !done) note(done.error());
}

bool SqlTables::need_index(int table, int index) {
  auto& indexed = questions_[static_cast<std::size_t>(table)].indexed;
  if (index < 0 || indexed[static_cast<std::size_t>(index)]) return true;
  const Table& shape = fold::tables()[static_cast<std::size_t>(table)];
  auto done = create_index(database_, shape, shape.indexes[static_cast<std::size_t>(index)]);
  if (!done) note(done.error());
  indexed[static_cast<std::size_t>(index)] = done.has_value();
  return done.has_value();
}

Statement* SqlTables::begins_with(int table, int index, std::size_t count) {
  if (error_ || !need_index(table, index)) return nullptr;
  auto& begins = questions_[static_cast<std::size_t>(table)].begins;
  if (auto found = begins.find({index, count}); found != begins.end()) return &found->second;
  const Table& shape = fold::tables()[static_cast<std::size_t>(table)];
  const auto key = key_places(shape);
  const auto places =
      index < 0 ? std::span<const int>(key)
                : std::span<const int>(shape.indexes[static_cast<std::size_t>(index)].columns);
  std::string sql = "SELECT " + column_list(shape) + " FROM " + std::string(shape.name);
  if (count > 0) sql += " WHERE " + condition(shape, places.first(count));
  auto statement = database_.prepare(sql + " ORDER BY " + name_list(shape, key));
  if (!statement) {
    note(statement.error());
    return nullptr;
  }
  return &begins.emplace(std::pair(index, count), std::move(*statement)).first->second;
}

std::vector<Row> SqlTables::rows(int table, int index, std::span<const Cell> values) {
  auto* statement = begins_with(table, index, values.size());
  if (statement == nullptr) return {};
  for (std::size_t i = 0; i < values.size(); ++i) {
    bind_cell(*statement, static_cast<int>(i) + 1, values[i]);
  }
  return all(fold::tables()[static_cast<std::size_t>(table)], *statement);
}

std::vector<Row> SqlTables::rows_of_key(int table, std::span<const Cell> key_start) {
  return rows(table, -1, key_start);
}

void SqlTables::finish_indexes() {
  for (int table = 0; table < std::ssize(questions_); ++table) {
    const auto count = std::ssize(questions_[static_cast<std::size_t>(table)].indexed);
    for (int index = 0; index < count && !error_; ++index) need_index(table, index);
  }
}

}  // namespace kneerail
