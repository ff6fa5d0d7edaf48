// A finger at a bay in the Walk room: the real window, what the register has after each touch.

#include "mobile/models/finding_pen.h"
#include "tests/mobile/window/ruled_site.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr const char* pushes = "SELECT count(*) FROM reading WHERE kind = 24 AND voided_by IS NULL";
constexpr const char* measures =
    "SELECT count(*) FROM reading WHERE kind = 25 AND voided_by IS NULL";
constexpr const char* findings = "SELECT count(*) FROM finding WHERE voided_by IS NULL";
constexpr int chosen_look = 3;  // KeyFace.Chosen

}  // namespace

TEST_CASE("a bay's push, height and gap take twelve taps", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(4);
  give_rules(shown);
  shown.resize(size);
  int taps = 0;
  const auto tap = [&](const QString& key) {
    INFO(key.toStdString());
    REQUIRE(shown.touch(key));
    ++taps;
  };
  shown.touch_drawing(750, 300);
  ++taps;
  REQUIRE(shown.walk().pad() == WalkModel::BayPad);
  CHECK(shown.text_of("baySlot0").isEmpty());
  tap("felt1");
  CHECK(shown.count(pushes) == 1);
  CHECK(shown.find("felt1")->property("look").toInt() == chosen_look);
  tap("measure0Key");
  for (const char* digit : {"digit1", "digit1", "digit0", "digit4"}) tap(digit);
  CHECK(shown.count(measures) == 0);
  tap("measure1Key");
  CHECK(shown.text_of("baySlot0") == "1,104 mm");
  for (const char* digit : {"digit1", "digit1", "digit2"}) tap(digit);
  tap("mainAct");
  CHECK(taps == 1 + 1 + 10);  // the bay; firm; height and 4 digits, gap and 3, the next bay
  CHECK(shown.walk().run()->bay() == 1);
  CHECK(shown.count(measures) == 2);
  CHECK(shown.count(findings) == 1);
  CHECK(shown.text_of("messageBar") == "F-1: Gap 112 mm. The chosen rule says at most 100");
}

TEST_CASE("a bay that moves asks at once what was done", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(4);
  shown.resize(size);
  shown.touch_drawing(750, 300);
  CHECK(shown.touch("felt3"));
  CHECK(shown.walk().finding()->cannot_wait());
  CHECK(shown.touch("measure1"));
  CHECK(shown.touch("keepFinding"));
  CHECK(shown.count("SELECT count(*) FROM finding WHERE what = 11 AND hazard_state = 2") == 1);
  CHECK(shown.walk().pad() == WalkModel::BayPad);
}

TEST_CASE("a bay that gives is tightened by its screws and pushed again", "[mobile][window]") {
  ShownWindow shown(4);
  shown.touch_drawing(750, 300);
  CHECK(shown.find("torquePad") == nullptr);
  CHECK(shown.touch("felt2"));
  CHECK(shown.text_of("bayAsks") == "Gives: tighten its screws, push again");
  CHECK(shown.touch("torquePad"));
  CHECK(shown.touch("wrenchSet"));
  CHECK(shown.touch("held"));
  shown.touch_drawing(750, 300);
  CHECK(shown.touch("felt1"));
  CHECK(shown.find("bayAsks") == nullptr);
  CHECK(shown.touch("mainAct"));
  CHECK(shown.count(findings) == 0);
  CHECK(shown.count(pushes) == 2);
}

TEST_CASE("a gate's three questions are answered by a finger", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(4);
  give_rules(shown);
  shown.resize(size);
  shown.touch_drawing(750, 300);
  CHECK(shown.find("gate2answer1") == nullptr);
  CHECK(shown.touch("mainAct"));
  for (const char* key : {"felt1", "gate2answer1", "gate3answer1", "gate4answer1"}) {
    INFO(key);
    CHECK(shown.touch(key));
  }
  CHECK(shown.count("SELECT count(*) FROM reading WHERE kind = 26") == 1);
  CHECK(shown.count(findings) == 0);
}

TEST_CASE("a keyboard goes to a bay and types into it", "[mobile][window]") {
  ShownWindow shown(4);
  shown.keys("b", 200);
  REQUIRE(shown.walk().pad() == WalkModel::BayPad);
  CHECK(shown.touch("measure0Key"));
  shown.keys("1104\n", 200);
  CHECK(shown.text_of("baySlot0") == "1,104 mm");
  CHECK(shown.find("baySlot1")->property("current").toBool());
}

TEST_CASE("a bay comes back after a power cut with what it had", "[mobile][window]") {
  ShownWindow shown(4);
  shown.touch_drawing(750, 300);
  CHECK(shown.touch("felt1"));
  CHECK(shown.touch("measure0Key"));
  for (const char* digit : {"digit1", "digit1", "digit0", "digit4"}) CHECK(shown.touch(digit));
  CHECK(shown.touch("nextSlot"));
  shown.rooms().place().keep();
  shown.settle();
  shown.cut_power(2, {800, 1280});
  CHECK(shown.walk().pad() == WalkModel::BayPad);
  CHECK(shown.text_of("baySlot0") == "1,104 mm");
  CHECK(shown.text_of("bayFelt") == "firm");
}

TEST_CASE("what a bay's pad could not keep stays on the screen", "[mobile][window]") {
  ShownWindow shown(4);
  shown.touch_drawing(750, 300);
  shown.disk().set_read_only(true);
  CHECK(shown.touch("felt1"));
  CHECK(shown.text_of("messageBar").startsWith("Not kept"));
  CHECK(shown.find("bayFelt")->property("notKept").toBool());
  shown.disk().set_read_only(false);
  CHECK(shown.touch("tryAgain"));
  CHECK(shown.find("bayFelt")->property("kept").toBool());
}

TEST_CASE("a bay of a register that can only be read has no keys to enter with",
          "[mobile][window]") {
  ShownWindow shown(4);
  shown.switch_off();
  shown.disk().set_read_only(true);
  shown.switch_on();
  REQUIRE(shown.touch("putAway"));
  shown.touch_drawing(750, 300);
  CHECK(shown.find("baySlot0") != nullptr);
  for (const char* key : {"felt1", "measure0Key", "digit1", "findingPad", "undo"}) {
    INFO(key);
    CHECK(shown.find(key) == nullptr);
  }
  CHECK(shown.touch("mainAct"));
  CHECK(shown.walk().run()->bay() == 1);
}
