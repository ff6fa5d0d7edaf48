// What a screen reader is told of the keys, tags, cells and slots of the Walk room, and that it can
// press them.

#include <QAccessible>
#include <QAccessibleActionInterface>
#include <QSignalSpy>

#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

QAccessibleInterface& told(ShownWindow& shown, const char* name) {
  INFO(name);
  QQuickItem* item = shown.find(name);
  REQUIRE(item != nullptr);
  QAccessibleInterface* face = QAccessible::queryAccessibleInterface(item);
  REQUIRE(face != nullptr);
  return *face;
}

void press(ShownWindow& shown, const char* name) {
  QAccessibleActionInterface* acts = told(shown, name).actionInterface();
  REQUIRE(acts != nullptr);
  REQUIRE(acts->actionNames().contains(QAccessibleActionInterface::pressAction()));
  acts->doAction(QAccessibleActionInterface::pressAction());
  shown.settle();
}

}  // namespace

TEST_CASE("a screen reader is told what each key, tag, cell and slot is", "[mobile][window]") {
  ShownWindow shown;
  shown.touch_drawing(0, 1100);
  REQUIRE(shown.touch("coatingPad"));
  CHECK(told(shown, "digit7").role() == QAccessible::Button);
  CHECK(told(shown, "digit7").text(QAccessible::Name) == "7");
  CHECK(told(shown, "digit7").state().focusable);
  CHECK(told(shown, "walkTag").role() == QAccessible::PageTab);
  CHECK(told(shown, "walkTag").text(QAccessible::Name) == "Walk");
  CHECK(told(shown, "gaugeCell").role() == QAccessible::Button);
  CHECK(told(shown, "keptCell").role() == QAccessible::StaticText);
  CHECK(told(shown, "slot0").role() == QAccessible::EditableText);
  CHECK(told(shown, "slot0").text(QAccessible::Name).startsWith("Coating reading 1 of 5, empty"));
  REQUIRE(shown.touch("gradePad"));
  CHECK(told(shown, "grade2").role() == QAccessible::Button);
  CHECK(told(shown, "grade2").text(QAccessible::Name).startsWith("Grade 2, "));
}

TEST_CASE("a screen reader presses what a finger would", "[mobile][window]") {
  ShownWindow shown;
  shown.touch_drawing(0, 1100);
  press(shown, "coatingPad");
  REQUIRE(shown.find("slot0") != nullptr);
  press(shown, "digit7");
  press(shown, "digit4");
  CHECK(shown.text_of("slot0") == "74");
  press(shown, "slot3");
  CHECK(shown.find("slot3")->property("current").toBool());
  press(shown, "gradePad");
  press(shown, "grade2");
  CHECK(shown.walk().grade_now() == 2);
  press(shown, "sitesTag");
  CHECK(shown.find("walkRoom") == nullptr);
}

TEST_CASE("a key that cannot be used is not pressed by a screen reader", "[mobile][window]") {
  ShownWindow shown;
  shown.touch_drawing(0, 1100);
  QQuickItem* key = shown.find("mainAct");
  REQUIRE(key != nullptr);
  QAccessibleInterface& face = told(shown, "mainAct");
  const auto pressed = [&] {
    const QSignalSpy clicks(key, SIGNAL(clicked()));
    face.actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    return clicks.count();
  };
  key->setEnabled(false);
  CHECK(pressed() == 0);
  key->setEnabled(true);
  CHECK(pressed() == 1);
}
