// A run laid out by touches in the real window: its keys, its pad, its drawing, and Keep.

#include <QAccessible>

#include "mobile/controls/touch_item.h"
#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

std::string piece(RunPiece piece) {
  return "piece" + std::to_string(static_cast<int>(piece));
}

/// The page of a new run at the site of the window.
struct Page : ShownWindow {
  explicit Page(const std::filesystem::path& folder, QSize size = {1280, 800})
      : ShownWindow(4, folder / "register") {
    resize(size);
    open();
  }
  void open() {
    touch("sitesTag");
    REQUIRE(touch("siteName0"));
    REQUIRE(touch("layOutRun"));
    REQUIRE(find("registerRun") != nullptr);
  }
  bool touch_piece(RunPiece which) { return touch(QString::fromStdString(piece(which))); }
  bool type_piece(RunPiece which, const QString& digits) {
    if (!touch_piece(which)) return false;
    for (const QChar digit : digits)
      if (!touch(QStringLiteral("digit") + digit)) return false;
    return touch("closePad");
  }
  RunSentence& sentence() { return *rooms().pages().run(); }
};

/// Every key in reach has a name and a role, is 11 mm or more each way and lies on the glass.
void check_keys(ShownWindow& shown, const QQuickItem& at) {
  if (!at.isVisible() || at.opacity() == 0) return;
  if (const auto* key = qobject_cast<const TouchItem*>(&at)) {
    QAccessibleInterface* told = QAccessible::queryAccessibleInterface(const_cast<TouchItem*>(key));
    REQUIRE(told != nullptr);
    INFO(told->text(QAccessible::Name).toStdString() << " " << key->objectName().toStdString());
    CHECK_FALSE(told->text(QAccessible::Name).isEmpty());
    CHECK(told->role() != QAccessible::NoRole);
    const qreal least = 11 * shown.tokens().pixels_per_mm() - 0.5;
    CHECK(key->width() >= least);
    CHECK(key->height() >= least);
    const QRectF place = key->mapRectToScene({0, 0, key->width(), key->height()});
    CHECK(QRectF({0, 0}, shown.window().size()).adjusted(-1, -1, 1, 1).contains(place));
  }
  for (const QQuickItem* child : at.childItems()) check_keys(shown, *child);
}

}  // namespace

TEST_CASE("every key of a new run has a name and room for a glove, whatever is asked",
          "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  Page page(folder.path(), size);
  const QQuickItem& at = *page.find("registerRun");
  check_keys(page, at);
  for (int which = 1; which < run_pieces; ++which) {
    REQUIRE(page.touch_piece(static_cast<RunPiece>(which)));
    CAPTURE(which);
    check_keys(page, at);
  }
  page.sentence().chooseBay(1);
  page.settle();
  check_keys(page, at);
  page.sentence().choosePost(1);
  page.settle();
  check_keys(page, at);
}

TEST_CASE("a run is laid out and kept by touches alone, upright and across", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280), QSize(1920, 1200));
  const Folder folder;
  Page page(folder.path(), size);
  const auto runs = page.count("SELECT count(*) FROM entity WHERE type = 4");
  CHECK(page.type_piece(RunPiece::posts, "12"));
  CHECK(page.sentence().run()->posts() == 12);
  CHECK(page.type_piece(RunPiece::height, "120"));
  CHECK(page.touch_piece(RunPiece::end));
  CHECK(page.touch("choice0_1"));
  CHECK(page.touch("closePad"));
  CHECK(page.touch_piece(RunPiece::name));
  page.keys("footbridge", 200);
  CHECK(page.touch("saySentence"));
  CHECK(page.sentence().said().name == "footbridge");
  CHECK(page.count("SELECT count(*) FROM entity WHERE type = 4") == runs);
  CHECK(page.touch("keepRun"));
  CHECK(page.find("registerRun") == nullptr);
  CHECK(page.count("SELECT count(*) FROM entity WHERE type = 4") == runs + 1);
  CHECK(page.count("SELECT count(*) FROM entity WHERE type = 5 AND chainage_mm = 16500") == 1);
}

TEST_CASE("a joint that is touched on the drawing is made another than the rule",
          "[mobile][window]") {
  const Folder folder;
  Page page(folder.path(), {1920, 1200});
  page.touch_drawing(1500, 550);
  REQUIRE(page.find("choice0_0") != nullptr);
  CHECK(page.text_of("padTitle").endsWith("mid-rail cross"));
  CHECK(page.touch("choice0_5"));
  CHECK(page.sentence().said().rule.joint_changes.at({1, 1}) == WhatItDoes::adjustable_swivel);
  CHECK(page.touch("closePad"));
  page.touch_drawing(2250, 300);  // the open air of a bay
  CHECK(page.text_of("padTitle").startsWith("Bay "));
  CHECK(page.touch("choice0_3"));
  CHECK(page.sentence().run()->sheet()->bays[1].kind == BayKind::gate);
  CHECK(page.touch("closePad"));
  CHECK(page.touch("undoRule"));
  CHECK(page.sentence().run()->sheet()->bays[1].kind == BayKind::rails);
}

TEST_CASE("a run is laid out without a finger: Tab, digits, Enter, arrows and Escape",
          "[mobile][window]") {
  const Folder folder;
  Page page(folder.path());
  const auto press = [&](int key, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QTest::keyClick(&page.window(), static_cast<Qt::Key>(key), with);
    page.settle();
  };
  page.find(QString::fromStdString(piece(RunPiece::zone)))->forceActiveFocus(Qt::TabFocusReason);
  press(Qt::Key_Tab);
  CHECK(page.window().activeFocusItem()->objectName().toStdString() == piece(RunPiece::posts));
  press(Qt::Key_Space);
  REQUIRE(page.sentence().asks_number());
  page.keys("15", 200);
  press(Qt::Key_Escape);  // what might be a gauge's number goes before it
  CHECK(page.sentence().run()->posts() == 15);
  CHECK_FALSE(page.sentence().asks());
  press(Qt::Key_Right);
  press(Qt::Key_Right);
  CHECK(page.sentence().run()->post() == 1);
  press(Qt::Key_Z, Qt::ControlModifier);
  CHECK(page.sentence().run()->posts() == 24);
  press(Qt::Key_Escape);
  press(Qt::Key_Escape);
  CHECK(page.find("registerRun") == nullptr);
}

TEST_CASE("a run that was left waits at its site, whatever happened to the tablet",
          "[mobile][window]") {
  const Folder folder;
  Page page(folder.path());
  CHECK(page.type_piece(RunPiece::posts, "7"));
  CHECK(page.touch("leaveRule"));
  CHECK(page.find("siteSheet") != nullptr);
  page.switch_off();
  page.switch_on();
  page.open();
  CHECK(page.sentence().run()->posts() == 7);
}

TEST_CASE("a site is registered by touches, and its sheet leads on to a run", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  ShownWindow shown(4, folder.path() / "register");
  shown.resize(size);
  shown.touch("sitesTag");
  const auto sites = shown.count("SELECT count(*) FROM entity WHERE type = 2");
  REQUIRE(shown.touch("registerSite"));
  REQUIRE(shown.touch("piece0"));
  shown.keys("lock island", 200);
  CHECK(shown.touch("saySentence"));
  REQUIRE(shown.touch("piece1"));
  shown.keys("deck", 200);
  CHECK(shown.touch("saySentence"));
  CHECK(shown.touch("choice0_2"));
  CHECK(shown.touch("choice1_1"));
  CHECK(shown.touch("closePad"));
  CHECK(shown.count("SELECT count(*) FROM entity WHERE type = 2") == sites);
  CHECK(shown.touch("keepSite"));
  CHECK(shown.count("SELECT count(*) FROM entity WHERE type = 2") == sites + 1);
  CHECK(shown.touch("layOutRun"));
  CHECK(shown.rooms().pages().run()->site_name() == "lock island");
  CHECK(shown.find("registerRun") != nullptr);
}

TEST_CASE("a post comes in where the drawing is touched, and the walk has it", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  ShownWindow shown(4, folder.path() / "register");
  shown.resize(size);
  shown.touch("sitesTag");
  REQUIRE(shown.touch("siteName0"));
  REQUIRE(shown.touch("changeRun0"));
  const int posts = shown.rooms().pages().change()->run()->posts();
  shown.touch_drawing(750, 300);
  CHECK(shown.touch("choice0_0"));
  CHECK(shown.touch("digit4"));
  CHECK(shown.touch("digit0"));
  CHECK(shown.touch("closePad"));
  CHECK(shown.text_of("changeSentence").contains("0.40 m after"));
  CHECK(shown.rooms().pages().change()->run()->posts() == posts);
  CHECK(shown.touch("keepChange"));
  CHECK(shown.rooms().pages().change()->run()->posts() == posts + 1);
  CHECK(shown.touch("leaveChange"));
  CHECK(shown.touch("sheetRun0"));
  CHECK(shown.walk().run()->posts() == posts + 1);
}
