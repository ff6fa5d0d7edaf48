#include <catch2/catch.hpp>
#include <set>

#include "core/fold/row_layout.h"
#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

TEST_CASE("every folded table has a key, distinct columns and indexes inside it", "[core][fold]") {
  REQUIRE(tables().size() == table_count);
  std::set<std::string_view> names;
  for (const Table& table : tables()) {
    INFO(table.name);
    CHECK(names.insert(table.name).second);
    REQUIRE(table.key_columns > 0);
    CHECK(table.key_columns <= static_cast<int>(table.columns.size()));
    std::set<std::string_view> columns;
    for (const Column& column : table.columns) {
      INFO(column.name);
      CHECK_FALSE(column.name.empty());
      CHECK(columns.insert(column.name).second);
    }
    for (int key = 0; key < table.key_columns; ++key) {
      CHECK_FALSE(table.columns[static_cast<std::size_t>(key)].optional);
    }
    for (const Index& index : table.indexes) {
      for (const int column : index.columns) {
        CHECK(column >= 0);
        CHECK(column < static_cast<int>(table.columns.size()));
      }
    }
  }
}

TEST_CASE("the tables have the numbers that the rules call them by", "[core][fold]") {
  CHECK(tables()[table_fact].name == "fact");
  CHECK(tables()[table_disagreement].name == "disagreement");
  CHECK(tables()[table_reading].name == "reading");
  CHECK(tables()[table_closure_look].name == "closure_look");
  CHECK(tables()[table_strike_part].name == "strike_part");
  CHECK(tables()[table_report].name == "report");
}

TEST_CASE("a row of reading keeps the whole record", "[core][fold]") {
  const std::vector<std::pair<int, cbor::Map>> written{
      {kind::grade, {{1, id(100)}, {2, 3}, {3, 2}, {5, 1}, {97, true}, {98, id(7)}, {99, true}}},
      {kind::coating,
       {{1, id(100)}, {2, id(95)}, {3, cbor::Array{841, 860}}, {4, 2}, {6, -45}, {7, 1}, {8, 3}}},
      {kind::torque,
       {{1, id(100)}, {2, id(96)}, {3, 1}, {4, 210}, {5, 2}, {6, 1}, {8, 300}, {10, 210}}},
      {kind::wall, {{1, id(100)}, {2, id(97)}, {3, cbor::Array{395}}, {4, 12}, {5, 5'920}}},
      {kind::hand_load, {{1, id(100)}, {2, 1}, {3, 500}, {4, 35}, {5, 2}}},
      {kind::geometry, {{1, id(100)}, {2, 1}, {3, 1'098}, {4, 1'100}, {5, id(99)}}},
      {kind::gate_check, {{1, id(100)}, {2, 1}, {3, 2}, {4, 1}}},
      {kind::grade, {{2, "of another type"}, {94, morning}, {300, cbor::Bytes{1, 2}}}}};
  for (const auto& [kind, body] : written) {
    INFO("kind " << kind);
    Fact fact;
    fact.placed.feed = id(1);
    fact.placed.device = id(901);
    fact.placed.seq = 7;
    fact.placed.stamp = Stamp{3, morning, 1};
    fact.placed.record = Record{kind, id(5), morning, 2, -137, 3, id(80), id(50), body};
    fact.shown = body;
    fact.key = merge_key(fact.placed);
    const PlacedRecord read = placed_of_reading(reading_row(fact));
    CHECK(read.record == fact.placed.record);
    CHECK(read.feed == fact.placed.feed);
    CHECK(read.device == fact.placed.device);
    CHECK(read.seq == fact.placed.seq);
    CHECK(read.stamp == fact.placed.stamp);
  }
}

TEST_CASE("records of a newer program mark what they are about", "[core][fold]") {
  Tablet tablet(1, id(80));
  tablet.says({kind::create, {}, {{1, 5}, {3, cbor::Map{}}}, morning, id(30)});
  tablet.says({499, id(30), {}, morning, {}});
  auto store = folded_both_ways(tablet.records());
  const int newer = at(entity_columns, "newer");
  CHECK(cell_at(store, table_entity, {id(30)}, newer) == Cell(std::int64_t{0}));
  tablet.says({500, id(30), {}, morning, {}});
  store = folded_both_ways(tablet.records());
  CHECK(cell_at(store, table_entity, {id(30)}, newer) == Cell(std::int64_t{1}));
}

TEST_CASE("stock is the last counting and what moved after it", "[core][fold]") {
  Tablet tablet(1, id(80));
  const Uuid depot = id(70);
  const Uuid type = id(60);
  const auto moved = [&](std::int64_t count, int why, std::int64_t at_ms) {
    tablet.says({kind::stock_moved, depot, {{1, type}, {2, count}, {3, why}}, at_ms, {}});
  };
  moved(10, 1, morning);
  moved(7, 5, morning + hour);
  moved(-2, 2, morning + 2 * hour);
  auto store = folded_both_ways(tablet.records());
  CHECK(cell_at(store, table_stock, {depot, type}, at(stock_columns, "count")) ==
        Cell(std::int64_t{5}));
}

TEST_CASE("what came after the seal is counted", "[core][fold]") {
  Tablet tablet(1, id(80));
  const Uuid visit = id(100);
  tablet.says({kind::visit_opened, id(10), {{1, 1}, {6, cbor::Array{4, 2}}}, morning, visit});
  tablet.says({kind::grade, id(50), {{1, visit}, {2, 1}}, morning, {}});
  tablet.says({kind::sealed, visit, {{1, 1}, {2, 2}}, morning + hour, {}});
  tablet.says({kind::grade, id(50), {{1, visit}, {2, 2}}, morning + 2 * hour, {}});
  auto store = folded_both_ways(tablet.records());
  const std::vector<Cell> part{visit, id(80), tablet.device()};
  CHECK(cell_at(store, table_visit_part, part, at(visit_part_columns, "after_seal")) ==
        Cell(std::int64_t{1}));
  CHECK(cell_at(store, table_visit_part, part, at(visit_part_columns, "aboard_site")) ==
        Cell(std::int64_t{4}));
}

}  // namespace kneerail::fold::test
