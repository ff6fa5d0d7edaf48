// A finger in the Walk room: the real window, what the register has after each touch.

#include <QEventLoop>
#include <QSignalSpy>
#include <QTimer>

#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr const char* sets = "SELECT count(*) FROM reading WHERE kind = 21 AND voided_by IS NULL";
constexpr const char* grades = "SELECT count(*) FROM reading WHERE kind = 20";
constexpr const char* torques = "SELECT count(*) FROM reading WHERE kind = 22";
constexpr const char* drafts = "SELECT count(*) FROM draft";
constexpr int posts = 4;

/// The tee of the first post, with the Coating pad up.
void at_coating(ShownWindow& shown) {
  shown.touch_drawing(0, 1100);
  REQUIRE(shown.walk().part_title().startsWith("118"));
  REQUIRE(shown.touch("coatingPad"));
  REQUIRE(shown.find("slot0") != nullptr);
}

}  // namespace

TEST_CASE("a finger gives a grade, five readings and a torque", "[mobile][window]") {
  ShownWindow shown(posts);
  shown.touch_drawing(0, 1100);
  CHECK(shown.walk().part_chosen());
  CHECK(shown.touch("grade2"));
  CHECK(shown.count(grades) == 2 * posts + 1);
  CHECK(shown.walk().grade_now() == 2);

  CHECK(shown.touch("coatingPad"));
  for (const char* reading : {"74", "71", "76", "73"}) shown.type(reading);
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.find("slot3")->property("kept").toBool());
  CHECK(shown.count(sets) == posts);
  CHECK(shown.count(drafts) == 1);
  shown.type("75");
  CHECK(shown.count(sets) == posts + 1);
  CHECK(shown.count(drafts) == 0);

  shown.touch_drawing(0, 1100);
  CHECK(shown.touch("torquePad"));
  CHECK(shown.touch("wrenchSet"));
  CHECK(shown.touch("held"));
  CHECK(shown.count(torques) == 1);
  CHECK(shown.touch("moved"));
  CHECK(shown.touch("torqueScale"));
  CHECK(shown.touch("mainAct"));
  CHECK(shown.touch("seized"));
  CHECK(shown.count(torques) == 3);
}

TEST_CASE("a walk that nobody touches draws no frame", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  shown.type("74");
  const auto frames_in = [&shown](int ms) {
    const QSignalSpy frames(&shown.window(), &QQuickWindow::frameSwapped);
    QEventLoop loop;
    QTimer::singleShot(ms, &loop, &QEventLoop::quit);
    loop.exec();
    return frames.size();
  };
  frames_in(1000);  // what the touch set going, and what was reckoned after the first frame
  CHECK(frames_in(1000) == 0);
  REQUIRE(shown.touch_only("digit7"));
  CHECK(frames_in(300) > 0);
}

TEST_CASE("each face of a part has a set of its own", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  shown.type("74");
  const QString first = shown.walk().coating()->spot_words();
  CHECK(shown.touch("nextSpot"));
  CHECK(shown.walk().coating()->spot_words() != first);
  CHECK(shown.text_of("slot0").isEmpty());
  shown.type("61");
  CHECK(shown.touch("nextSpot"));
  CHECK(shown.walk().coating()->spot_words() == first);
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.count(sets) == posts + 2);
}

TEST_CASE("turned in the middle of a set, the set is there and goes on", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  for (const char* reading : {"74", "71", "76"}) shown.type(reading);
  CHECK(shown.touch("digit7"));
  shown.resize({800, 1280});
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.text_of("slot2") == "76");
  CHECK(shown.text_of("slot3") == "7");
  CHECK(shown.touch("digit3"));
  CHECK(shown.touch("nextSlot"));
  CHECK(shown.text_of("slot3") == "73");
  shown.resize({1280, 800});
  shown.type("75");
  CHECK(shown.count(sets) == posts + 1);
}

TEST_CASE("ten touches at once are ten touches", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  for (const char* key : {"digit7", "digit4", "nextSlot", "digit7", "digit1", "nextSlot", "digit7",
                          "digit6", "nextSlot", "digit8"})
    CHECK(shown.touch_only(key));
  shown.settle();
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.text_of("slot1") == "71");
  CHECK(shown.text_of("slot2") == "76");
  CHECK(shown.text_of("slot3") == "8");
  CHECK(shown.find("slot2")->property("kept").toBool());
  CHECK_FALSE(shown.find("slot3")->property("kept").toBool());
}

TEST_CASE("a gauge that types fills the slot, whatever has the focus", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  shown.find("mainAct")->forceActiveFocus();
  for (const char* reading : {"74\n", "71\n", "76\n", "73\n"}) shown.keys(reading, 2);
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.text_of("slot3") == "73");
  CHECK(shown.count(sets) == posts);
  shown.keys("75\n", 29);
  CHECK(shown.count(sets) == posts + 1);
}

TEST_CASE("a burst while no slot waits is said and waits for a touch", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.find("slot0") == nullptr);
  shown.keys("76\n", 2);
  CHECK(shown.text_of("messageBar").contains("76 µm"));
  CHECK(shown.text_of("gaugeCell").contains("76 µm"));
  CHECK(shown.count(drafts) == 0);
  at_coating(shown);
  CHECK(shown.text_of("slot0").isEmpty());
  CHECK(shown.touch("gaugeCell"));
  CHECK(shown.text_of("slot0") == "76");
  CHECK(shown.find("messageBar") == nullptr);
  CHECK(shown.count(drafts) == 1);
}

TEST_CASE("rust under the probe is said, kept, and counts as at most", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(posts);
  shown.resize(size);
  at_coating(shown);
  const auto chosen = [&](const char* key) {
    const QQuickItem* item = shown.find(key);
    REQUIRE(item != nullptr);
    return item->property("look").toInt() == 3;  // OctagonKey.Chosen
  };
  CHECK(chosen("under1"));  // last visit's grade says bright
  CHECK(shown.touch("under3"));
  CHECK(chosen("under3"));
  CHECK_FALSE(chosen("under1"));
  CHECK(shown.find("under3")->property("secondLine").toString() == "at most this");
  CHECK(shown.walk().coating()->under_probe_words() ==
        "A gauge on rust reads rust: counted as at most this");
  shown.type("74");
  CHECK(shown.touch("mainAct"));  // the next part: the set is a record
  CHECK(shown.count("SELECT count(*) FROM reading WHERE kind = 21 AND under_probe = 3") == 1);
}

TEST_CASE("digits of a hand are keys, not a gauge", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  shown.keys("74\n", 30);
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.walk().waiting_words().isEmpty());
  CHECK(shown.touch("gradePad"));
  shown.keys("3 ", 200);  // no gauge types a space: the digit before it was a person's
  CHECK(shown.count(grades) >= 2 * posts + 1);
  CHECK(shown.walk().waiting_words().isEmpty());
}

TEST_CASE("a power cut in the middle of a set loses no reading", "[mobile][window]") {
  const std::uint64_t seed = GENERATE(1, 2, 3);
  INFO("seed " << seed);
  ShownWindow shown(posts);
  at_coating(shown);
  for (const char* reading : {"74", "71", "76"}) shown.type(reading);
  shown.rooms().place().keep();
  shown.settle();
  shown.cut_power(seed, {800, 1280});
  CHECK(shown.walk().part_title().startsWith("118"));
  CHECK(shown.walk().pad() == WalkModel::CoatingPad);
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.text_of("slot1") == "71");
  CHECK(shown.text_of("slot2") == "76");
  CHECK(shown.find("slot2")->property("kept").toBool());
}

TEST_CASE("what was not kept stays on the screen until it is", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  shown.type("74");
  shown.disk().set_read_only(true);
  shown.type("71");
  CHECK(shown.text_of("messageBar").startsWith("Not kept"));
  CHECK(shown.text_of("slot1") == "71");
  CHECK(shown.find("slot1")->property("notKept").toBool());
  shown.disk().set_read_only(false);
  CHECK(shown.touch("tryAgain"));
  CHECK(shown.find("messageBar") == nullptr);
  CHECK(shown.find("slot1")->property("kept").toBool());
}

TEST_CASE("a post as last time is one touch, and one takes it back", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.touch("pushed"));
  CHECK(shown.walk().post_label() == "119");
  CHECK(shown.count("SELECT count(*) FROM reading WHERE carried = 1 AND voided_by IS NULL") == 2);
  CHECK(shown.touch("undo"));
  CHECK(shown.count("SELECT count(*) FROM reading WHERE carried = 1 AND voided_by IS NULL") == 0);
}

TEST_CASE("redo is offered until something new is begun", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  shown.type("74");
  CHECK(shown.touch("undo"));
  CHECK(shown.find("barAct") != nullptr);
  CHECK(shown.touch("digit7"));
  CHECK(shown.find("barAct") == nullptr);
  CHECK(shown.touch("undo"));
  CHECK(shown.touch("barAct"));
  CHECK(shown.text_of("slot0") == "7");
}

TEST_CASE("what lies under a note is not touched through it", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  shown.type("74");
  CHECK(shown.touch("strip"));
  CHECK(shown.walk().part_title().startsWith("118 · "));
  CHECK(shown.walk().part_chosen());
  QSignalSpy asked(&shown.walk(), &WalkModel::forecastWanted);
  CHECK(shown.touch("noteName"));
  CHECK(asked.count() == 1);
}

TEST_CASE("a palm on the drawing lets the keys rest", "[mobile][window]") {
  ShownWindow shown(posts);
  at_coating(shown);
  CHECK(shown.find("restingPad") == nullptr);
  shown.lay_palm_on_drawing();
  CHECK(shown.find("restingPad") != nullptr);
  CHECK(shown.touch_only("digit7"));  // at once: the rest is short
  shown.settle();
  CHECK(shown.text_of("slot0").isEmpty());
}

TEST_CASE("a stretch is skipped: skip, drag to its end, why", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.touch("skip"));
  CHECK(shown.touch("runLine"));  // its middle, the second or third post
  CHECK(shown.touch("reason2"));
  const auto skipped = shown.count("SELECT count(*) FROM not_reached WHERE reason = 2");
  CHECK(skipped >= 2);
  CHECK(skipped <= 3);
  CHECK(shown.find("reason2") == nullptr);
}

TEST_CASE("while a stretch is skipped no other post is chosen", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.touch("skip"));
  shown.touch_drawing(1500, 1100);
  CHECK(shown.walk().post_label() == "118");
  shown.keys("1 g", 200);
  CHECK(shown.walk().post_label() == "118");
  CHECK_FALSE(shown.walk().part_chosen());
  CHECK(shown.touch("reason2"));  // the stretch ends at the post that was touched
  CHECK(shown.count("SELECT count(*) FROM not_reached WHERE reason = 2") == 2);
}

TEST_CASE("another room ends the skipping", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.touch("skip"));
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.touch("walkTag"));
  CHECK(shown.find("reason2") == nullptr);
  CHECK(shown.find("pushed") != nullptr);
}

TEST_CASE("a key for a pad opens it only where it is offered", "[mobile][window]") {
  ShownWindow shown(posts);
  shown.keys("g", 200);  // at a post: on its first part
  CHECK(shown.walk().part_chosen());
  CHECK(shown.find("grade2") != nullptr);
  shown.keys("t", 200);
  CHECK(shown.find("wrenchSet") != nullptr);
}

TEST_CASE("a register that can only be read has no keys to enter with", "[mobile][window]") {
  ShownWindow shown(posts);
  shown.switch_off();
  shown.disk().set_read_only(true);
  shown.switch_on();
  CHECK_FALSE(shown.walk().writable());
  CHECK(shown.walk().kept_caption() == "Read only");
  REQUIRE(shown.touch("putAway"));  // why it can only be read
  for (const char* key : {"pushed", "looked", "lookAgain", "skip", "undo", "coatingPad"}) {
    INFO(key);
    CHECK(shown.find(key) == nullptr);
  }
  CHECK(shown.find("on") != nullptr);
  shown.touch_drawing(0, 1100);
  CHECK(shown.walk().part_title().startsWith("118 · "));
  for (const char* key : {"grade2", "digit7", "held", "wrenchSet", "undo", "coatingPad"}) {
    INFO(key);
    CHECK(shown.find(key) == nullptr);
  }
  shown.keys("gct12 ", 200);
  CHECK(shown.find("messageBar") == nullptr);
  shown.keys("76\n", 2);
  CHECK_FALSE(shown.text_of("messageBar").contains("Not kept"));
  CHECK(shown.walk().waiting_words().isEmpty());
  CHECK(shown.touch("putAway"));
  CHECK(shown.touch("mainAct"));
  CHECK(shown.walk().part_chosen());
}

TEST_CASE("a place that could not be remembered is said, and remembered later",
          "[mobile][window]") {
  ShownWindow shown(posts);
  shown.disk().set_read_only(true);
  shown.walk().choosePart(3);
  const QString title = shown.walk().part_title();
  shown.rooms().place().keep();
  shown.settle();
  CHECK(shown.walk().kept_caption() == "Kept, but not where you are");
  shown.disk().set_read_only(false);
  shown.rooms().place().keep();
  shown.settle();
  CHECK(shown.walk().kept_caption() == "Kept here");
  shown.cut_power(1);
  CHECK(shown.walk().part_title() == title);
}

TEST_CASE("a dark screen for the left hand is one again after a restart", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.touch("gaugeCell"));
  CHECK(shown.touch("handsKey"));
  CHECK(shown.touch("theme1"));
  CHECK(shown.touch("hand0"));
  CHECK(shown.find("leaveHands")->mapToScene({}).x() < 640);
  shown.cut_power(1);
  CHECK(shown.window().property("color").value<QColor>().lightness() < 64);
  CHECK(shown.find("skip")->mapToScene({}).x() < 640);
}

TEST_CASE("less motion and no sounds are remembered", "[mobile][window]") {
  ShownWindow shown(posts);
  Tokens& tokens = shown.tokens();
  tokens.set_less_motion(false);
  tokens.set_sound_is_there(true);
  CHECK(shown.touch("runCell"));
  CHECK(shown.touch("motion1"));
  CHECK(shown.touch("sound1"));
  CHECK(tokens.less_motion());
  CHECK_FALSE(tokens.sounds());
  CHECK(tokens.part_glide_time() == 0);
  CHECK(shown.count("SELECT value FROM setting WHERE name = 'screen_less_motion'") == 1);
  shown.cut_power(1);
  CHECK_FALSE(shown.tokens().sounds());
}

TEST_CASE("one part is a part, two are parts", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.walk().post_about() == "2 parts, all grade 1 or 2 last time");
  shown.touch_drawing(0, 1100);
  CHECK(shown.touch("grade1"));
  CHECK(shown.walk().kept_words() == "1 entry");
}

TEST_CASE("another person and another gauge are chosen at the title block", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.touch("runCell"));
  CHECK(shown.text_of("person0") == "MO");
  CHECK(shown.text_of("gauge0") == "A2");
  CHECK(shown.text_of("wrench0") == "W7");
  CHECK(shown.touch("leaveHands"));
  CHECK(shown.find("person0") == nullptr);
}
