// A run laid out by rule comes into the register whole or not at all, and its sentence survives a
// closed program.

#include "schema/store/new_run.h"
#include "schema/store/run_store.h"
#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

NewRun footbridge(const Site& site) {
  NewRun run;
  run.run = id_of(4, 77);
  run.site = site.site;
  run.zone = site.zone;
  run.name = "Footbridge";
  run.rule.posts = 6;
  return run;
}

std::vector<Entry> entries(Register& opened, const NewRun& run, const Site& site) {
  const RunSurroundings around = taken(read_surroundings(opened.tables(), run.site));
  return taken(entries_of(run, around, site.person, [&] { return opened.mint(); }));
}

std::string why_not(Register& opened, const NewRun& run) {
  const RunSurroundings around = taken(read_surroundings(opened.tables(), run.site));
  const auto made = entries_of(run, around, {}, [&] { return opened.mint(); });
  return made ? std::string() : made.error().message;
}

std::int64_t things_of(Register& opened, const Uuid& run) {
  auto rows = opened.tables().prepare(
      "SELECT count(*) FROM entity WHERE id = ?1 OR parent = ?1 OR parent IN (SELECT id FROM "
      "entity WHERE parent = ?1)");
  REQUIRE(rows);
  rows->bind(1, run);
  REQUIRE(taken(rows->step()));
  return rows->number(0);
}

}  // namespace

TEST_CASE("a run that is kept stands in the register as it was drawn", "[new-run]") {
  MadeRegister made;
  NewRun run = footbridge(made.site);
  run.rule.bay_changes[2].kind = BayKind::gate;
  run.rule.post_changes[1].landmark = "ladder 3";
  run.rule.in_service = date_from_civil(2026, 11, 26);
  run.drop_mm = 2400;
  run.behind = WhoIsBehind::children;
  taken(keep_settings(*made.opened, draft_settings(run)));
  taken(made.opened->save(entries(*made.opened, run, made.site)));
  CHECK_FALSE(kept_draft(made.opened->tables(), made.site.site));  // it is in the register
  const RunSheet sheet = taken(read_run(made.opened->tables(), run.run));
  const layout::LaidRun laid = *layout::lay_out(run.rule);
  CHECK(sheet.name == "Footbridge");
  REQUIRE(sheet.posts.size() == 6);
  CHECK(sheet.posts[1].landmark == "ladder 3");
  CHECK(sheet.posts[5].chainage_mm == 7500);
  CHECK(sheet.posts[5].label == "6");
  REQUIRE(sheet.bays.size() == 5);
  CHECK(sheet.bays[2].kind == BayKind::gate);
  CHECK(sheet.parts.size() == laid.parts.size());
  CHECK(counted(*made.opened, "SELECT count(*) FROM entity WHERE type = 8") ==
        static_cast<std::int64_t>(laid.types.size()));
  check_whole(*made.opened);
}

TEST_CASE("types that the register has are used as they are", "[new-run]") {
  MadeRegister made;
  taken(made.opened->save(entries(*made.opened, footbridge(made.site), made.site)));
  const auto types = counted(*made.opened, "SELECT count(*) FROM entity WHERE type = 8");
  NewRun other = footbridge(made.site);
  other.run = id_of(4, 78);
  other.name = "Upper gate";
  other.rule.first_number = 200;
  taken(made.opened->save(entries(*made.opened, other, made.site)));
  CHECK(counted(*made.opened, "SELECT count(*) FROM entity WHERE type = 8") == types);
  CHECK(counted(*made.opened, "SELECT max(ord) FROM entity WHERE type = 4") == 2);
}

TEST_CASE("a run without a name, a zone or numbers of its own says what to change", "[new-run]") {
  MadeRegister made;
  NewRun run = footbridge(made.site);
  run.name.clear();
  CHECK(why_not(*made.opened, run).find("no name yet") != std::string::npos);
  run.name = "Ferry Slip";
  CHECK(why_not(*made.opened, run).find("named Ferry Slip already") != std::string::npos);
  run.name = "Footbridge";
  run.zone = id_of(3, 99);
  CHECK(why_not(*made.opened, run).find("in no zone yet") != std::string::npos);
  run.zone = made.site.zone;
  run.rule.first_number = 115;
  CHECK(why_not(*made.opened, run).find("Post 118 is at this site already") != std::string::npos);
  run.rule.posts = 1;
  CHECK(why_not(*made.opened, run).find("2 to 999 posts") != std::string::npos);
}

TEST_CASE("when the power goes while a run is kept, all of it is there or nothing", "[new-run]") {
  int whole = 0;
  int none = 0;
  for (const std::uint64_t seed : test::seeds(1, 60)) {
    INFO(test::reproduce(seed));
    World world(seed);
    const Site site;
    faults::FaultDisk disk;
    const NewRun run = footbridge(site);
    {
      auto opened = made(world, "/register", site, &disk.files());
      const auto all = entries(*opened, run, site);
      disk.cut_after(static_cast<std::int64_t>(seed));
      const auto saved = opened->save(all);
      if (!saved) CHECK(saved.error().fault == Fault::io);
    }
    disk.restore_power(seed);
    auto opened = taken(Register::open(world.options("/register", Mode::write, &disk.files())));
    const std::int64_t found = things_of(*opened, run.run);
    const layout::LaidRun laid = *layout::lay_out(run.rule);
    const auto all =
        static_cast<std::int64_t>(1 + laid.posts.size() + laid.bays.size() + laid.parts.size());
    CHECK((found == 0 || found == all));
    ++(found == 0 ? none : whole);
    check_whole(*opened);
  }
  if (test::seeds(1, 60).size() < 60) return;
  CHECK(whole > 0);
  CHECK(none > 0);
}

TEST_CASE("the sentence of a run survives a closed program, whatever it says",
          "[new-run][property]") {
  MadeRegister made;
  CHECK_FALSE(kept_draft(made.opened->tables(), made.site.site));
  for (const std::uint64_t seed : test::seeds(1, 100)) {
    INFO(test::reproduce(seed));
    SplitMix64 chance(seed);
    NewRun run = footbridge(made.site);
    run.name = std::string(static_cast<std::size_t>(chance.between(0, 120)), 'x');
    run.rule.posts = static_cast<int>(chance.between(2, 999));
    run.rule.toe_board = chance.between(0, 1) == 1;
    run.rule.made = {System::welded, Material::aluminium, Protection::bare};
    if (chance.between(0, 1) == 1) run.rule.in_service = Date{20'000};
    if (chance.between(0, 1) == 1) run.drop_mm = chance.between(0, 9000);
    if (chance.between(0, 1) == 1) run.below = WhatIsBelow::road;
    for (std::int64_t i = chance.between(0, 9); i > 0; --i) {
      run.rule.joint_changes[{static_cast<int>(i), 1}] = WhatItDoes::elbow;
      run.rule.bay_changes[static_cast<int>(i)].rise_mm = -chance.between(0, 90);
      run.rule.bay_changes[static_cast<int>(i)].toe_board = false;
      run.rule.post_changes[static_cast<int>(i)] = {BaseKind::socket, -90, "lamp 12"};
    }
    taken(keep_settings(*made.opened, draft_settings(run)));
    made.reopen();
    CHECK(kept_draft(made.opened->tables(), made.site.site) == run);
  }
  taken(keep_settings(*made.opened, no_draft(made.site.site)));
  CHECK_FALSE(kept_draft(made.opened->tables(), made.site.site));
}
