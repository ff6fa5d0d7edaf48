// ElevationView and RunLine as QML makes them, with what a screen reader finds on them.

#include <QAccessible>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickWindow>
#include <QSignalSpy>
#include <catch2/catch.hpp>

#include "mobile/elevation/elevation_item.h"
#include "mobile/elevation/run_line_item.h"
#include "tests/mobile/made_run.h"

namespace kneerail::tests {

namespace {

constexpr const char* source = R"(
import QtQuick
import Kneerail.Ui
Item {
    width: 876
    height: 672
    ElevationView { id: view; objectName: "view"; width: parent.width; height: 580 }
    Tape { view: view; width: parent.width; height: Tokens.tapeHeight }
    RunLine { objectName: "line"; view: view; y: 580; width: parent.width; height: 92 }
}
)";

class QmlDrawing {
 public:
  QmlDrawing() {
    engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
    QQmlComponent component(&engine);
    component.setData(source, QUrl());
    INFO(component.errorString().toStdString());
    root.reset(qobject_cast<QQuickItem*>(component.create()));
    REQUIRE(root != nullptr);
    window.resize(876, 672);
    root->setParentItem(window.contentItem());
    view = root->findChild<ElevationItem*>("view");
    line = root->findChild<RunLineItem*>("line");
    tokens = engine.singletonInstance<Tokens*>(qmlTypeId("Kneerail.Ui", 1, 0, "Tokens"));
    REQUIRE(tokens != nullptr);
    tokens->set_less_motion(true);
    picture.show(std::make_shared<RunSheet>(made_run({.posts = 151})));
    view->set_picture(&picture);
    line->set_picture(&picture);
    picture.choose_post(117);
    window.show();
  }

  RunPicture picture;
  QQmlEngine engine;
  QQuickWindow window;
  std::unique_ptr<QQuickItem> root;
  ElevationItem* view = nullptr;
  RunLineItem* line = nullptr;
  Tokens* tokens = nullptr;
};

std::vector<QAccessibleInterface*> buttons_under(QQuickItem* item) {
  std::vector<QAccessibleInterface*> found;
  for (QQuickItem* child : item->childItems()) {
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(child);
    if (face != nullptr && face->role() == QAccessible::Button) found.push_back(face);
    for (QAccessibleInterface* below : buttons_under(child)) found.push_back(below);
  }
  return found;
}

}  // namespace

TEST_CASE("a screen reader finds each part in view by name and can press it", "[view]") {
  QmlDrawing drawing;
  const auto buttons = buttons_under(drawing.view);
  REQUIRE(static_cast<int>(buttons.size()) == drawing.view->visible_parts()->count());
  REQUIRE(buttons.size() > 10);
  QSignalSpy touched(drawing.view, &ElevationItem::partTouched);
  for (QAccessibleInterface* button : buttons) {
    if (!button->text(QAccessible::Name).startsWith("Post 118, top-rail tee")) continue;
    button->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
  }
  REQUIRE(touched.count() == 1);
  const auto part = static_cast<std::size_t>(touched[0][0].toInt());
  CHECK(drawing.picture.sheet()->parts[part].post == 117);
}

TEST_CASE("a screen reader moves the run line as a slider", "[view]") {
  QmlDrawing drawing;
  QAccessibleInterface* face = QAccessible::queryAccessibleInterface(drawing.line);
  REQUIRE(face != nullptr);
  CHECK(face->role() == QAccessible::Slider);
  CHECK(face->text(QAccessible::Name).startsWith("post 118 of 151, "));
  QSignalSpy touched(drawing.line, &RunLineItem::postTouched);
  face->actionInterface()->doAction(QAccessibleActionInterface::increaseAction());
  REQUIRE(touched.count() == 1);
  CHECK(touched[0][0].toInt() == 118);
}

TEST_CASE("the drawing takes its sizes from the engine's tokens", "[view]") {
  QmlDrawing drawing;
  const double before_px = drawing.view->deck_margin();
  drawing.tokens->set_pixels_per_mm(drawing.tokens->pixels_per_mm() * 2);
  CHECK(drawing.view->deck_margin() == Approx(2 * before_px));
  CHECK(drawing.view->view().pixels_per_mm == drawing.tokens->pixels_per_mm());
}

}  // namespace kneerail::tests
