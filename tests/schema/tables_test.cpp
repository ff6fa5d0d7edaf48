#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <vector>

#include "core/fold/tables.h"
#include "schema/store/table_store.h"

using namespace kneerail;

namespace {

std::vector<std::string> texts(Database& database, const std::string& sql) {
  auto statement = database.prepare(sql);
  REQUIRE(statement);
  std::vector<std::string> found;
  for (;;) {
    auto more = statement->step();
    REQUIRE(more);
    if (!*more) return found;
    found.emplace_back(statement->text(0));
  }
}

std::string quoted(std::string_view name) {
  std::string text(1, '\'');
  text.append(name).push_back('\'');
  return text;
}

const char* sql_type(fold::Type type) {
  if (type == fold::Type::number) return "INTEGER";
  return type == fold::Type::text ? "TEXT" : "BLOB";
}

/// "name TYPE NOT NULL key 1" for each column, as the fold describes it.
std::vector<std::string> described(const fold::Table& table) {
  std::vector<std::string> lines;
  int place = 0;
  for (const auto& column : table.columns) {
    std::string line = std::string(column.name) + " " + sql_type(column.type);
    if (!column.optional) line += " NOT NULL";
    if (++place <= table.key_columns) line += " key " + std::to_string(place);
    lines.push_back(line);
  }
  return lines;
}

}  // namespace

TEST_CASE("tables.sql makes the very tables that the fold describes", "[schema]") {
  auto database = Database::open({":memory:", Database::Access::create, ""});
  REQUIRE(database);
  const auto made = create_tables(*database, Indexes::now);
  INFO((made ? "" : made.error().message));
  REQUIRE(made);

  std::set<std::string> wanted;
  std::set<std::string> wanted_indexes;
  for (const auto& table : fold::tables()) {
    INFO("table " << table.name);
    wanted.insert(std::string(table.name));
    CHECK(texts(*database,
                "SELECT name || ' ' || type || CASE WHEN \"notnull\" THEN ' NOT NULL' ELSE '' END "
                "|| CASE WHEN pk > 0 THEN ' key ' || pk ELSE '' END FROM pragma_table_info(" +
                    quoted(table.name) + ")") == described(table));
    CHECK(texts(*database, "SELECT strict || ' ' || wr FROM pragma_table_list WHERE name = " +
                               quoted(table.name)) == std::vector<std::string>{"1 1"});
    for (const auto& index : table.indexes) {
      wanted_indexes.insert(std::string(index.name));
      std::vector<std::string> columns;
      for (const int column : index.columns) {
        columns.emplace_back(table.columns[static_cast<std::size_t>(column)].name);
      }
      CHECK(texts(*database, "SELECT name FROM pragma_index_info(" + quoted(index.name) + ")") ==
            columns);
    }
  }
  const auto tables =
      texts(*database, "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name");
  CHECK(std::set<std::string>(tables.begin(), tables.end()) == wanted);
  const auto indexes =
      texts(*database, "SELECT name FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL");
  CHECK(std::set<std::string>(indexes.begin(), indexes.end()) == wanted_indexes);
}

TEST_CASE("indexes made later are the same as those made at once", "[schema]") {
  auto now = Database::open({":memory:", Database::Access::create, ""});
  auto later = Database::open({":memory:", Database::Access::create, ""});
  REQUIRE(now);
  REQUIRE(later);
  REQUIRE(create_tables(*now, Indexes::now));
  REQUIRE(create_tables(*later, Indexes::later));
  const std::string question =
      "SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema ORDER BY 1";
  CHECK(texts(*now, question) != texts(*later, question));
  SqlTables tables(*later, Indexes::later);
  tables.finish_indexes();
  CHECK_FALSE(tables.error());
  CHECK(texts(*now, question) == texts(*later, question));
}

TEST_CASE("dropping the tables leaves the journal's own", "[schema]") {
  auto database = Database::open({":memory:", Database::Access::create, ""});
  REQUIRE(database);
  REQUIRE(database->run("CREATE TABLE journal (lid INTEGER PRIMARY KEY) STRICT"));
  REQUIRE(database->run("CREATE TABLE of_another_version (a INTEGER) STRICT"));
  REQUIRE(create_tables(*database, Indexes::now));
  REQUIRE(drop_tables(*database));
  CHECK(texts(*database, "SELECT name FROM sqlite_schema") == std::vector<std::string>{"journal"});
}
