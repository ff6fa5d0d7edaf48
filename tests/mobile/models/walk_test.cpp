// A walk by the model's own touches: what a person sees after each, and what the register has.

#include <QDateTime>
#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr std::int64_t hour_ms = 60LL * 60 * 1000;

void at_torque(Walking& walking, int post) {
  walking.walk().choosePart(walking.tee(post));
  walking.walk().set_pad(WalkModel::TorquePad);
  if (walking.torque().wrench_asked()) walking.torque().wrenchIsSet();
}

}  // namespace

TEST_CASE("a walk begins at the first open post and says where it is", "[mobile][walk]") {
  Walking walking;
  CHECK(walking.walk().site_name() == "North Mole");
  CHECK(walking.walk().run_name() == "Ferry Slip");
  CHECK(walking.walk().post_label() == "118");
  CHECK(walking.walk().next_post_label() == "119");
  CHECK(walking.walk().back_post_label().isEmpty());
  CHECK(walking.walk().post_about() == "2 parts, all grade 1 or 2 last time");
  CHECK(walking.walk().pushed_means() == "bay 118 to 119 firm too · on to 119");
  CHECK(walking.walk().message().isEmpty());
  CHECK(walking.walk().writable());
  walking.walk().choosePart(walking.tee(1));
  CHECK(walking.walk().part_title().startsWith("119 · "));
  CHECK(walking.walk().last_grade() == 1);
  CHECK(walking.walk().coating_offered());
  CHECK(walking.walk().torque_offered());
}

TEST_CASE("a time zone that this machine does not know is said at the start", "[mobile][walk]") {
  Walking walking;
  walking.switch_off();
  const Uuid& organisation = walking.site().organisation;
  Entry set{organisation, 2, organisation, walking.site().person, {}, {}};
  set.body.set(1, cbor::Array{cbor::Array{4, "Atlantic/Skerrymouth", cbor::Array{}}});
  walking.write_down({set});
  walking.switch_on();
  CHECK(walking.walk().message().startsWith(
      "Days are those of UTC: this machine does not know the time zone Atlantic/Skerrymouth"));
  CHECK(walking.walk().writable());
}

TEST_CASE("nothing is opened before the first entry, and one visit by it", "[mobile][walk]") {
  Walking walking;
  CHECK(walking.count("SELECT count(*) FROM visit") == 1);
  walking.walk().choosePart(walking.tee(0));
  walking.walk().chooseGrade(2);
  walking.walk().chooseGrade(2);  // the second touch of a trembling hand
  walking.settle();
  walking.walk().choosePart(walking.cross(0));
  walking.walk().chooseGrade(1);
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM visit") == 2);
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 20") == 8 + 2);
  CHECK(walking.walk().grade_now() == 1);
  CHECK(walking.walk().pen().entries_kept() == 2);
}

TEST_CASE("switched off and on, the same day goes on in the same visit", "[mobile][walk]") {
  Walking walking;
  walking.walk().choosePart(walking.tee(0));
  walking.walk().chooseGrade(2);
  walking.settle();
  walking.switch_off();
  walking.clock().move_on(3 * hour_ms);
  walking.switch_on();
  CHECK(walking.walk().pen().entries_kept() == 1);
  walking.walk().choosePart(walking.tee(0));
  CHECK(walking.walk().grade_now() == 2);
  walking.walk().chooseGrade(3);
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM visit") == 2);
  walking.switch_off();
  walking.clock().move_on(20 * hour_ms);
  walking.switch_on();
  walking.walk().choosePart(walking.tee(0));
  CHECK(walking.walk().grade_now() == 0);
  CHECK(walking.walk().last_grade() == 3);
}

TEST_CASE("a click is a bound, and the pad goes on to the next screw", "[mobile][walk]") {
  Walking walking;
  walking.walk().choosePart(walking.tee(0));
  walking.torque().clicked();  // nobody said yet what the wrench is set at
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 22") == 0);
  at_torque(walking, 0);
  CHECK(walking.torque().title() == "Screw 1 of 3, register says 24 N·m");
  walking.torque().clicked();
  walking.settle();
  CHECK(walking.torque().title() == "Screw 2 of 3, register says 24 N·m");
  walking.torque().seized();
  walking.settle();
  walking.torque().noScrew();
  walking.settle();
  CHECK(walking.walk().run()->part() == walking.cross(0));
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 22 AND censoring = 2 AND "
                      "v1 = 240 AND wrench_set_tenth_nm = 240") == 1);
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 22 AND censoring = 4") == 2);
  walking.switch_off();
  walking.switch_on();
  walking.walk().choosePart(walking.tee(1));
  CHECK_FALSE(walking.torque().wrench_asked());  // said once for this wrench and day
  walking.walk().choosePart(walking.tee(0));
  CHECK(walking.torque().done_words() == "Kept: clicked at 24");
}

TEST_CASE("a screw that moved is about where the slide stands", "[mobile][walk]") {
  Walking walking;
  at_torque(walking, 0);
  walking.torque().moved();
  CHECK(walking.torque().moved_about() == -1);
  walking.torque().movedAt(15);
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM draft") == 1);
  walking.torque().nextScrew();
  walking.settle();
  CHECK(walking.torque().title().startsWith("Screw 2"));
  walking.torque().moved();  // and no mark: under what the wrench is set at
  walking.torque().nextScrew();
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
  CHECK(walking.count("SELECT v1 FROM reading WHERE kind = 22 AND censoring = 1") == 150);
  CHECK(walking.count("SELECT v1 FROM reading WHERE kind = 22 AND censoring = 3") == 240);
}

TEST_CASE("as last time grades every part of the post and goes on", "[mobile][walk]") {
  Walking walking;
  CHECK(walking.walk().as_last_time_offered());
  walking.walk().asLastTime(true);
  walking.walk().asLastTime(true);  // before the answer: nothing
  walking.settle();
  CHECK(walking.walk().post_label() == "119");
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 20 AND carried = 1 AND how = 1") ==
        2);
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 24 AND what = 1") == 1);
  walking.walk().choosePart(walking.tee(1));
  walking.walk().chooseGrade(3);
  walking.settle();
  walking.walk().choosePost(1);
  CHECK(walking.walk().as_last_time_offered());
  walking.walk().asLastTime(false);
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 20 AND carried = 1") == 3);
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 24 AND what = 4") == 1);
  walking.walk().choosePart(walking.tee(1));
  CHECK(walking.walk().grade_now() == 3);
}

TEST_CASE("grades are carried no oftener than the rules allow", "[mobile][walk]") {
  Walking walking;
  const auto next_year = [&] {
    walking.switch_off();
    walking.clock().move_on(365 * 24 * hour_ms);
    walking.switch_on();
  };
  for (int year = 0; year < 2; ++year) {
    CHECK(walking.walk().as_last_time_offered());
    walking.walk().asLastTime(true);
    walking.settle();
    next_year();
  }
  CHECK(walking.walk().why_not_as_last_time() == "Look again: as last time 2 times running");
  walking.walk().lookAgain();
  CHECK(walking.walk().run()->part() == walking.tee(0));
  CHECK(walking.walk().pad() == WalkModel::GradePad);
  walking.walk().chooseGrade(3);
  walking.settle();
  next_year();
  CHECK(walking.walk().why_not_as_last_time() == "Look again: grade 3 last time");
}

TEST_CASE("a stretch is skipped with its reason and stays due", "[mobile][walk]") {
  Walking walking;
  walking.walk().choosePost(1);
  walking.walk().skip(WalkModel::Water, 2);
  walking.settle();
  CHECK(walking.walk().post_label() == "121");
  CHECK(walking.count("SELECT count(*) FROM not_reached WHERE reason = 2") == 2);
  CHECK(walking.walk().run()->sheet()->posts[1].state == PostState::skipped);
  CHECK(walking.walk().run()->sheet()->posts[3].state == PostState::open);
  walking.walk().undo();
  walking.settle();
  CHECK(walking.walk().run()->sheet()->posts[1].state == PostState::open);
}

TEST_CASE("what could not be written opens its own visit when it is sent again", "[mobile][walk]") {
  Walking walking;
  walking.walk().choosePart(walking.tee(0));
  walking.disk().set_read_only(true);
  walking.walk().chooseGrade(2);
  walking.settle();
  CHECK(walking.walk().not_kept());
  const Uuid first = walking.walk().pen().visit();
  REQUIRE(walking.walk().pen().choose_person(id_of(10, 2)));
  REQUIRE(walking.walk().pen().visit() != first);
  walking.disk().set_read_only(false);
  walking.walk().tryAgain();
  walking.settle();
  CHECK_FALSE(walking.walk().not_kept());
  CHECK(walking.count("SELECT count(*) FROM visit") == 2);
  CHECK(walking.count("SELECT count(*) FROM reading AS r JOIN visit AS v ON v.record = r.visit "
                      "WHERE r.kind = 20 AND r.v1 = 2") == 1);
}

TEST_CASE("a pad that makes no sense on a part does not open", "[mobile][walk]") {
  Walking walking;
  walking.switch_off();
  const Uuid plain = id_of(7, 900);  // of no known type: nobody says how tight its screws are
  walking.write_down({created(walking.site().site, plain, 7, walking.site().posts[0],
                              {{1, 5}, {3, cbor::Array{0, 800}}, {4, 3}})});
  walking.switch_on();
  walking.walk().openPad(WalkModel::GradePad);  // of a post: on its first part
  CHECK(walking.walk().part_chosen());
  const auto sheet = walking.walk().run()->sheet();
  const auto at = std::find_if(sheet->parts.begin(), sheet->parts.end(),
                               [&](const SheetPart& part) { return part.id == plain; });
  REQUIRE(at != sheet->parts.end());
  walking.walk().choosePart(static_cast<int>(at - sheet->parts.begin()));
  walking.walk().openPad(WalkModel::TorquePad);
  CHECK(walking.walk().pad() == WalkModel::GradePad);
  walking.walk().choosePart(walking.tee(0));
  walking.walk().openPad(WalkModel::TorquePad);
  CHECK(walking.walk().pad() == WalkModel::TorquePad);
}

TEST_CASE("what was seen is not skipped with the stretch around it", "[mobile][walk]") {
  Walking walking;
  CHECK(walking.walk().run_counts() == "0 seen · 0 skipped · 4 open");
  walking.walk().choosePost(1);
  walking.walk().asLastTime(true);
  walking.settle();
  walking.walk().choosePost(0);
  walking.walk().skip(WalkModel::Water, 2);
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM not_reached") == 2);
  CHECK(walking.walk().run()->sheet()->posts[1].state == PostState::seen);
  CHECK(walking.walk().run_counts() == "1 seen · 2 skipped · 1 open");
  walking.walk().choosePost(1);
  walking.walk().skip(WalkModel::Water, 1);
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM not_reached") == 2);
  CHECK(walking.walk().message() == "Nothing was skipped: every post there is seen or struck.");
}

TEST_CASE("the title block says when something was last saved", "[mobile][walk]") {
  Walking walking;
  CHECK(walking.walk().kept_caption() == "Kept here");
  const auto now = [&] {
    const QDateTime at = QDateTime::fromMSecsSinceEpoch(walking.clock().now().ms, Qt::UTC);
    return "Saved " + at.toString("HH:mm:ss");
  };
  walking.walk().choosePart(walking.tee(0));
  walking.walk().chooseGrade(2);
  walking.settle();
  const QString first = now();
  CHECK(walking.walk().kept_caption() == first);
  walking.clock().move_on(61'000);
  CHECK(walking.walk().kept_caption() == first);
  walking.walk().openPad(WalkModel::CoatingPad);
  walking.type("74");
  walking.settle();
  CHECK(walking.walk().kept_caption() == now());
  CHECK(now() != first);
}
TEST_CASE("a torque of the register is said to its tenth", "[mobile][walk]") {
  Walking walking;
  walking.switch_off();
  const WalkedSite& site = walking.site();
  const Uuid type = id_of(8, 3);
  const Uuid part = id_of(7, 901);
  walking.write_down({created(site.organisation, type, 8, site.organisation,
                              {{1, 1}, {2, 1}, {3, 1}, {6, 135}, {7, 92}, {12, 1}}),
                      created(site.site, part, 7, site.posts[0],
                              {{1, 5}, {2, type}, {3, cbor::Array{0, 900}}, {4, 2}})});
  walking.switch_on();
  const auto sheet = walking.walk().run()->sheet();
  const auto at = std::find_if(sheet->parts.begin(), sheet->parts.end(),
                               [&](const SheetPart& own) { return own.id == part; });
  REQUIRE(at != sheet->parts.end());
  walking.walk().choosePart(static_cast<int>(at - sheet->parts.begin()));
  walking.walk().openPad(WalkModel::TorquePad);
  TorqueCheck& torque = walking.torque();
  CHECK(torque.wrench_question() == "Wrench W7 set at 13.5 N·m");
  torque.wrenchIsSet();
  CHECK(torque.title() == "Screw 1 of 2, register says 13.5 N·m");
  CHECK(torque.clicked_words() == "Clicked at 13.5, did not move");
  CHECK(torque.clicked_second() == "held at least 13.5 N·m");
  CHECK(torque.moved_second() == "then tight again at 13.5");
  CHECK(torque.target() == 13.5);
  CHECK(torque.lowest() == 9.2);
  torque.clicked();
  CHECK(walking.walk().undo_words() == "clicked at 13.5");
  walking.settle();
  torque.moved();
  torque.movedAt(13.5);
  CHECK(torque.moved_about() == 13.5);
  CHECK(walking.walk().undo_words() == "moved at 13.5");
  torque.close();
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 22 AND v1 = 135") == 2);
}
