#include <catch2/catch.hpp>

#include "core/fold/row_layout.h"
#include "tests/core/fold/records_at_hand.h"

// What a visit has of a post: a post with a fitting and a base, a bay after it with one rail, and
// the next post with nothing on it.

namespace kneerail::fold::test {

namespace {

const Uuid run = id(20);
const Uuid post = id(30);
const Uuid next_post = id(31);
const Uuid bay = id(40);
const Uuid fitting = id(50);
const Uuid base = id(51);
const Uuid rail = id(52);
const Uuid first_visit = id(100);
const Uuid second_visit = id(101);

class Walk {
 public:
  Walk() {
    thing(run, 4, id(10));
    thing(post, 5, run);
    thing(next_post, 5, run);
    thing(bay, 6, run, {{1, post}, {2, next_post}, {3, 1}});
    thing(fitting, 7, post, {{1, 5}});
    thing(base, 7, post, {{1, 7}});
    thing(rail, 7, bay, {{1, 3}});
    tablet_.says({kind::visit_opened, id(10), {{1, 1}}, later(), first_visit});
  }

  void thing(const Uuid& one, int type, const Uuid& parent, cbor::Map fields = {}) {
    tablet_.says({kind::create, {}, {{1, type}, {2, parent}, {3, fields}}, later(), one});
  }
  Uuid says(int kind, const Uuid& subject, cbor::Map body) {
    return tablet_.says({kind, subject, std::move(body), later(), {}}).record.id;
  }
  Uuid grade(const Uuid& part, cbor::Map more = {}, const Uuid& visit = first_visit) {
    more.set(1, visit);
    more.set(2, 2);
    return says(kind::grade, part, std::move(more));
  }
  Uuid load(std::int64_t felt, const Uuid& visit = first_visit) {
    return says(kind::hand_load, bay, {{1, visit}, {2, felt}});
  }
  void look_at_all(const Uuid& visit = first_visit, const cbor::Map& more = {}) {
    for (const Uuid& part : {fitting, base, rail}) grade(part, more, visit);
    load(1, visit);
  }
  void retire(const Uuid& one, std::int64_t field) {
    says(kind::set, one, {{1, cbor::Array{cbor::Array{field, 2, cbor::Array{one}}}}});
  }
  [[nodiscard]] std::int64_t now() const { return now_; }
  Tablet& tablet() { return tablet_; }

 private:
  std::int64_t later() { return now_ += minute; }
  std::int64_t now_ = morning;
  Tablet tablet_{1, id(80)};
};

/// Both folds, and the numbers of one row under their names.
struct Covered {
  std::optional<Row> row;

  explicit Covered(Walk& walk, const Uuid& visit = first_visit, const Uuid& of = post) {
    auto store = folded_both_ways(walk.tablet().records());
    row = store.row(table_coverage, std::vector<Cell>{visit, of});
  }
  std::int64_t operator[](std::string_view name) const {
    REQUIRE(row);
    for (std::size_t i = 0; i < std::size(coverage_columns); ++i) {
      if (coverage_columns[i].name == name) return number_of((*row)[i], -1);
    }
    FAIL("no column " << name);
    return -1;
  }
};

}  // namespace

TEST_CASE("a post is done when each part, the bay after it and its rail were looked at",
          "[core][fold]") {
  Walk walk;
  CHECK_FALSE(Covered(walk).row);
  walk.grade(fitting);
  walk.grade(base);
  walk.grade(rail);
  Covered open(walk);
  CHECK(open["parts"] == 3);
  CHECK(open["parts_seen"] == 3);
  CHECK(open["bays"] == 1);
  CHECK(open["bays_seen"] == 0);
  CHECK(open["grades"] == 3);
  CHECK(open["done"] == 0);
  walk.says(kind::gate_check, bay, {{1, first_visit}, {2, 1}, {3, 1}, {4, 1}});
  CHECK(Covered(walk)["done"] == 0);  // a gate check alone is no look
  walk.load(1);
  Covered done(walk);
  CHECK(done["done"] == 1);
  CHECK(done["bays_pushed"] == 1);
  CHECK(done["gate_checks"] == 1);
  CHECK_FALSE(Covered(walk, first_visit, next_post).row);
  CHECK_FALSE(Covered(walk, second_visit).row);
}

TEST_CASE("readings are no look, a finding is one", "[core][fold]") {
  Walk walk;
  walk.grade(base);
  walk.grade(rail);
  walk.load(1);
  walk.says(kind::coating, fitting, {{1, first_visit}, {2, id(95)}, {3, cbor::Array{841}}, {4, 1}});
  walk.says(kind::torque, fitting, {{1, first_visit}, {3, 1}, {4, 240}, {5, 0}});
  Covered measured(walk);
  CHECK(measured["parts_seen"] == 2);
  CHECK(measured["coatings"] == 1);
  CHECK(measured["torques"] == 1);
  CHECK(measured["done"] == 0);
  walk.says(kind::finding, fitting, {{1, first_visit}, {2, 1}, {3, 4}, {4, false}, {7, 1}});
  CHECK(Covered(walk)["done"] == 1);
}

TEST_CASE("from afar and not pushed are looks, and counted apart", "[core][fold]") {
  Walk walk;
  walk.grade(fitting, {{5, 3}});
  walk.grade(base, {{5, 4}});
  walk.grade(rail, {{5, 2}});
  walk.load(4);
  Covered far(walk);
  CHECK(far["done"] == 1);
  CHECK(far["parts_far"] == 2);
  CHECK(far["bays_seen"] == 1);
  CHECK(far["bays_pushed"] == 0);
  walk.grade(fitting, {{5, 1}});
  CHECK(Covered(walk)["parts_far"] == 1);
}

TEST_CASE("a void or held look leaves the post open, and so does one by no person",
          "[core][fold]") {
  Walk walk;
  walk.look_at_all();
  CHECK(Covered(walk)["done"] == 1);
  const Uuid void_one = walk.tablet().records().back().record.id;
  walk.says(kind::voided, void_one, {{1, "wrong bay"}});
  CHECK(Covered(walk)["bays_seen"] == 0);
  CHECK(Covered(walk)["hand_loads"] == 0);
  walk.load(1);
  CHECK(Covered(walk)["done"] == 1);
  walk.tablet().records().back().stamp = Stamp{1, walk.now(), 1};
  CHECK(Covered(walk)["done"] == 0);
  walk.tablet().records().back().stamp->flags = 0;
  walk.tablet().records().back().record.who = Uuid{};
  CHECK(Covered(walk)["hand_loads"] == 1);
  CHECK(Covered(walk)["done"] == 0);
}

TEST_CASE("skipped is all that is missing said to be not reached", "[core][fold]") {
  Walk walk;
  walk.grade(fitting);
  walk.says(kind::not_reached, base, {{1, first_visit}, {2, 4}});
  walk.says(kind::not_reached, rail, {{1, first_visit}, {2, 4}});
  CHECK(Covered(walk)["skipped"] == 0);  // nobody said a word of the bay
  walk.says(kind::not_reached, bay, {{1, first_visit}, {2, 4}});
  Covered skipped(walk);
  CHECK(skipped["skipped"] == 1);
  CHECK(skipped["not_reached"] == 3);
  CHECK(skipped["done"] == 0);
  walk.look_at_all();
  Covered done(walk);
  CHECK(done["done"] == 1);
  CHECK(done["skipped"] == 0);
}

TEST_CASE("a run that was not reached is each of its posts", "[core][fold]") {
  Walk walk;
  walk.says(kind::not_reached, run, {{1, first_visit}, {2, 2}});
  for (const Uuid& one : {post, next_post}) {
    Covered skipped(walk, first_visit, one);
    CHECK(skipped["skipped"] == 1);
    CHECK(skipped["parts_seen"] == 0);
  }
}

TEST_CASE("a sealed visit is held to the register as it stood", "[core][fold]") {
  Walk walk;
  walk.grade(fitting);
  walk.grade(rail);
  walk.load(1);
  CHECK(Covered(walk)["parts"] == 3);
  walk.retire(base, 8);
  CHECK(Covered(walk)["parts"] == 2);
  CHECK(Covered(walk)["done"] == 1);
  walk.thing(id(53), 7, post);
  CHECK(Covered(walk)["done"] == 0);
  walk.says(kind::sealed, first_visit, {{1, 1}, {2, 99}});
  walk.thing(id(54), 7, post);
  walk.retire(id(53), 8);
  walk.retire(fitting, 8);
  Covered sealed(walk);
  CHECK(sealed["parts"] == 3);  // fitting, rail and 53
  CHECK(sealed["parts_seen"] == 2);
  CHECK(sealed["done"] == 0);
}

TEST_CASE("an open gap wants no look", "[core][fold]") {
  Walk walk;
  walk.grade(fitting);
  walk.grade(base);
  walk.grade(rail);
  walk.says(kind::set, bay, {{1, cbor::Array{cbor::Array{3, 4, cbor::Array{bay}}}}});
  Covered gap(walk);
  CHECK(gap["bays"] == 0);
  CHECK(gap["done"] == 1);
}

TEST_CASE("a bay that begins at another post is looked at there", "[core][fold]") {
  Walk walk;
  walk.grade(fitting);
  walk.look_at_all(second_visit);
  walk.says(kind::set, bay, {{1, cbor::Array{cbor::Array{1, next_post, cbor::Array{bay}}}}});
  CHECK(Covered(walk)["parts"] == 2);
  CHECK(Covered(walk, second_visit)["bays"] == 0);
  Covered moved(walk, second_visit, next_post);
  CHECK(moved["parts"] == 1);
  CHECK(moved["done"] == 1);
}

TEST_CASE("joined visits cover a post together", "[core][fold]") {
  Walk walk;
  walk.grade(fitting);
  walk.grade(base, {}, second_visit);
  walk.grade(rail, {}, second_visit);
  walk.load(1, second_visit);
  CHECK(Covered(walk)["done"] == 0);
  walk.says(kind::same_visit, second_visit, {{1, first_visit}});
  CHECK(Covered(walk)["done"] == 1);
  CHECK_FALSE(Covered(walk, second_visit).row);
}

TEST_CASE("the visits since a part had a fresh look are counted", "[core][fold]") {
  const auto list = [](std::vector<std::pair<Uuid, std::int64_t>> parts) {
    cbor::Array all;
    for (const auto& [part, visits] : parts) all.push_back(cbor::Array{part, visits});
    return Cell(cbor::encode(cbor::Value(all)));
  };
  const int since = at(coverage_columns, "since_fresh");
  Walk walk;
  walk.look_at_all();
  CHECK((*Covered(walk).row)[since] == Cell());
  walk.grade(fitting, {{97, true}}, second_visit);
  walk.grade(rail, {}, second_visit);
  Covered second(walk, second_visit);
  CHECK((*second.row)[since] == list({{fitting, 1}, {base, 1}}));
  walk.grade(base, {{97, true}}, id(102));
  walk.grade(fitting, {{5, 3}}, id(102));
  Covered third(walk, id(102));
  CHECK((*third.row)[since] == list({{base, 2}, {rail, 1}}));
  CHECK(third["since_fresh_max"] == 2);
  // A fresh look of the second visit that comes home late.
  walk.grade(base, {{94, morning + 15 * minute}}, second_visit);
  Covered again(walk, id(102));
  CHECK((*again.row)[since] == list({{base, 1}, {rail, 1}}));
}

TEST_CASE("a visit spans its records, and is over when all who joined have sealed",
          "[core][fold]") {
  Walk walk;
  const auto cell = [&walk](std::string_view name) {
    auto store = folded_both_ways(walk.tablet().records());
    for (std::size_t i = 0; i < std::size(visit_columns); ++i) {
      if (visit_columns[i].name == name)
        return cell_at(store, table_visit, {first_visit}, static_cast<int>(i));
    }
    return Cell();
  };
  const std::int64_t opened = walk.now();
  CHECK(cell("first_t") == Cell(opened));
  CHECK(cell("last_t") == Cell(opened));
  const Uuid seen = walk.grade(fitting, {{94, morning - hour}});
  walk.says(kind::not_reached, base, {{1, first_visit}, {2, 4}});
  CHECK(cell("first_t") == Cell(morning - hour));
  CHECK(cell("last_t") == Cell(walk.now()));
  walk.says(kind::correction, seen, {{1, cbor::Map{{94, morning - 2 * hour}}}, {2, "an hour off"}});
  CHECK(cell("first_t") == Cell(morning - 2 * hour));
  walk.says(kind::correction, seen, {{1, cbor::Map{{94, opened + 1}}}, {2, "today"}});
  CHECK(cell("first_t") == Cell(opened));
  CHECK(cell("sealed_t") == Cell());
  walk.says(kind::sealed, first_visit, {{1, 1}, {2, 99}});
  CHECK(cell("sealed_t") == Cell(walk.now()));
}

}  // namespace kneerail::fold::test
