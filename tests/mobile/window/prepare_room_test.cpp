// A finger prepares a day: from the site's band to the tape, and out to the walk with the parts
// marked; also by the keyboard and a screen reader.

#include <QAccessible>
#include <QAccessibleActionInterface>

#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int walk_room = 1;

void open_prepare(ShownWindow& shown) {
  REQUIRE(shown.touch("sitesTag"));
  REQUIRE(shown.touch("prepareDay0"));
  REQUIRE(shown.find("prepareRoom") != nullptr);
  REQUIRE(shown.rooms().prepare().known());
}

void press_key(ShownWindow& shown, Qt::Key key) {
  QTest::keyClick(&shown.window(), key);
  shown.settle();
}

}  // namespace

TEST_CASE("a finger slides the time, and the walk marks what it chose", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  ShownWindow shown(6, folder.path() / "register");
  shown.resize(size);
  open_prepare(shown);
  PrepareModel& prepare = shown.rooms().prepare();
  CHECK(prepare.minutes() > 0);
  CHECK(shown.drag("timeTape", {{0.7, 0.5}, {0.4, 0.5}, {0.001, 0.5}}));
  CHECK(prepare.minutes() == 0);
  CHECK(prepare.chosen().parts.empty());
  CHECK(shown.text_of("leftOut").startsWith("Left out: 6 posts to look at, "));
  CHECK(shown.drag("timeTape", {{0.001, 0.5}, {0.5, 0.5}}));
  CHECK(prepare.minutes() == 240);
  const std::size_t chosen = prepare.chosen().parts.size();
  CHECK(chosen > 0);
  CHECK(shown.touch("carry0"));
  CHECK(prepare.chosen().carried.empty());
  CHECK(shown.touch("walkIt"));
  CHECK(shown.window().property("place").toInt() == walk_room);
  CHECK(shown.walk().run()->marked().size() == chosen);
  CHECK(shown.walk().run_counts().endsWith(QString(" · %1 chosen to measure").arg(chosen)));
  shown.switch_off();
  shown.switch_on(size);
  CHECK(shown.walk().run()->marked().size() == chosen);
}

TEST_CASE("a line leads to its first part, and a run to its walk", "[mobile][window]") {
  const Folder folder;
  ShownWindow shown(6, folder.path() / "register");
  open_prepare(shown);
  CHECK(shown.touch("dayLine1"));
  CHECK(shown.window().property("place").toInt() == walk_room);
  CHECK(shown.walk().part_chosen());
  open_prepare(shown);
  QQuickItem* run = shown.find("run");
  REQUIRE(run != nullptr);
  QAccessible::queryAccessibleInterface(run)->actionInterface()->doAction(
      QAccessibleActionInterface::pressAction());
  shown.settle();
  CHECK(shown.window().property("place").toInt() == walk_room);
}

TEST_CASE("keys and a screen reader move the time, and Esc goes back to the sites",
          "[mobile][window]") {
  const Folder folder;
  ShownWindow shown(6, folder.path() / "register");
  open_prepare(shown);
  PrepareModel& prepare = shown.rooms().prepare();
  QQuickItem* tape = shown.find("tape");
  REQUIRE(tape != nullptr);
  tape->forceActiveFocus();
  prepare.set_minutes(330);
  press_key(shown, Qt::Key_Left);
  CHECK(prepare.minutes() == 325);
  press_key(shown, Qt::Key_PageUp);
  CHECK(prepare.minutes() == 355);
  press_key(shown, Qt::Key_Home);
  CHECK(prepare.minutes() == 0);
  press_key(shown, Qt::Key_End);
  CHECK(prepare.minutes() == 480);
  QAccessibleInterface* face = QAccessible::queryAccessibleInterface(tape);
  REQUIRE(face != nullptr);
  CHECK(face->role() == QAccessible::Slider);
  CHECK(face->text(QAccessible::Name) == "Time on site, 8 h");
  REQUIRE(face->actionInterface() != nullptr);
  face->actionInterface()->doAction(QAccessibleActionInterface::decreaseAction());
  CHECK(prepare.minutes() == 475);
  press_key(shown, Qt::Key_Escape);
  CHECK(shown.find("prepareRoom") == nullptr);
  CHECK(shown.find("sitesRoom") != nullptr);
}
