#include <catch2/catch.hpp>

#include "tests/core/fold/records_at_hand.h"

// Six mornings at one site: all tablets met the hub at 07:30, then were offline until the evening.

namespace kneerail::fold::test {

namespace {

const Uuid anna = id(80);
const Uuid ben = id(81);
const Uuid site = id(10);
const Uuid run = id(20);
const Uuid post = id(30);
const Uuid other_post = id(31);
const Uuid fitting = id(50);

/// The register as both tablets knew it in the morning, written by a third and stamped.
std::vector<PlacedRecord> known_since_morning(Hub& hub) {
  Tablet office(9, id(82));
  const std::int64_t before = clock_time(6, 0);
  office.says({kind::create, {}, {{1, 2}, {3, cbor::Map{{1, "North Mole"}}}}, before, site});
  office.says(
      {kind::create, {}, {{1, 4}, {2, site}, {3, cbor::Map{{1, "Slip East"}}}}, before, run});
  office.says({kind::create, {}, {{1, 5}, {2, run}, {3, cbor::Map{{1, "118"}}}}, before, post});
  office.says(
      {kind::create, {}, {{1, 5}, {2, run}, {3, cbor::Map{{1, "119"}}}}, before, other_post});
  office.says({kind::create, {}, {{1, 7}, {2, post}, {3, cbor::Map{{1, 5}}}}, before, fitting});
  hub.take(office, clock_time(7, 0));
  return office.records();
}

cbor::Map rename(const std::string& name, std::vector<Uuid> seen) {
  const cbor::Array bases(seen.begin(), seen.end());
  return {{1, cbor::Array{cbor::Array{1, name, bases}}}};
}

Cell run_name(MemoryTableStore& store) {
  return cell_at(store, table_entity, {run}, at(entity_columns, "name"));
}

std::optional<Row> disagreement_of(MemoryTableStore& store, const Uuid& subject, int what,
                                   std::int64_t detail = 0) {
  return store.row(table_disagreement, std::vector<Cell>{subject, std::int64_t{what}, detail});
}

Cell records_cell(std::vector<Uuid> ids) {
  std::sort(ids.begin(), ids.end());
  return cbor::encode(cbor::Value(cbor::Array(ids.begin(), ids.end())));
}

}  // namespace

TEST_CASE("two names of one run are both kept, and who saw both ends it", "[core][fold]") {
  Hub hub;
  const auto known = known_since_morning(hub);
  Tablet a(1, anna);
  Tablet b(2, ben);
  // A's clock jumped 26 h ahead at 08:00.
  const Uuid from_a =
      a.says({kind::set, run, rename("Ferry Slip North", {run}), clock_time(9, 0) + 26 * hour, {}})
          .record.id;
  const Uuid from_b =
      b.says({kind::set, run, rename("Slip, upper", {run}), clock_time(15, 0), {}}).record.id;
  hub.take(b, clock_time(17, 0));
  hub.take(a, clock_time(17, 5));
  auto store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(run_name(store) == Cell(std::string("Ferry Slip North")));
  const auto both = disagreement_of(store, run, disagreement::field, 1);
  REQUIRE(both);
  CHECK((*both)[at(disagreement_columns, "winner")] == Cell(from_a));
  CHECK((*both)[at(disagreement_columns, "records")] == records_cell({from_a, from_b}));

  // B pulls, sees both, and names both; its clock is the hub's, a day behind A's.
  b.says({kind::set, run, rename("Slip, upper", {from_a, from_b}), clock_time(17, 5) + 1, {}});
  store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(run_name(store) == Cell(std::string("Slip, upper")));
  CHECK_FALSE(disagreement_of(store, run, disagreement::field, 1));
}

TEST_CASE("with the clock known at 07:30 the later of two names wins at once", "[core][fold]") {
  Hub hub;
  const auto known = known_since_morning(hub);
  Tablet a(1, anna);
  Tablet b(2, ben);
  a.says({kind::set, run, rename("Ferry Slip North", {run}), clock_time(9, 0), {}});
  b.says({kind::set, run, rename("Slip, upper", {run}), clock_time(15, 0), {}});
  hub.take(b, clock_time(17, 0));
  hub.take(a, clock_time(17, 5));
  auto store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(run_name(store) == Cell(std::string("Slip, upper")));
  CHECK(disagreement_of(store, run, disagreement::field, 1));
}

TEST_CASE("a reading of a post that another retired is in its history and asked about",
          "[core][fold]") {
  Hub hub;
  const auto known = known_since_morning(hub);
  Tablet a(1, anna);
  Tablet b(2, ben);
  const Uuid retired = a.says({kind::set,
                               post,
                               {{1, cbor::Array{cbor::Array{8, 2, cbor::Array{post}}}}},
                               clock_time(10, 0),
                               {}})
                           .record.id;
  const Uuid reading = b.says({kind::coating,
                               fitting,
                               {{1, id(100)}, {2, id(95)}, {3, cbor::Array{841, 860}}, {4, 1}},
                               clock_time(11, 20),
                               {}})
                           .record.id;
  const Uuid before =
      b.says(
           {kind::torque, fitting, {{1, id(100)}, {3, 1}, {4, 240}, {5, 0}}, clock_time(9, 30), {}})
          .record.id;
  auto store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(cell_at(store, table_entity, {post}, at(entity_columns, "life_state")) ==
        Cell(std::int64_t{2}));
  CHECK(store.row(table_reading, std::vector<Cell>{reading}));
  CHECK(cell_at(store, table_retirement, {fitting}, at(retirement_columns, "retired")) ==
        Cell(post));
  const auto asked = disagreement_of(store, fitting, disagreement::seen_after_retired);
  REQUIRE(asked);
  CHECK((*asked)[at(disagreement_columns, "records")] == records_cell({retired, reading}));
  INFO("the reading of 09:30 was before it: " << to_text(before));

  SECTION("back in service") {
    a.says({kind::set,
            post,
            {{1, cbor::Array{cbor::Array{8, 1, cbor::Array{retired}}}}},
            clock_time(18, 0),
            {}});
    store = folded_both_ways(together({known, a.records(), b.records()}));
    CHECK_FALSE(disagreement_of(store, fitting, disagreement::seen_after_retired));
  }
  SECTION("kept retired") {
    const Uuid settled = a.says({kind::settled,
                                 fitting,
                                 {{1, cbor::Array{retired, reading}}, {2, retired}},
                                 clock_time(18, 0),
                                 {}})
                             .record.id;
    store = folded_both_ways(together({known, a.records(), b.records()}));
    const auto done = disagreement_of(store, fitting, disagreement::seen_after_retired);
    REQUIRE(done);
    CHECK((*done)[at(disagreement_columns, "settled_by")] == Cell(settled));
  }
}

TEST_CASE("two replacements of one life are one until a person says twice", "[core][fold]") {
  Hub hub;
  const auto known = known_since_morning(hub);
  Tablet a(1, anna);
  Tablet b(2, ben);
  const cbor::Map replace{{2, 3}, {3, fitting}};
  const Uuid ra = a.says({kind::work, fitting, replace, clock_time(10, 0), {}}).record.id;
  const Uuid rb = b.says({kind::work, fitting, replace, clock_time(10, 30), {}}).record.id;
  const auto life = [](MemoryTableStore& store, const Uuid& which, int column) {
    return cell_at(store, table_life, {fitting, which}, column);
  };
  auto store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(life(store, ra, at(life_columns, "same_as")) == Cell(rb));
  for (const Uuid& one : {ra, rb}) {
    CHECK(life(store, one, at(life_columns, "started_t")) == Cell(clock_time(10, 0)));
    CHECK(life(store, one, at(life_columns, "doubtful")) == Cell(std::int64_t{1}));
  }
  CHECK(life(store, fitting, at(life_columns, "ended_t")) == Cell(clock_time(10, 0)));
  CHECK(disagreement_of(store, fitting, disagreement::replaced_twice));

  SECTION("same work") {
    a.says({kind::same_work, ra, {{1, rb}}, clock_time(18, 0), {}});
    store = folded_both_ways(together({known, a.records(), b.records()}));
    CHECK(life(store, ra, at(life_columns, "same_as")) == Cell(rb));
    CHECK(life(store, rb, at(life_columns, "doubtful")) == Cell(std::int64_t{0}));
    CHECK_FALSE(disagreement_of(store, fitting, disagreement::replaced_twice));
  }
  SECTION("no, twice") {
    a.says({kind::settled, fitting, {{1, cbor::Array{ra, rb}}, {2, 1}}, clock_time(18, 0), {}});
    store = folded_both_ways(together({known, a.records(), b.records()}));
    CHECK(life(store, ra, at(life_columns, "same_as")) == Cell());
    CHECK(life(store, ra, at(life_columns, "ended_t")) == Cell(clock_time(10, 30)));
    CHECK(life(store, rb, at(life_columns, "life_before")) == Cell(ra));
    CHECK(life(store, rb, at(life_columns, "doubtful")) == Cell(std::int64_t{0}));
  }
}

TEST_CASE("one tag on two posts is kept on both until one gets another", "[core][fold]") {
  Hub hub;
  const auto known = known_since_morning(hub);
  Tablet a(1, anna);
  Tablet b(2, ben);
  const auto tag = [](const std::string& code, const Uuid& seen) {
    return cbor::Map{{1, cbor::Array{cbor::Array{4, code, cbor::Array{seen}}}}};
  };
  const Uuid on_post = a.says({kind::set, post, tag("K7F3", post), clock_time(9, 0), {}}).record.id;
  const Uuid on_other =
      b.says({kind::set, other_post, tag("K7F3", other_post), clock_time(9, 5), {}}).record.id;
  auto store = folded_both_ways(together({known, a.records(), b.records()}));
  for (const Uuid& one : {post, other_post}) {
    CHECK(cell_at(store, table_entity, {one}, at(entity_columns, "tag")) ==
          Cell(std::string("K7F3")));
    const auto two = disagreement_of(store, one, disagreement::one_tag);
    REQUIRE(two);
    CHECK((*two)[at(disagreement_columns, "records")] == records_cell({on_post, on_other}));
  }
  b.says({kind::set, other_post, tag("M2P9", on_other), clock_time(18, 0), {}});
  store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK_FALSE(disagreement_of(store, post, disagreement::one_tag));
  CHECK_FALSE(disagreement_of(store, other_post, disagreement::one_tag));
}

TEST_CASE("two tablets' visits become one, and come apart again", "[core][fold]") {
  Hub hub;
  const auto known = known_since_morning(hub);
  Tablet a(1, anna);
  Tablet b(2, ben);
  const Uuid v1 = id(100);
  const Uuid v2 = id(101);
  a.says({kind::visit_opened, site, {{1, 1}, {7, "1.0"}}, clock_time(8, 0), v1});
  b.says({kind::visit_opened, site, {{1, 1}, {7, "1.0"}}, clock_time(8, 5), v2});
  a.says({kind::grade, fitting, {{1, v1}, {2, 2}}, clock_time(9, 0), {}});
  b.says({kind::grade, fitting, {{1, v2}, {2, 1}}, clock_time(10, 0), {}});
  a.says({kind::sealed, v1, {{1, 1}, {2, 2}}, clock_time(16, 0), {}});
  b.says({kind::sealed, v2, {{1, 1}, {2, 2}}, clock_time(16, 0), {}});
  auto store = folded_both_ways(together({known, a.records(), b.records()}));
  // Two visits: the later one's grade counts, and nobody disagrees.
  const std::vector<Cell> place{fitting, std::int64_t{kind::grade}, std::int64_t{0}};
  CHECK(cell_at(store, table_latest, place, at(latest_columns, "t")) == Cell(clock_time(10, 0)));
  CHECK_FALSE(disagreement_of(store, fitting, disagreement::two_grades));

  const Uuid same = a.says({kind::same_visit, v1, {{1, v2}}, clock_time(18, 0), {}}).record.id;
  store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(cell_at(store, table_visit, {v2}, at(visit_columns, "merged_into")) == Cell(v1));
  CHECK(cell_at(store, table_visit, {v1}, at(visit_columns, "complete")) == Cell(std::int64_t{1}));
  CHECK(store.all(table_visit_part).size() == 2);
  CHECK(cell_at(store, table_latest, place, at(latest_columns, "t")) == Cell(clock_time(9, 0)));
  CHECK(disagreement_of(store, fitting, disagreement::two_grades));

  a.says({kind::voided, same, {{1, "two visits"}}, clock_time(18, 5), {}});
  store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(cell_at(store, table_visit, {v2}, at(visit_columns, "merged_into")) == Cell());
  CHECK(cell_at(store, table_latest, place, at(latest_columns, "t")) == Cell(clock_time(10, 0)));
}

TEST_CASE("a sound grade by another does not hide a hazard", "[core][fold]") {
  Hub hub;
  const auto known = known_since_morning(hub);
  Tablet a(1, anna);
  Tablet b(2, ben);
  const Uuid visit = id(100);
  const Uuid hazard = a.says({kind::finding,
                              fitting,
                              {{1, visit}, {2, 1}, {3, 5}, {4, true}, {7, 1}},
                              clock_time(10, 0),
                              {}})
                          .record.id;
  const Uuid five =
      a.says({kind::grade, fitting, {{1, visit}, {2, 5}}, clock_time(10, 0), {}}).record.id;
  const Uuid one =
      b.says({kind::grade, fitting, {{1, visit}, {2, 1}}, clock_time(10, 40), {}}).record.id;
  const std::vector<Cell> place{fitting, std::int64_t{kind::grade}, std::int64_t{0}};
  const auto state = [&hazard](MemoryTableStore& store) {
    return cell_at(store, table_finding, {hazard}, at(finding_columns, "hazard_state"));
  };
  auto store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(state(store) == Cell(hazard_state::open));
  CHECK(cell_at(store, table_latest, place, at(latest_columns, "reading")) == Cell(five));
  const auto two = disagreement_of(store, fitting, disagreement::two_grades);
  REQUIRE(two);
  CHECK((*two)[at(disagreement_columns, "records")] == records_cell({five, one}));

  b.says({kind::settled, fitting, {{1, cbor::Array{five, one}}, {2, one}}, clock_time(18, 0), {}});
  store = folded_both_ways(together({known, a.records(), b.records()}));
  CHECK(cell_at(store, table_latest, place, at(latest_columns, "reading")) == Cell(one));
  CHECK(state(store) == Cell(hazard_state::open));
}

TEST_CASE("a record that came under two chains counts once", "[core][fold]") {
  Tablet a(1, anna);
  Tablet successor(3, anna);
  const cbor::Map body{{1, id(100)}, {2, id(95)}, {3, cbor::Array{841}}, {4, 1}};
  const Uuid reading = id(555);
  a.says({kind::coating, fitting, body, clock_time(9, 0), reading});
  successor.says({kind::coating, fitting, body, clock_time(9, 0), reading});
  Hub hub;
  hub.take(successor, clock_time(17, 0));
  for (const auto& order : {together({a.records(), successor.records()}),
                            together({successor.records(), a.records()})}) {
    auto store = folded_both_ways(order);
    CHECK(store.all(table_reading).size() == 1);
    CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "dev")) ==
          Cell(successor.device()));
  }
}

TEST_CASE("a corrected reading shows the correction and keeps what was written", "[core][fold]") {
  Tablet a(1, anna);
  const cbor::Map body{{1, id(100)}, {2, id(95)}, {3, cbor::Array{841, 860}}, {4, 1}, {5, "x"}};
  const Uuid reading = a.says({kind::coating, fitting, body, clock_time(9, 0), {}}).record.id;
  const Uuid correction =
      a.says({kind::correction,
              reading,
              {{1, cbor::Map{{3, cbor::Array{84, 86}}}}, {2, "typed as um"}, {3, cbor::Array{}}},
              clock_time(10, 0),
              {}})
          .record.id;
  auto store = folded_both_ways(a.records());
  CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "v1")) ==
        Cell(std::int64_t{170}));
  CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "corrected_by")) ==
        Cell(correction));
  CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "original")) ==
        Cell(cbor::encode(cbor::Value(body))));
  a.says({kind::voided, correction, {{1, "it was right"}}, clock_time(11, 0), {}});
  store = folded_both_ways(a.records());
  CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "v1")) ==
        Cell(std::int64_t{1701}));
  CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "original")) == Cell());
}

}  // namespace kneerail::fold::test
