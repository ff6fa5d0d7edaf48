// What can go wrong on a walk: the power, the disk, the clock, and registers of odd sizes.

#include <QSignalSpy>
#include <catch2/catch.hpp>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr std::int64_t hour_ms = 60LL * 60 * 1000;
const std::vector<std::int64_t> five = {760, 710, 740, 730, 750};
constexpr int touches_of_five = 15;  // two digits and the next slot, five times

void at_coating(Walking& walking) {
  walking.walk().choosePart(walking.tee(0));
  walking.walk().openPad(WalkModel::CoatingPad);
}

/// The so many-th touch of the five.
void touch(Walking& walking, int place) {
  const auto value = five[static_cast<std::size_t>(place / 3)] / 10;
  if (place % 3 == 0) walking.coating().digit(static_cast<int>(value / 10));
  if (place % 3 == 1) walking.coating().digit(static_cast<int>(value % 10));
  if (place % 3 == 2) walking.coating().nextSlot();
  walking.settle();
}

std::vector<std::int64_t> first(std::size_t count) {
  return {five.begin(), five.begin() + static_cast<std::ptrdiff_t>(count)};
}

/// Slots of the first tee that the glass calls kept; all, when the walk went on after the fifth.
std::size_t slots_kept(Walking& walking) {
  if (walking.walk().run()->part() != walking.tee(0)) return five.size();
  std::size_t kept = 0;
  while (kept < five.size() && walking.slot_is(static_cast<int>(kept), CoatingSet::KeptRole))
    ++kept;
  return kept;
}

}  // namespace

TEST_CASE("power cut after any touch of five readings: none that was kept is lost",
          "[mobile][trouble]") {
  const int touches = GENERATE(range(0, touches_of_five + 1));
  INFO("after touch " << touches);
  Walking walking;
  at_coating(walking);
  for (int i = 0; i < touches; ++i) touch(walking, i);
  walking.cut_power(static_cast<std::uint64_t>(touches) + 1);
  const auto finished = static_cast<std::size_t>(touches / 3);
  CHECK(walking.recorded(0) == first(finished));
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
  at_coating(walking);
  if (finished < five.size()) {
    CHECK(walking.coating().current_slot() == static_cast<int>(finished));
    for (int i = static_cast<int>(finished) * 3; i < touches_of_five; ++i) touch(walking, i);
  }
  CHECK(walking.recorded(0) == five);
  CHECK_FALSE(walking.walk().not_kept());
}

TEST_CASE("power cut inside any write of five readings: none that was kept is lost",
          "[mobile][trouble]") {
  std::int64_t writes = 0;
  {
    Walking walking;
    at_coating(walking);
    const std::int64_t before = walking.disk().operations();
    for (int i = 0; i < touches_of_five; ++i) touch(walking, i);
    writes = walking.disk().operations() - before;
  }
  REQUIRE(writes > 5);
  std::size_t most_kept = 0;
  for (std::int64_t cut = writes % 3 + 1; cut <= writes + 1; cut += 3) {
    INFO("cut after write " << cut << " of " << writes);
    Walking walking;
    at_coating(walking);
    walking.disk().cut_after(cut);
    for (int i = 0; i < touches_of_five; ++i) touch(walking, i);
    const std::size_t kept = slots_kept(walking);
    walking.cut_power(static_cast<std::uint64_t>(cut) + 1);
    const auto found = walking.recorded(0);
    CHECK(found.size() >= kept);
    CHECK(found.size() <= five.size());
    CHECK(found == first(std::min(found.size(), five.size())));
    most_kept = std::max(most_kept, kept);
  }
  CHECK(most_kept == five.size());
}

TEST_CASE("a disk that is full in the middle of a set is said, and the set goes on after it",
          "[mobile][trouble]") {
  Walking walking;
  at_coating(walking);
  for (int i = 0; i < 6; ++i) touch(walking, i);
  walking.disk().remove("/register/spare");  // the reserve has gone before
  walking.disk().set_room(0);
  // What fits in the room the files have already is still kept.
  constexpr int entries_most = 2000;
  for (int i = 0; i < entries_most && !walking.walk().not_kept(); ++i) {
    walking.walk().chooseGrade(1 + i % 2);
    walking.settle();
  }
  REQUIRE(walking.walk().not_kept());
  for (int i = 6; i < 9; ++i) touch(walking, i);
  CHECK(walking.slot_is(1, CoatingSet::KeptRole));
  CHECK(walking.slot_is(2, CoatingSet::NotKeptRole));
  CHECK_FALSE(walking.slot_is(2, CoatingSet::KeptRole));
  CHECK(walking.walk().message().startsWith("Not kept"));
  CHECK(walking.walk().not_kept());
  walking.disk().set_room(-1);
  walking.walk().tryAgain();
  walking.settle();
  CHECK(walking.slot_is(2, CoatingSet::KeptRole));
  CHECK_FALSE(walking.walk().not_kept());
  CHECK(walking.walk().message().isEmpty());
  for (int i = 9; i < touches_of_five; ++i) touch(walking, i);
  CHECK(walking.recorded(0) == five);
}

TEST_CASE("a clock that is set by some hours during a set does not part it", "[mobile][trouble]") {
  const std::int64_t hours = GENERATE(-5, -1, 1, 5);
  INFO("set by hours: " << hours);
  Walking walking;
  at_coating(walking);
  for (int i = 0; i < 9; ++i) touch(walking, i);
  walking.clock().wall_ms += hours * hour_ms;
  for (int i = 9; i < 12; ++i) touch(walking, i);
  walking.cut_power(1);
  at_coating(walking);
  CHECK(walking.coating().current_slot() == 4);
  for (int i = 12; i < touches_of_five; ++i) touch(walking, i);
  CHECK(walking.recorded(0) == five);
  CHECK(walking.count("SELECT count(*) FROM visit") == 2);
  walking.walk().choosePart(walking.tee(0));
  CHECK(walking.slot(0) == "76");
  CHECK(walking.slot(4) == "75");
}

TEST_CASE("a visit that a clock set wrong opened is not walked on for weeks", "[mobile][trouble]") {
  constexpr std::int64_t wrong_ms = 40 * 24 * hour_ms;
  Walking walking;
  walking.clock().wall_ms += wrong_ms;
  at_coating(walking);
  for (int i = 0; i < 9; ++i) touch(walking, i);
  walking.clock().wall_ms -= wrong_ms;
  for (int i = 9; i < 12; ++i) touch(walking, i);  // in the hand the set goes on
  walking.switch_off();
  walking.switch_on();
  CHECK(walking.recorded(0) == first(4));
  at_coating(walking);
  CHECK(walking.coating().current_slot() == 0);  // today's visit is another
  for (int i = 0; i < touches_of_five; ++i) touch(walking, i);
  CHECK(walking.recorded(0).size() == 9);
  CHECK(walking.count("SELECT count(*) FROM visit") == 3);
}

TEST_CASE("a zero that lies ahead of the clock is no zero to trust", "[mobile][trouble]") {
  Walking walking;
  walking.switch_off();
  walking.write_down({{walking.site().organisation,
                       50,
                       walking.site().gauge,
                       walking.site().person,
                       {{2, 1}, {4, cbor::Array{0}}, {5, true}},
                       {}}});
  walking.switch_on();
  walking.clock().move_on(130 * 60'000);
  CHECK_FALSE(walking.walk().gauge_old());
  CHECK(walking.walk().gauge_words() == "2 h 10 min ago");
  walking.clock().wall_ms -= 5 * hour_ms;
  CHECK(walking.walk().gauge_old());
  CHECK(walking.walk().gauge_words() == "zero it soon");
  walking.clock().wall_ms += 48 * hour_ms;
  CHECK(walking.walk().gauge_words() == "zero it soon");
}

TEST_CASE("a run of one post is walked like any other", "[mobile][trouble]") {
  Walking walking(1);
  CHECK(walking.walk().next_post_label().isEmpty());
  CHECK(walking.walk().pushed_means().isEmpty());
  walking.walk().asLastTime(true);
  walking.settle();
  CHECK(walking.walk().post_label() == "118");
  CHECK(walking.walk().run_counts() == "1 seen · 0 skipped · 0 open");
  walking.walk().undo();
  walking.settle();
  walking.walk().skip(WalkModel::Water, 5);
  walking.settle();
  CHECK(walking.walk().run_counts() == "0 seen · 1 skipped · 0 open");
  walking.walk().stepPost(1);
  walking.walk().stepPost(-1);
  at_coating(walking);
  for (int i = 0; i < touches_of_five; ++i) touch(walking, i);
  CHECK(walking.walk().run()->part() == walking.cross(0));
  walking.walk().nextPart();
  CHECK(walking.walk().run()->part() == walking.cross(0));
  CHECK(walking.recorded(0) == five);
}

TEST_CASE("a register without a site takes every touch and enters nothing", "[mobile][trouble]") {
  faults::FaultDisk disk;
  World world(1);
  const WalkedSite site(0);
  {
    auto made = taken(Register::open(world.options("/register", Mode::create, &disk.files())));
    taken(made->save({created(site.organisation, site.organisation, 1, {}, {{1, "Harbour"}})}));
  }
  auto store = taken(StoreLink::open(world.options("/register", Mode::write, &disk.files())));
  const std::int64_t before =
      taken(store->reader().tables().number("SELECT count(*) FROM journal"));
  WalkModel walk(*store, world.clock, world.random);
  walk.open(site.run);
  CHECK_FALSE(walk.opened());
  CHECK_FALSE(walk.message().isEmpty());
  for (const auto pad :
       {WalkModel::PostPad, WalkModel::GradePad, WalkModel::CoatingPad, WalkModel::TorquePad}) {
    walk.openPad(pad);
    walk.chooseGrade(2);
    walk.coating()->digit(7);
    walk.coating()->nextSlot();
    walk.torque()->clicked();
    walk.typed("76");
    walk.takeWaiting();
    walk.choosePost(0);
    walk.choosePart(0);
    walk.chooseBay(0);
    walk.nextPart();
    walk.stepPart(1);
    walk.stepPost(1);
    walk.asLastTime(true);
    walk.lookAgain();
    walk.skip(WalkModel::Water, 3);
    walk.choosePerson(0);
    walk.chooseGauge(0);
    walk.askForecast();
    walk.undo();
    walk.redo();
    walk.tryAgain();
    walk.leave();
  }
  store->settle();
  CHECK(taken(store->reader().tables().number("SELECT count(*) FROM journal")) == before);
  CHECK(walk.run_counts() == "0 seen · 0 skipped · 0 open");
}
