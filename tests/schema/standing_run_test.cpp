// A run of the register is changed: what goes keeps its history, what comes is new.

#include "schema/store/standing_run.h"

#include "schema/store/new_run.h"
#include "schema/store/run_store.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// A run of six posts, numbered from 30, and a grade of the top rail between 31 and 32.
struct Standing : MadeRegister {
  Standing() {
    NewRun fresh;
    fresh.run = run;
    fresh.site = site.site;
    fresh.zone = site.zone;
    fresh.name = "Footbridge";
    fresh.rule.posts = 6;
    fresh.rule.first_number = 30;
    const auto around = taken(read_surroundings(opened->tables(), site.site));
    save(taken(entries_of(fresh, around, site.person, [&] { return opened->mint(); })));
    const RunSheet drawn = sheet();
    for (const SheetPart& part : drawn.parts)
      if (part.post == 1 && part.role == Role::top_rail) rail = part.id;
    save({{site.site, 20, rail, site.person, {{1, site.visit}, {2, 3}, {98, rail}}, {}}});
  }
  void save(const std::vector<Entry>& entries) {
    world.clock.move_on(1000);
    taken(opened->save(entries));
  }
  RunSheet sheet() { return taken(read_run(opened->tables(), run)); }
  StandingSheet standing() { return taken(read_standing(opened->tables(), run)); }
  void change(const StandingSheet& from, const Result<layout::RunChange>& change) {
    INFO((change ? std::string() : change.error().message));
    REQUIRE(change);
    save(taken(
        entries_of(*change, from, opened->tables(), site.person, [&] { return opened->mint(); })));
  }

  const Uuid run = id_of(4, 77);
  Uuid rail;
};

std::vector<std::string> labels(const RunSheet& sheet) {
  std::vector<std::string> found;
  for (const SheetPost& post : sheet.posts) found.push_back(post.label);
  return found;
}

}  // namespace

TEST_CASE("31A comes in between 31 and 32, and what was graded there can still be read",
          "[standing-run]") {
  Standing run;
  const StandingSheet before = run.standing();
  run.change(before, layout::insert_post(before.standing, 1, 600, before.labels));
  const RunSheet then = run.sheet();
  CHECK(labels(then) == std::vector<std::string>{"30", "31", "31A", "32", "33", "34", "35"});
  CHECK(then.posts[2].chainage_mm == 2100);
  CHECK(then.posts[2].height_mm == 1100);
  CHECK(then.posts[2].base == BaseKind::base_flange);
  CHECK(then.bays.size() == 6);
  for (const SheetBay& bay : then.bays) CHECK(bay.to == bay.from + 1);
  for (const SheetPart& part : then.parts) CHECK(part.id != run.rail);
  auto reading = run.opened->tables().prepare("SELECT v1 FROM reading WHERE subject = ?1");
  REQUIRE(reading);
  reading->bind(1, run.rail);
  REQUIRE(taken(reading->step()));
  CHECK(reading->number(0) == 3);
  CHECK(counted(*run.opened, "SELECT count(*) FROM disagreement") == 0);
  const StandingSheet again = run.standing();
  run.change(again, layout::insert_post(again.standing, 1, 300, again.labels));
  CHECK(labels(run.sheet())[2] == "31B");  // nearer to 31 than 31A
  check_whole(*run.opened);
}

TEST_CASE("a post is moved and another taken out, and the others stay", "[standing-run]") {
  Standing run;
  StandingSheet now = run.standing();
  run.change(now, layout::move_post(now.standing, 2, 3300));
  CHECK(run.sheet().posts[2].chainage_mm == 3300);
  now = run.standing();
  run.change(now, layout::retire_post(now.standing, 3));
  const RunSheet then = run.sheet();
  CHECK(labels(then) == std::vector<std::string>{"30", "31", "32", "34", "35"});
  REQUIRE(then.bays.size() == 4);
  CHECK(then.bays[2].from == 2);
  CHECK(then.bays[2].to == 3);
  CHECK(counted(*run.opened, "SELECT count(*) FROM entity WHERE type = 5 AND label = '33'") == 1);
  check_whole(*run.opened);
}

TEST_CASE("a gate is hung between two posts where rails were", "[standing-run]") {
  Standing run;
  const StandingSheet now = run.standing();
  run.change(now, layout::change_bay(now.standing, 1, BayKind::gate));
  const RunSheet then = run.sheet();
  int gates = 0;
  int rails = 0;
  for (const SheetPart& part : then.parts) {
    if (part.post != 1 || part.bay < 0) continue;
    (part.role == Role::gate ? gates : rails) += 1;
  }
  CHECK(gates == 1);
  CHECK(rails == 0);
  bool is_gate = false;
  for (const SheetBay& bay : then.bays)
    is_gate = is_gate || (bay.from == 1 && bay.kind == BayKind::gate);
  CHECK(is_gate);
  CHECK_FALSE(read_standing(run.opened->tables(), id_of(4, 99)));
  check_whole(*run.opened);
}
