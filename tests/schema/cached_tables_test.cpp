#include "schema/store/cached_tables.h"

#include <catch2/catch.hpp>
#include <future>

#include "core/base/world.h"
#include "schema/store/behind_tables.h"
#include "schema/store/table_store.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using fold::Cell;
using fold::Row;

namespace {

Cell random_cell(const fold::Column& column, SplitMix64& random) {
  if (column.optional && random.between(0, 3) == 0) return {};
  switch (column.type) {
    case fold::Type::number:
      return random.between(-2, 2);
    case fold::Type::id: {
      Uuid id;
      id.bytes[15] = static_cast<std::uint8_t>(random.between(0, 3));
      return id;
    }
    case fold::Type::text:
      return std::string(static_cast<std::size_t>(random.between(0, 2)), 'a');
    case fold::Type::bytes:
      return cbor::Bytes(static_cast<std::size_t>(random.between(0, 2)), 0);
  }
  return {};
}

Row random_row(const fold::Table& table, SplitMix64& random) {
  Row row;
  for (const auto& column : table.columns) row.push_back(random_cell(column, random));
  return row;
}

/// The same question to both; the answers have to be the same.
void ask_both(int table, SplitMix64& random, fold::TableStore& plain, fold::TableStore& cached) {
  const auto& shape = fold::tables()[static_cast<std::size_t>(table)];
  const Row row = random_row(shape, random);
  const auto keys = static_cast<std::size_t>(shape.key_columns);
  const auto key = std::span(row).first(keys);
  CHECK(plain.row(table, key) == cached.row(table, key));
  const auto part = key.first(static_cast<std::size_t>(random.between(0, shape.key_columns)));
  CHECK(plain.rows_of_key(table, part) == cached.rows_of_key(table, part));
  if (shape.indexes.empty()) return;
  const auto index = static_cast<int>(random.between(0, std::ssize(shape.indexes) - 1));
  std::vector<Cell> values;
  for (const int column : shape.indexes[static_cast<std::size_t>(index)].columns) {
    values.push_back(row[static_cast<std::size_t>(column)]);
  }
  values.resize(static_cast<std::size_t>(random.between(1, std::ssize(values))));
  CHECK(plain.rows(table, index, values) == cached.rows(table, index, values));
}

void act_on_both(SplitMix64& random, SqlTables& plain, CachedTables& cached) {
  const int table = static_cast<int>(random.between(0, 5));
  const auto& shape = fold::tables()[static_cast<std::size_t>(table)];
  const auto row = random_row(shape, random);
  const auto key = std::span(row).first(static_cast<std::size_t>(shape.key_columns));
  switch (random.between(0, 7)) {
    case 0:
    case 1:
    case 2:
      plain.put(table, row);
      return cached.put(table, row);
    case 3:
      plain.erase(table, key);
      return cached.erase(table, key);
    case 4:
      return random.between(0, 9) == 0 ? cached.flush() : cached.make_room(2000);
    default:
      return ask_both(table, random, plain, cached);
  }
}

std::int64_t facts_in(Database& database) {
  const auto count = database.number("SELECT count(*) FROM fact");
  return count ? *count : -1;
}

}  // namespace

TEST_CASE("rows kept in memory answer as the tables below would", "[schema][property]") {
  const auto seed = GENERATE(test::each_seed(1, 20));
  const auto state = seed % 2 == 0 ? Below::is_empty : Below::has_rows;
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  auto one = Database::open({":memory:", Database::Access::create, ""});
  auto other = Database::open({":memory:", Database::Access::create, ""});
  REQUIRE(one);
  REQUIRE(other);
  REQUIRE(create_tables(*one, Indexes::now));
  REQUIRE(create_tables(*other, Indexes::now));
  SqlTables plain(*one);
  SqlTables below(*other);
  BehindTables behind(below);  // on every third seed the rows are written on another thread
  CachedTables cached(seed % 3 == 0 ? static_cast<fold::TableStore&>(behind) : below, state);
  for (int step = 0; step < 1000; ++step) act_on_both(random, plain, cached);
  cached.flush();
  behind.wait();
  REQUIRE_FALSE(plain.error());
  REQUIRE_FALSE(below.error());
  for (int table = 0; table < std::ssize(fold::tables()); ++table) {
    CHECK(plain.rows_of_key(table, {}) == below.rows_of_key(table, {}));
  }
}

TEST_CASE("rows written behind tell the first error and write nothing after it", "[schema]") {
  auto database = Database::open({":memory:", Database::Access::create, ""});
  REQUIRE(database);
  REQUIRE(create_tables(*database, Indexes::now));
  REQUIRE(database->run("PRAGMA query_only=ON"));
  SqlTables below(*database);
  BehindTables behind(below);
  SplitMix64 random(1);
  for (int table = 0; table < 5; ++table) {
    behind.put(table, random_row(fold::tables()[static_cast<std::size_t>(table)], random));
  }
  behind.wait();
  REQUIRE(behind.error());
  CHECK(behind.error()->fault == Fault::io);
  CHECK(facts_in(*database) == 0);
}

TEST_CASE("a task goes before the rows that wait, and what waits at the end is dropped",
          "[schema]") {
  auto database = Database::open({":memory:", Database::Access::create, ""});
  REQUIRE(database);
  REQUIRE(create_tables(*database, Indexes::now));
  SqlTables below(*database);
  std::promise<void> hold;
  std::vector<std::int64_t> rows_seen;
  {
    BehindTables behind(below);
    std::promise<void> begun;
    behind.run_first([&begun, released = hold.get_future().share()] {
      begun.set_value();
      released.wait();
    });
    begun.get_future().wait();
    SplitMix64 random(2);
    behind.put(0, random_row(fold::tables()[0], random));
    behind.run_first([&] { rows_seen.push_back(facts_in(*database)); });
    hold.set_value();
    behind.wait();
    behind.put(0, random_row(fold::tables()[0], random));  // gathered, never sent
  }
  CHECK(rows_seen == std::vector<std::int64_t>{0});
  CHECK(facts_in(*database) == 1);
}
