#include <catch2/catch.hpp>

#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

const Uuid run = id(20);
const Uuid post = id(30);
const Uuid bay = id(40);
const Uuid fitting = id(50);
const Uuid type = id(60);

constexpr std::int64_t down = 1;
constexpr std::int64_t opened_early = 2;
constexpr std::int64_t open = 3;

/// A run of one post and one bay, with one fitting of two screws, struck for the winter.
struct Struck {
  Tablet tablet{1, id(80)};
  std::int64_t now = clock_time(8, 0);
  Uuid strike;

  Struck() {
    const auto make = [this](const Uuid& what, int of, const Uuid& parent, cbor::Map fields) {
      tablet.says({kind::create, {}, {{1, of}, {2, parent}, {3, std::move(fields)}}, now, what});
    };
    make(run, 4, id(11), {});
    make(post, 5, run, {});
    make(bay, 6, run, {{1, post}, {2, id(31)}});
    make(type, 8, id(2), {{6, 300}, {7, 240}});
    make(fitting, 7, post, {{2, type}, {4, 2}});
    strike = says(kind::strike_opened, run, {{1, 1}, {4, cbor::Array{fitting}}});
    step(fitting, 1);
  }
  Uuid says(int kind, const Uuid& subject, cbor::Map body) {
    now += minute;
    return tablet.says({kind, subject, std::move(body), now, {}}).record.id;
  }
  Uuid step(const Uuid& subject, std::int64_t which, cbor::Map more = {}) {
    more.set(1, strike);
    more.set(2, which);
    return says(kind::strike_step, subject, std::move(more));
  }
  void sign(std::int64_t screw) { step(fitting, 3, {{3, 300}, {5, screw}, {7, 1}}); }
  void look() {
    says(kind::hand_load, bay, {{2, 1}});
    step(bay, 4);
  }
  Uuid open_run() { return says(kind::opened, strike, {{1, 1}}); }
  Cell cell(std::string_view column) {
    auto store = folded_both_ways(tablet.records());
    for (std::size_t i = 0; i < std::size(strike_columns); ++i) {
      if (strike_columns[i].name == column) {
        return cell_at(store, table_strike, {strike}, static_cast<int>(i));
      }
    }
    return {};
  }
  std::int64_t state() { return std::get<std::int64_t>(cell("state")); }
  std::int64_t missing() { return std::get<std::int64_t>(cell("missing_count")); }
};

}  // namespace

TEST_CASE("a run opens when all is back, signed and pushed, and a person opens it",
          "[core][fold]") {
  Struck struck;
  CHECK(struck.state() == down);
  CHECK(struck.missing() == 4);  // back, two screws, the bay
  struck.step(fitting, 2);
  struck.sign(1);
  struck.sign(2);
  CHECK(struck.missing() == 1);
  struck.look();
  CHECK(struck.missing() == 0);
  CHECK(struck.state() == down);  // no run opens by its last tick
  struck.open_run();
  CHECK(struck.state() == open);
}

TEST_CASE("a run opened before all is there shows as opened early", "[core][fold]") {
  Struck struck;
  struck.step(fitting, 2);
  struck.sign(1);
  struck.open_run();
  CHECK(struck.state() == opened_early);
  struck.sign(2);
  struck.look();
  CHECK(struck.missing() == 0);
  CHECK(struck.state() == opened_early);  // done after it: needs a new opening
  struck.open_run();
  CHECK(struck.state() == open);
}

TEST_CASE("steps done before the opening that come home later make it effective", "[core][fold]") {
  Struck struck;
  Tablet other(2, id(81));
  struck.step(fitting, 2);
  struck.sign(1);
  other.says({kind::strike_step,
              fitting,
              {{1, struck.strike}, {2, 3}, {3, 300}, {5, 2}, {7, 1}},
              struck.now + 1,
              {}});
  struck.look();
  struck.open_run();
  CHECK(struck.state() == opened_early);
  auto store = folded_both_ways(together({struck.tablet.records(), other.records()}));
  CHECK(cell_at(store, table_strike, {struck.strike}, at(strike_columns, "state")) == Cell(open));
}

TEST_CASE("a look before the last screw, or without a push, does not count", "[core][fold]") {
  Struck struck;
  struck.step(fitting, 2);
  struck.sign(1);
  struck.look();
  struck.sign(2);
  CHECK(struck.missing() == 1);
  SECTION("looked only") {
    for (int i = 0; i < 5; ++i) struck.says(kind::grade, fitting, {{2, 1}});
    struck.step(bay, 4);
    CHECK(struck.missing() == 1);
  }
  SECTION("pushed, and it gives") {
    for (int i = 0; i < 5; ++i) struck.says(kind::grade, fitting, {{2, 1}});
    struck.says(kind::hand_load, bay, {{2, 2}});
    struck.step(bay, 4);
    CHECK(struck.missing() == 1);
  }
  SECTION("pushed firm") {
    struck.look();
    CHECK(struck.missing() == 0);
  }
}

TEST_CASE("a screw that will not tighten, or is under the type's lowest, is not signed",
          "[core][fold]") {
  Struck struck;
  struck.step(fitting, 2);
  struck.sign(2);
  SECTION("will not tighten") {
    struck.step(fitting, 3, {{5, 1}, {7, 4}});
  }
  SECTION("another value, too low") {
    struck.step(fitting, 3, {{3, 239}, {5, 1}, {7, 3}});
  }
  CHECK(struck.missing() == 2);  // the screw, and the bay whose look waits for it
  struck.step(fitting, 3, {{3, 240}, {5, 1}, {7, 3}});
  struck.look();
  CHECK(struck.missing() == 0);
}

TEST_CASE("opening a strike opens its closures; opening early opens none", "[core][fold]") {
  Struck struck;
  const Uuid closure =
      struck.says(kind::closed, bay, {{1, 7}, {2, struck.now}, {4, 1}, {6, struck.strike}});
  const auto standing = [&] {
    auto store = folded_both_ways(struck.tablet.records());
    return cell_at(store, table_closure, {closure}, at(closure_columns, "standing"));
  };
  struck.open_run();
  CHECK(standing() == Cell(std::int64_t{1}));
  struck.step(fitting, 2);
  struck.sign(1);
  struck.sign(2);
  struck.look();
  struck.open_run();
  CHECK(standing() == Cell(std::int64_t{0}));
}

TEST_CASE("a bay that is down with nothing that closes it is shown", "[core][fold]") {
  Struck struck;
  const Cell shown(cbor::encode(cbor::Value(cbor::Array{bay})));
  const Cell none(cbor::encode(cbor::Value(cbor::Array{})));
  CHECK(struck.cell("open_bays") == shown);
  SECTION("a sign closes nothing") {
    struck.says(kind::closed, bay, {{1, 7}, {2, struck.now}, {4, 5}, {6, struck.strike}});
    CHECK(struck.cell("open_bays") == shown);
  }
  SECTION("boards do, until they are seen gone") {
    const Uuid closure =
        struck.says(kind::closed, bay, {{1, 7}, {2, struck.now}, {4, 1}, {6, struck.strike}});
    CHECK(struck.cell("open_bays") == none);
    struck.says(kind::closure_look, closure, {{1, code_of(HowItStands::gone)}});
    CHECK(struck.cell("open_bays") == shown);
  }
}

TEST_CASE("a part that came back unknown starts a doubtful life", "[core][fold]") {
  Struck struck;
  const Uuid back = struck.step(fitting, 2, {{8, 1}});
  auto store = folded_both_ways(struck.tablet.records());
  CHECK(cell_at(store, table_life, {fitting, back}, at(life_columns, "doubtful")) ==
        Cell(std::int64_t{1}));
  CHECK(cell_at(store, table_life, {fitting, fitting}, at(life_columns, "ended_t")) ==
        Cell(struck.now));
}

}  // namespace kneerail::fold::test
