// The Coating pad of a walk: its slots, its sets, and the numbers of a gauge.

#include <catch2/catch.hpp>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// Chooses the tee of a post with the Coating pad up.
void at_coating(Walking& walking, int post) {
  walking.walk().choosePart(walking.tee(post));
  walking.walk().set_pad(WalkModel::CoatingPad);
}

}  // namespace

TEST_CASE("a slot is drawn as kept only when the disk has it", "[mobile][walk]") {
  Walking walking;
  at_coating(walking, 0);
  CHECK(walking.slot(0, CoatingSet::GhostRole) == "88");
  walking.coating().digit(7);
  walking.coating().digit(6);
  CHECK(walking.slot(0) == "76");
  CHECK(walking.walk().undo_words() == "76");
  walking.coating().nextSlot();
  CHECK_FALSE(walking.slot_is(0, CoatingSet::KeptRole));
  walking.settle();
  CHECK(walking.slot_is(0, CoatingSet::KeptRole));
  CHECK(walking.coating().current_slot() == 1);
  CHECK(walking.count("SELECT count(*) FROM draft") == 1);
  CHECK(walking.recorded(0).empty());
}

TEST_CASE("the fifth reading makes one record and goes on to the next part", "[mobile][walk]") {
  Walking walking;
  at_coating(walking, 0);
  for (const char* value : {"76", "71", "74", "73"}) walking.type(value);
  walking.settle();
  CHECK(walking.coating().summary() == "mean 73.5 µm · last visit 86.6 · 13.1 less");
  CHECK(walking.coating().limit() == 30);
  walking.type("75");
  CHECK(walking.walk().run()->part() == walking.tee(0));  // not before the disk has it
  walking.settle();
  CHECK(walking.recorded(0) == std::vector<std::int64_t>{760, 710, 740, 730, 750});
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
  CHECK(walking.walk().run()->part() == walking.cross(0));
  CHECK(walking.walk().pen().entries_kept() == 1);
  walking.walk().choosePart(walking.tee(0));
  CHECK(walking.slot(4) == "75");
  CHECK(walking.slot_is(4, CoatingSet::KeptRole));
}

TEST_CASE("readings are compared as the gauge's calibrations put them right", "[mobile][walk]") {
  // Last year's certificate takes 2.0 um off, so the mean of 86.6 counts as 84.6; this year's adds
  // 1.5, so today's 73.5 counts as 75.0. What was typed stays in its slot.
  Walking walking;
  walking.switch_off();
  const Date today = utc_day(walking.clock().now());
  const auto calibration = [&](int days_ago, int add) {
    cbor::Map body{{1, today.days - days_ago}, {2, today.days + 400}};
    body.set(5, cbor::Array{cbor::Array{500, add}});
    const WalkedSite& site = walking.site();
    return Entry{site.organisation, 51, site.gauge, site.person, body, {}};
  };
  walking.write_down({calibration(500, -20), calibration(10, 15)});
  walking.switch_on();
  at_coating(walking, 0);
  CHECK(walking.slot(0, CoatingSet::GhostRole) == "86");
  for (const char* value : {"76", "71", "74", "73"}) walking.type(value);
  walking.settle();
  CHECK(walking.slot(0) == "76");
  CHECK(walking.coating().summary() == "mean 75.0 µm · last visit 84.6 · 9.6 less");
  CHECK(walking.coating().today() == QList<qreal>{77.5, 72.5, 75.5, 74.5});
  walking.type("75");
  walking.settle();
  CHECK(walking.recorded(0) == std::vector<std::int64_t>{760, 710, 740, 730, 750});
}

TEST_CASE("fewer than five are a record when the part is left", "[mobile][walk]") {
  Walking walking;
  at_coating(walking, 0);
  walking.type("76");
  walking.coating().digit(7);  // the number that was just begun is finished as it stands
  walking.walk().nextPart();
  walking.settle();
  CHECK(walking.recorded(0) == std::vector<std::int64_t>{760, 70});
  CHECK(walking.walk().pad() == WalkModel::CoatingPad);
}

TEST_CASE("a reading far from last time is kept and asked about", "[mobile][walk]") {
  Walking walking;
  at_coating(walking, 0);
  walking.type("34");  // under 40 % of 86.6
  walking.type("35");
  walking.type("217");  // over 250 %
  walking.type("216");
  walking.settle();
  CHECK(walking.slot_is(0, CoatingSet::LookAgainRole));
  CHECK_FALSE(walking.slot_is(1, CoatingSet::LookAgainRole));
  CHECK(walking.slot_is(2, CoatingSet::LookAgainRole));
  CHECK_FALSE(walking.slot_is(3, CoatingSet::LookAgainRole));
  CHECK(walking.slot_is(0, CoatingSet::KeptRole));
  CHECK(walking.coating().far_words() == "Far from last time. Read it once more?");
  walking.coating().nextSpot();  // nothing was measured there: only the gauge's range says far
  walking.settle();
  walking.type("1501");
  CHECK(walking.slot_is(0, CoatingSet::LookAgainRole));
}

TEST_CASE("the gauge's resolution sets the decimals", "[mobile][walk]") {
  Walking walking;
  CHECK(CoatingSet::tenth_um_of("76.4") == 764);
  CHECK(CoatingSet::tenth_um_of("76,4") == 764);
  CHECK(CoatingSet::tenth_um_of("2000") == 20'000);
  CHECK_FALSE(CoatingSet::tenth_um_of("2001"));
  CHECK_FALSE(CoatingSet::tenth_um_of("7x"));
  at_coating(walking, 0);
  for (const int digit : {2, 0, 0, 1}) walking.coating().digit(digit);
  CHECK(walking.slot(0) == "200");  // no record holds 2,001 µm
}

TEST_CASE("a gauge's number goes to the slot that waits", "[mobile][walk]") {
  Walking walking;
  at_coating(walking, 0);
  for (const char* value : {"76", "71.4", "74", "73", "75"}) walking.walk().typed(value);
  walking.walk().typed("99");  // the record is still on its way
  walking.settle();
  CHECK(walking.recorded(0) == std::vector<std::int64_t>{760, 714, 740, 730, 750});
  CHECK(walking.walk().waiting_words() == "99 µm waiting");
  walking.clock().move_on(1'999);
  walking.walk().typed("98");  // within two seconds of the fifth
  CHECK(walking.walk().waiting_words() == "99 µm and 1 more waiting");
  walking.clock().move_on(1);
  walking.walk().typed("97");
  walking.settle();
  CHECK(walking.slot(0) == "97");
  walking.walk().takeWaiting();
  CHECK(walking.slot(1) == "99");
  CHECK(walking.walk().waiting_words() == "98 µm waiting");
}

TEST_CASE("a number that comes when no slot waits is not lost", "[mobile][walk]") {
  Walking walking;
  walking.walk().typed("76");  // a post is chosen, no part
  CHECK(walking.walk().waiting_words() == "76 µm waiting");
  walking.walk().takeWaiting();
  CHECK(walking.walk().waiting_words() == "76 µm waiting");
  walking.walk().choosePart(walking.tee(0));
  CHECK(walking.walk().pad() == WalkModel::GradePad);
  walking.walk().takeWaiting();
  CHECK(walking.walk().pad() == WalkModel::CoatingPad);
  CHECK(walking.slot(0) == "76");
  CHECK(walking.walk().waiting_words().isEmpty());
  walking.walk().typed("5000");
  CHECK(walking.walk().message().contains("5000 µm cannot be kept"));
  CHECK(walking.walk().waiting_words().isEmpty());
}

TEST_CASE("what lies under the probe follows the grade until a person says", "[mobile][walk]") {
  Walking walking;
  at_coating(walking, 0);
  CHECK(walking.coating().under_probe() == 1);
  walking.walk().chooseGrade(4);
  CHECK(walking.coating().under_probe() == 3);
  CHECK_FALSE(walking.coating().under_probe_words().isEmpty());
  walking.coating().set_under_probe(2);
  walking.walk().chooseGrade(5);
  CHECK(walking.coating().under_probe() == 2);
  walking.type("76");
  walking.coating().close();
  walking.settle();
  CHECK(walking.count("SELECT under_probe FROM reading WHERE kind = 21 AND under_probe NOT NULL") ==
        2);
}

TEST_CASE("another person and another gauge find their own set, not the former's",
          "[mobile][walk]") {
  Walking walking;
  walking.switch_off();
  const Uuid& organisation = walking.site().organisation;
  walking.write_down(
      {created(organisation, id_of(10, 2), 10, organisation, {{2, "EK"}}),
       {organisation, 60, id_of(10, 2), {}, {{1, 1}}, id_of(60, 2)},
       created(organisation, id_of(9, 3), 9, organisation, {{1, 1}, {2, "B4"}, {3, 1}})});
  walking.switch_on();
  REQUIRE(walking.walk().people().size() == 2);
  REQUIRE(walking.walk().gauges().size() == 2);
  at_coating(walking, 0);
  walking.type("74");
  walking.walk().leave();
  walking.settle();
  const int first = walking.walk().person_now();
  walking.walk().choosePerson(1 - first);
  walking.settle();
  CHECK(walking.slot(0).isEmpty());
  CHECK(walking.coating().current_slot() == 0);
  walking.type("61");
  walking.settle();
  walking.walk().choosePerson(first);
  walking.settle();
  CHECK(walking.slot(0) == "74");
  CHECK(walking.recorded(0) == std::vector<std::int64_t>{740, 610});
  walking.walk().choosePart(walking.tee(1));
  walking.coating().digit(8);
  walking.walk().chooseGauge(1 - walking.walk().gauge_now());
  walking.settle();
  CHECK(walking.recorded(1) == std::vector<std::int64_t>{80});
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
}

TEST_CASE("a set that was left before its fifth goes on where it was", "[mobile][walk]") {
  const bool restarted = GENERATE(false, true);
  INFO("restarted " << restarted);
  Walking walking;
  at_coating(walking, 0);
  for (const char* value : {"76", "71", "74"}) walking.type(value);
  walking.settle();
  if (restarted) {
    walking.switch_off();  // the draft becomes a record at the next start
    walking.switch_on();
    at_coating(walking, 0);
  } else {
    walking.walk().nextPart();
    walking.settle();
    at_coating(walking, 0);
  }
  CHECK(walking.recorded(0) == std::vector<std::int64_t>{760, 710, 740});
  CHECK(walking.coating().current_slot() == 3);
  walking.coating().chooseSlot(0);  // what is on record stays as it is
  CHECK(walking.coating().current_slot() == 3);
  walking.type("73");
  walking.settle();
  CHECK(walking.slot(0) == "76");
  CHECK(walking.slot(3) == "73");
  CHECK(walking.coating().summary().startsWith("mean 73.5 µm"));
  walking.walk().typed("75");
  walking.settle();
  CHECK(walking.recorded(0) == std::vector<std::int64_t>{760, 710, 740, 730, 750});
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 21") == 4 + 2);
  CHECK(walking.walk().run()->part() == walking.cross(0));  // it was the fifth
  at_coating(walking, 0);
  CHECK(walking.coating().current_slot() == -1);
  walking.type("60");  // another set
  CHECK(walking.slot(0) == "60");
  CHECK(walking.slot(1).isEmpty());
}

TEST_CASE("a number that waits is there after a restart", "[mobile][walk]") {
  Walking walking;
  walking.walk().typed("76");
  walking.walk().typed("71.4");
  walking.settle();
  walking.cut_power(1);
  CHECK(walking.walk().waiting_words() == "76 µm and 1 more waiting");
  at_coating(walking, 0);
  walking.walk().takeWaiting();
  walking.walk().takeWaiting();
  walking.settle();
  CHECK(walking.slot(1) == "71.4");
  walking.switch_off();
  walking.switch_on();
  CHECK(walking.walk().waiting_words().isEmpty());
}
