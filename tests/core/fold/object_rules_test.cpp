// Erasing an object and keeping it, as the rules say it.

#include <catch2/catch.hpp>

#include "core/fold/objects.h"
#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

const cbor::Bytes picture(32, 7);
const cbor::Bytes preview(32, 8);
constexpr std::int64_t day = 24 * hour;
const Uuid site = id(10);

/// A site with one photograph, and whoever erases and holds.
struct Pictured {
  Tablet inspector{1, id(80)};
  Tablet lead{2, id(81)};
  Hub hub;

  Pictured() {
    inspector.feed = lead.feed = site;
    inspector.says({kind::photograph,
                    id(40),
                    {{2, picture}, {3, 3'000'000}, {7, preview}, {8, 30'000}},
                    morning,
                    id(500)});
    hub.take(inspector, morning);
  }
  PlacedRecord& erase(std::int64_t at) {
    return lead.says({kind::object_erased, site, {{1, picture}, {2, 1}}, at, id(600 + number_++)});
  }
  PlacedRecord& hold(std::int64_t at) {
    return lead.says({kind::hold, site, {{1, 1}}, at, id(700)});
  }
  PlacedRecord& end_hold(std::int64_t at) {
    return lead.says({kind::hold_ended, id(700), {{1, "claim settled"}}, at, id(701)});
  }
  void stamp(std::int64_t at) { hub.take(lead, at); }
  Cell state(std::string_view column) {
    const Table& table = tables()[table_object_state];
    MemoryTableStore store = folded_both_ways(together({inspector.records(), lead.records()}));
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      if (table.columns[i].name == column)
        return cell_at(store, table_object_state, {picture}, static_cast<int>(i));
    }
    FAIL("no such column");
    return {};
  }

 private:
  std::uint64_t number_ = 0;
};

}  // namespace

TEST_CASE("a photograph names its picture and its preview", "[core][fold]") {
  Pictured shown;
  MemoryTableStore store = folded_both_ways(shown.inspector.records());
  CHECK(store.rows_of_key(table_object_use, std::vector<Cell>{picture}).size() == 1);
  CHECK(cell_at(store, table_object_state, {preview}, at(object_state_columns, "size_bytes")) ==
        Cell(std::int64_t{30'000}));
  CHECK(shown.state("size_bytes") == Cell(std::int64_t{3'000'000}));
  CHECK(shown.state("kind") == Cell(std::int64_t{kind::photograph}));
  CHECK(shown.state("erased_by") == Cell());
}

TEST_CASE("an erasure counts from its stamp, and its bytes go 14 days later", "[core][fold]") {
  Pictured shown;
  shown.erase(morning + day);
  CHECK(shown.state("erased_by") == Cell());
  shown.stamp(morning + 2 * day);
  CHECK(shown.state("erased_by") == Cell(id(600)));
  const auto received = shown.lead.records().back().stamp->recv;
  CHECK(shown.state("erase_on_ms") == Cell(received + 14 * day));
  CHECK(shown.state("kept_by") == Cell());
}

TEST_CASE("an erasure held for review does nothing; a void of one neither", "[core][fold]") {
  Pictured shown;
  shown.erase(morning);
  shown.stamp(morning + day);
  shown.lead.says({kind::voided, id(600), {{1, "not that one"}}, morning + day, {}});
  CHECK(shown.state("erased_by") == Cell(id(600)));
  shown.lead.records().front().stamp->flags = 1;
  CHECK(shown.state("erased_by") == Cell());
}

TEST_CASE("a hold that stands when the wait is over keeps the object", "[core][fold]") {
  Pictured shown;
  shown.erase(morning);
  shown.stamp(morning);
  shown.hold(morning + 13 * day);  // still on a tablet: it stands
  CHECK(shown.state("kept_by") == Cell(id(700)));
  shown.stamp(morning + 13 * day);
  CHECK(shown.state("kept_by") == Cell(id(700)));
  CHECK(shown.state("erased_by") == Cell(id(600)));

  SECTION("its end on the day after changes nothing for that erasure; a new one is needed") {
    shown.end_hold(morning + 15 * day);
    shown.stamp(morning + 15 * day);
    CHECK(shown.state("kept_by") == Cell(id(700)));
    shown.erase(morning + 16 * day);
    shown.stamp(morning + 16 * day);
    CHECK(shown.state("kept_by") == Cell());
    CHECK(shown.state("erased_by") == Cell(id(601)));
  }
  SECTION("void, it still stands") {
    shown.lead.says({kind::voided, id(700), {{1, "by mistake"}}, morning + 13 * day, {}});
    shown.stamp(morning + 13 * day);
    CHECK(shown.state("kept_by") == Cell(id(700)));
  }
  SECTION("ended before the wait is over, it keeps nothing") {
    shown.end_hold(morning + 13 * day);
    CHECK(shown.state("kept_by") == Cell(id(700)));  // the end is not at the hub yet
    shown.stamp(morning + 13 * day + hour);
    CHECK(shown.state("kept_by") == Cell());
  }
}

TEST_CASE("a hold that comes after the bytes went keeps nothing", "[core][fold]") {
  Pictured shown;
  shown.erase(morning);
  shown.stamp(morning);
  shown.hold(morning + 13 * day);
  shown.stamp(morning + 15 * day);
  CHECK(shown.state("kept_by") == Cell());
}

TEST_CASE("a hold of another site keeps nothing", "[core][fold]") {
  Pictured shown;
  shown.erase(morning);
  shown.stamp(morning);
  shown.hold(morning).feed = id(11);
  CHECK(shown.state("kept_by") == Cell());
}

TEST_CASE("a hold keeps the particulars of those who have written at its site", "[core][fold]") {
  Pictured shown;
  const cbor::Bytes particulars(32, 9);
  Tablet office(3, id(82));
  office.feed = id(2);
  office.says({kind::create, {}, {{1, 10}, {3, cbor::Map{{1, particulars}}}}, morning, id(80)});
  office.says({kind::object_erased, id(2), {{1, particulars}, {2, 1}}, morning, id(610)});
  shown.hub.take(office, morning);
  shown.hold(morning + day);
  const auto kept_by = [&](const std::vector<PlacedRecord>& records) {
    MemoryTableStore store = folded_both_ways(records);
    return cell_at(store, table_object_state, {particulars}, at(object_state_columns, "kept_by"));
  };
  CHECK(kept_by(together({office.records(), shown.lead.records()})) == Cell());
  CHECK(kept_by(together({office.records(), shown.lead.records(), shown.inspector.records()})) ==
        Cell(id(700)));
}

}  // namespace kneerail::fold::test
