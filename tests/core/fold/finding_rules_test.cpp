#include <catch2/catch.hpp>

#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

const Uuid anna = id(80);
const Uuid run = id(20);
const Uuid bay = id(40);
const Uuid rail = id(50);

/// One hazard on a rail of a bay, and what is written about it afterwards.
struct Hazard {
  Tablet tablet{1, anna};
  std::int64_t now = clock_time(9, 0);
  Uuid finding;

  Hazard() {
    tablet.says({kind::create, {}, {{1, 4}, {3, cbor::Map{}}}, now, run});
    tablet.says({kind::create, {}, {{1, 6}, {2, run}, {3, cbor::Map{}}}, now, bay});
    tablet.says({kind::create, {}, {{1, 7}, {2, bay}, {3, cbor::Map{}}}, now, rail});
    finding = says(kind::finding, rail, {{2, 1}, {3, 5}, {4, true}, {7, 1}});
  }
  Uuid says(int kind, const Uuid& subject, cbor::Map body) {
    now += minute;
    return tablet.says({kind, subject, std::move(body), now, {}}).record.id;
  }
  Uuid made_safe(std::initializer_list<std::int64_t> measures) {
    return says(kind::made_safe, finding, {{1, cbor::Array(measures.begin(), measures.end())}});
  }
  Uuid looked(std::int64_t how) { return says(kind::closure_look, finding, {{1, how}}); }
  std::int64_t state() {
    auto store = folded_both_ways(tablet.records());
    return std::get<std::int64_t>(
        cell_at(store, table_finding, {finding}, at(finding_columns, "hazard_state")));
  }
};

}  // namespace

TEST_CASE("tape, a call and a closure below hold nobody", "[core][fold]") {
  Hazard hazard;
  hazard.made_safe({code_of(Measure::taped)});
  CHECK(hazard.state() == hazard_state::open);
  hazard.made_safe({code_of(Measure::reported), code_of(Measure::closed_below)});
  CHECK(hazard.state() == hazard_state::open);
}

TEST_CASE("closed off, propped or guarded makes a hazard safe", "[core][fold]") {
  const auto one =
      GENERATE(code_of(Measure::closed_off), code_of(Measure::propped), code_of(Measure::guarded));
  Hazard hazard;
  hazard.made_safe({code_of(Measure::taped), one});
  CHECK(hazard.state() == hazard_state::made_safe);
}

TEST_CASE("struck makes safe only beside what holds people back", "[core][fold]") {
  Hazard hazard;
  hazard.made_safe({code_of(Measure::struck)});
  CHECK(hazard.state() == hazard_state::open);
  SECTION("propping something else is a measure of its own") {
    hazard.made_safe({code_of(Measure::guarded)});
    CHECK(hazard.state() == hazard_state::made_safe);
  }
  SECTION("while a closure of the bay stands") {
    const Uuid closure = hazard.says(kind::closed, bay, {{1, 4}, {2, hazard.now}, {4, 1}});
    CHECK(hazard.state() == hazard_state::made_safe);
    SECTION("until it is opened") {
      hazard.says(kind::opened, closure, {{1, 1}});
      CHECK(hazard.state() == hazard_state::open);
    }
    SECTION("or seen gone") {
      hazard.says(kind::closure_look, closure, {{1, code_of(HowItStands::gone)}});
      CHECK(hazard.state() == hazard_state::open);
    }
    SECTION("a void of the closure opens nothing") {
      hazard.says(kind::voided, closure, {{1, "wrong bay"}});
      CHECK(hazard.state() == hazard_state::made_safe);
    }
  }
  SECTION("a closure of the whole run holds at the bay too") {
    hazard.says(kind::closed, run, {{1, 4}, {2, hazard.now}, {4, 3}});
    CHECK(hazard.state() == hazard_state::made_safe);
  }
  SECTION("a sign holds nobody") {
    hazard.says(kind::closed, bay, {{1, 4}, {2, hazard.now}, {4, 5}});
    CHECK(hazard.state() == hazard_state::open);
  }
}

TEST_CASE("a closure seen gone no longer makes safe", "[core][fold]") {
  Hazard hazard;
  hazard.made_safe({code_of(Measure::closed_off)});
  hazard.looked(code_of(HowItStands::not_seen));
  CHECK(hazard.state() == hazard_state::made_safe);
  hazard.looked(code_of(HowItStands::gone));
  CHECK(hazard.state() == hazard_state::open);
  SECTION("put back") {
    hazard.looked(code_of(HowItStands::put_back));
    CHECK(hazard.state() == hazard_state::made_safe);
  }
  SECTION("closed off anew") {
    hazard.made_safe({code_of(Measure::closed_off)});
    CHECK(hazard.state() == hazard_state::made_safe);
  }
  SECTION("taped only: what is gone does not count again") {
    hazard.made_safe({code_of(Measure::taped)});
    CHECK(hazard.state() == hazard_state::open);
  }
}

TEST_CASE("a void make-safe does not count", "[core][fold]") {
  Hazard hazard;
  const Uuid safe = hazard.made_safe({code_of(Measure::closed_off)});
  hazard.says(kind::voided, safe, {{1, "other finding"}});
  CHECK(hazard.state() == hazard_state::open);
}

TEST_CASE("only an ending that names the hazard ends it", "[core][fold]") {
  Hazard hazard;
  SECTION("one that names none") {
    hazard.says(kind::finding_ended, hazard.finding, {{1, 1}, {4, cbor::Array{}}});
    CHECK(hazard.state() == hazard_state::open);
  }
  SECTION("a void of the finding") {
    hazard.says(kind::voided, hazard.finding, {{1, "other part"}});
    CHECK(hazard.state() == hazard_state::open);
  }
  SECTION("a correction of the flag") {
    hazard.says(kind::correction, hazard.finding, {{1, cbor::Map{{4, false}}}, {2, "no"}});
    CHECK(hazard.state() == hazard_state::open);
  }
  SECTION("retiring the part") {
    hazard.says(kind::set, rail, {{1, cbor::Array{cbor::Array{8, 2, cbor::Array{rail}}}}});
    CHECK(hazard.state() == hazard_state::open);
  }
  SECTION("one that names it") {
    const Uuid end = hazard.says(kind::finding_ended, hazard.finding,
                                 {{1, 1}, {4, cbor::Array{hazard.finding}}, {5, 1}});
    CHECK(hazard.state() == hazard_state::ended);
    SECTION("unless it is void") {
      hazard.says(kind::voided, end, {{1, "not repaired"}});
      CHECK(hazard.state() == hazard_state::open);
    }
    SECTION("or a hazard is raised again") {
      hazard.says(kind::hazard_raised, hazard.finding, {});
      CHECK(hazard.state() == hazard_state::open);
    }
    SECTION("a correction of what it names changes nothing") {
      hazard.says(kind::correction, end, {{1, cbor::Map{{4, cbor::Array{}}}}, {2, "no"}});
      CHECK(hazard.state() == hazard_state::ended);
    }
  }
}

TEST_CASE("what made the last hazard safe does not make the next one safe", "[core][fold]") {
  Hazard hazard;
  hazard.made_safe({code_of(Measure::closed_off)});
  hazard.says(kind::finding_ended, hazard.finding,
              {{1, 1}, {4, cbor::Array{hazard.finding}}, {5, 1}});
  hazard.says(kind::hazard_raised, hazard.finding, {});
  CHECK(hazard.state() == hazard_state::open);
  hazard.made_safe({code_of(Measure::guarded)});
  CHECK(hazard.state() == hazard_state::made_safe);
}

TEST_CASE("an ending held for review ends nothing until it is released", "[core][fold]") {
  Hazard hazard;
  const Uuid end = hazard.says(kind::finding_ended, hazard.finding,
                               {{1, 1}, {4, cbor::Array{hazard.finding}}, {5, 1}});
  hazard.tablet.records().back().stamp = Stamp{1, hazard.now, 1};
  CHECK(hazard.state() == hazard_state::open);
  hazard.says(kind::settled, end, {{1, cbor::Array{end}}, {2, 3}});
  CHECK(hazard.state() == hazard_state::ended);
}

TEST_CASE("a told stays open until it is answered", "[core][fold]") {
  Hazard hazard;
  const Uuid told = hazard.says(kind::told, bay, {{1, hazard.now}, {2, 1}, {3, "it moves"}});
  const auto open = [&] {
    auto store = folded_both_ways(hazard.tablet.records());
    return cell_at(store, table_told, {told}, at(told_columns, "open"));
  };
  hazard.says(kind::voided, told, {{1, "twice"}});
  CHECK(open() == Cell(std::int64_t{1}));
  hazard.says(kind::told_answered, told, {{1, 2}});
  CHECK(open() == Cell(std::int64_t{0}));
}

}  // namespace kneerail::fold::test
