// Undo and Redo of the walk: what they say, where they go, and that they lose nothing.

#include <QSignalSpy>
#include <catch2/catch.hpp>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int posts = 4;

/// Touches as a hand could make them, one after the other, by chance.
class Hand {
 public:
  Hand(Walking& walking, std::uint64_t seed) : walking_(walking), chance_(seed) {}

  void touch() {
    constexpr std::uint64_t kinds = 14;
    switch (below(kinds)) {
      case 0:
      case 1:
        return choose_part();
      case 2:
      case 3:
      case 4:
        return walking_.type(QString::number(60 + below(40)));
      case 5:
        return walking_.coating().digit(static_cast<int>(below(10)));
      case 6:
        return walking_.coating().backspace();
      case 7:
        return walking_.walk().chooseGrade(static_cast<int>(1 + below(5)));
      case 8:
        return walking_.torque().clicked();
      case 9:
        return walking_.torque().moved();
      case 10:
        return walking_.torque().movedAt(static_cast<int>(below(25)));
      case 11:
        return walking_.coating().nextSpot();
      case 12:
        return walking_.walk().nextPart();
      default:
        return post_as_a_whole();
    }
  }

 private:
  std::uint64_t below(std::uint64_t end) { return chance_.next() % end; }

  void choose_part() {
    const int post = static_cast<int>(below(posts));
    walking_.walk().choosePart(below(3) > 0 ? walking_.tee(post) : walking_.cross(post));
    if (walking_.torque().wrench_asked()) walking_.torque().wrenchIsSet();
  }

  void post_as_a_whole() {
    walking_.walk().choosePost(static_cast<int>(below(posts)));
    if (below(2) == 0) return walking_.walk().asLastTime(below(2) == 0);
    walking_.walk().skip(WalkModel::Water, static_cast<int>(below(posts)));
  }

  Walking& walking_;
  SplitMix64 chance_;
};

}  // namespace

TEST_CASE("undo to the beginning leaves what was, redo to the end what came", "[mobile][undo]") {
  const auto seed = GENERATE(range(1, 41));
  INFO("seed " << seed);
  Walking walking(posts, static_cast<std::uint64_t>(seed));
  const std::string before = walking.standing();
  Hand hand(walking, static_cast<std::uint64_t>(seed) * 31 + 7);
  constexpr int touches = 25;
  for (int i = 0; i < touches; ++i) {
    hand.touch();
    walking.settle();
    REQUIRE(*walking.walk().run()->sheet() == walking.read_whole());
  }
  const std::string after = walking.standing();
  int undone = 0;
  for (; !walking.walk().undo_words().isEmpty() && undone < 4 * touches; ++undone) {
    walking.walk().undo();
    walking.settle();
    REQUIRE(*walking.walk().run()->sheet() == walking.read_whole());
  }
  CHECK(walking.standing() == before);
  int redone = 0;
  for (; !walking.walk().redo_words().isEmpty() && redone < 4 * touches; ++redone) {
    walking.walk().redo();
    walking.settle();
    REQUIRE(*walking.walk().run()->sheet() == walking.read_whole());
  }
  CHECK(walking.standing() == after);
  CHECK(redone == undone);
  const WalkPen& pen = walking.walk().pen();
  CHECK(pen.entries_kept() ==
        taken(entries_of_visit(walking.store().reader().tables(), pen.visit())));
}

TEST_CASE("digits that are taken back are what redo puts back", "[mobile][undo]") {
  Walking walking;
  QSignalSpy told(&walking.walk(), &WalkModel::takenBack);
  walking.walk().choosePart(walking.tee(0));
  walking.walk().chooseGrade(2);
  walking.settle();
  walking.walk().undo();
  walking.settle();
  CHECK(told.takeLast() == QVariantList{"grade 2", true});
  CHECK(walking.walk().redo_words() == "grade 2");
  walking.coating().digit(7);
  CHECK(walking.walk().redo_words().isEmpty());  // something new was begun
  walking.coating().digit(4);
  walking.walk().undo();
  CHECK(told.takeLast() == QVariantList{"74", false});
  CHECK(walking.walk().redo_words() == "74");
  CHECK(walking.slot(0).isEmpty());
  walking.walk().redo();
  CHECK(walking.slot(0) == "74");
  walking.coating().nextSlot();
  walking.settle();
  walking.walk().undo();
  CHECK(told.takeLast() == QVariantList{"74", false});  // a draft leaves nothing in the log
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 20") == 2 * posts + 1);
}

TEST_CASE("what never reached the disk is not said to stay in the log", "[mobile][undo]") {
  Walking walking;
  QSignalSpy told(&walking.walk(), &WalkModel::takenBack);
  walking.walk().choosePart(walking.tee(0));
  walking.disk().set_read_only(true);
  walking.walk().chooseGrade(2);
  walking.settle();
  walking.walk().undo();
  CHECK(told.takeLast() == QVariantList{"grade 2", false});
}

TEST_CASE("undo goes back to where it changes something", "[mobile][undo]") {
  Walking walking;
  walking.walk().asLastTime(true);
  walking.settle();
  REQUIRE(walking.walk().post_label() == "119");
  walking.walk().undo();
  CHECK(walking.walk().post_label() == "118");
  walking.settle();
  walking.walk().choosePost(1);
  walking.walk().skip(WalkModel::Water, 2);
  walking.settle();
  REQUIRE(walking.walk().post_label() == "121");
  walking.walk().undo();
  CHECK(walking.walk().post_label() == "119");
  walking.settle();
  walking.walk().choosePart(walking.tee(0));
  walking.type("74");
  walking.walk().undo();
  walking.settle();
  walking.walk().choosePart(walking.tee(3));
  walking.walk().redo();  // typed on another part: there it is put back
  CHECK(walking.walk().run()->part() == walking.tee(0));
  CHECK(walking.slot(0) == "74");
}

TEST_CASE("undo and redo take the quick way back", "[mobile][undo]") {
  Walking walking;
  QList<bool> quick;
  RunPicture* run = walking.walk().run();
  QObject::connect(run, &RunPicture::chosenChanged, run, [&] { quick << run->taking_back(); });
  walking.walk().asLastTime(true);
  walking.settle();
  CHECK(quick == QList<bool>{false});
  walking.walk().undo();
  walking.settle();
  walking.walk().redo();
  walking.settle();
  walking.walk().choosePost(2);
  REQUIRE(quick.size() >= 3);
  CHECK(quick[1]);
  CHECK_FALSE(quick.last());
}
