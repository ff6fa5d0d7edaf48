// A run that stands is changed: what goes is named, what comes is new, and nothing else is touched.

#include <catch2/catch.hpp>
#include <set>

#include "core/base/world.h"
#include "core/layout/laid_run.h"
#include "core/layout/run_change.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::layout;

namespace {

Uuid numbered(std::uint8_t kind, std::size_t number) {
  Uuid id;
  id.bytes[0] = kind;
  id.bytes[14] = static_cast<std::uint8_t>(number >> 8);
  id.bytes[15] = static_cast<std::uint8_t>(number);
  return id;
}

/// A run as the register would have it.
StandingRun standing(const RunRule& rule) {
  const LaidRun laid = *lay_out(rule);
  StandingRun run;
  for (const LaidPost& post : laid.posts)
    run.posts.push_back({numbered(5, run.posts.size()), post.label, post.chainage_mm,
                         static_cast<std::int64_t>(run.posts.size())});
  for (const LaidBay& bay : laid.bays)
    run.bays.push_back({numbered(6, run.bays.size()), bay.from, bay.from + 1, bay.kind, bay.rails});
  for (const LaidPart& part : laid.parts) {
    StandingPart made;
    made.id = numbered(7, run.parts.size());
    made.post = part.bay < 0 ? part.post : -1;
    made.bay = part.bay;
    made.role = part.role;
    made.type = numbered(8, static_cast<std::size_t>(part.type));
    made.along_mm = part.along_mm;
    made.up_mm = part.up_mm;
    made.screws = part.screws;
    run.parts.push_back(made);
  }
  return run;
}

StandingRun usual() {
  RunRule rule;
  rule.posts = 6;
  rule.first_number = 30;
  return standing(rule);
}

std::vector<std::string> labels(const StandingRun& run) {
  std::vector<std::string> found;
  for (const StandingPost& post : run.posts) found.push_back(post.label);
  return found;
}

template <class T>
T taken(Result<T> result) {
  INFO((result ? std::string() : result.error().message));
  REQUIRE(result);
  return std::move(*result);
}

}  // namespace

TEST_CASE("a post between 31 and 32 is 31A, and the next one 31B", "[core][layout]") {
  CHECK(*label_between("31", {"31", "32"}) == "31A");
  CHECK(*label_between("31", {"31", "31A", "32"}) == "31B");
  CHECK(*label_between("31A", {"31", "31A", "32"}) == "31B");
  CHECK(*label_between("ladder", {}) == "ladderA");
  std::vector<std::string> all = {"31"};
  for (char letter = 'A'; letter <= 'Z'; ++letter) all.push_back(std::string("31") + letter);
  CHECK_FALSE(label_between("31", all));
}

TEST_CASE("an inserted post cuts the rails of its bay and has the parts of its neighbour",
          "[core][layout]") {
  const StandingRun run = usual();
  const RunChange change = taken(insert_post(run, 1, 600, labels(run)));
  REQUIRE(change.posts.size() == 1);
  CHECK(change.posts[0].label == "31A");
  CHECK(change.posts[0].chainage_mm == 2100);
  CHECK(change.posts[0].order == run.posts[1].order);
  REQUIRE(change.bays.size() == 2);
  CHECK(change.bays[0].from.there == run.posts[1].id);
  CHECK(change.bays[1].to.there == run.posts[2].id);
  CHECK(change.retired.size() == 3);  // the bay and its two rails
  CHECK(change.retired[0] == run.bays[1].id);
  int rails = 0;
  int at_post = 0;
  for (const RunChange::Part& part : change.parts) {
    if (part.post == 0) ++at_post;
    if (part.bay < 0) continue;
    ++rails;
    CHECK(part.along_mm == (part.bay == 0 ? 300 : 450));
  }
  CHECK(rails == 4);
  CHECK(at_post == 5);  // tube, bolts, flange, cross and tee
}

TEST_CASE("a post too near to another is refused", "[core][layout]") {
  const StandingRun run = usual();
  CHECK_FALSE(insert_post(run, 1, 50, labels(run)));
  CHECK_FALSE(insert_post(run, 1, 1450, labels(run)));
  CHECK_FALSE(move_post(run, 2, 1550));
  CHECK_FALSE(move_post(run, 2, 4450));
  CHECK(move_post(run, 0, 0));
}

TEST_CASE("a post that moves takes the middles of its bays with it", "[core][layout]") {
  const StandingRun run = usual();
  const RunChange change = taken(move_post(run, 2, 3300));
  REQUIRE(change.moved.size() == 1);
  CHECK(change.moved[0].post == run.posts[2].id);
  CHECK(change.retired.empty());
  REQUIRE(change.placed_anew.size() == 4);
  std::multiset<std::int64_t> middles;
  for (const auto& placed : change.placed_anew) middles.insert(placed.along_mm);
  CHECK(middles == std::multiset<std::int64_t>{600, 600, 900, 900});
}

TEST_CASE("a post that is taken out leaves one bay where two were", "[core][layout]") {
  const StandingRun run = usual();
  const RunChange change = taken(retire_post(run, 2));
  CHECK(change.retired.size() == 12);  // post, five parts, two bays, four rails
  REQUIRE(change.bays.size() == 1);
  CHECK(change.bays[0].from.there == run.posts[1].id);
  CHECK(change.bays[0].to.there == run.posts[3].id);
  REQUIRE(change.parts.size() == 2);
  CHECK(change.parts[0].along_mm == 1500);
  CHECK_FALSE(retire_post(run, 0));
  CHECK_FALSE(retire_post(run, 5));
}

TEST_CASE("a bay gets a gate, and rails again like its neighbours'", "[core][layout]") {
  StandingRun run = usual();
  const RunChange gate = taken(change_bay(run, 3, BayKind::gate));
  REQUIRE(gate.kinds.size() == 1);
  CHECK(gate.kinds[0].bay == run.bays[3].id);
  CHECK(gate.retired.size() == 2);
  REQUIRE(gate.parts.size() == 1);
  CHECK(gate.parts[0].role == Role::gate);
  CHECK(gate.parts[0].up_mm == 550);
  CHECK_FALSE(change_bay(run, 3, BayKind::rails));
  CHECK_FALSE(change_bay(run, 3, BayKind::mesh_infill));  // no bay has mesh
  run.bays[3].kind = BayKind::open_gap;
  const RunChange rails = taken(change_bay(run, 3, BayKind::rails));
  CHECK(rails.kinds[0].rails == 2);
  CHECK(rails.parts.size() == 2);
}

TEST_CASE("a welded section is not rearranged in the register", "[core][layout]") {
  RunRule rule;
  rule.posts = 4;
  rule.made = {System::welded, Material::steel, Protection::paint_on_steel};
  const StandingRun run = standing(rule);
  CHECK_FALSE(insert_post(run, 1, 600, labels(run)));
  CHECK_FALSE(retire_post(run, 1));
  CHECK_FALSE(change_bay(run, 1, BayKind::gate));
  CHECK(move_post(run, 1, 1600));
}

TEST_CASE("whatever is changed, only its own bays go and all posts stay in order",
          "[core][layout][property]") {
  for (const std::uint64_t seed : test::seeds(1, 500)) {
    INFO(test::reproduce(seed));
    SplitMix64 chance(seed);
    RunRule rule;
    rule.posts = static_cast<int>(chance.between(3, 30));
    rule.rails = static_cast<int>(chance.between(1, 3));
    rule.toe_board = chance.between(0, 1) == 1;
    rule.bay_changes[static_cast<int>(chance.between(0, 29))].kind = BayKind::open_gap;
    const StandingRun run = standing(rule);
    const int bay = static_cast<int>(chance.between(0, rule.posts - 2));
    const auto change = taken(insert_post(run, bay, chance.between(100, 1400), labels(run)));
    const auto at = static_cast<std::size_t>(bay);
    CHECK(change.posts[0].chainage_mm > run.posts[at].chainage_mm);
    CHECK(change.posts[0].chainage_mm < run.posts[at + 1].chainage_mm);
    CHECK(change.posts[0].order >= run.posts[at].order);
    CHECK(change.posts[0].order < run.posts[at + 1].order);
    std::set<Uuid> own = {run.bays[at].id};
    for (const StandingPart& part : run.parts)
      if (part.bay == bay) own.insert(part.id);
    CHECK(std::set<Uuid>(change.retired.begin(), change.retired.end()) == own);
  }
}
