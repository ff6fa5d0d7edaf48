#include "mobile/elevation/elevation_item.h"

#include <catch2/catch.hpp>

#include "tests/mobile/shown_elevation.h"

namespace kneerail::tests {

namespace {

const MadeRun usual{.posts = 40, .sleeve_every_bays = 0};

int part_at(const RunSheet& sheet, std::int64_t along_mm, std::int64_t up_mm, Role role) {
  for (std::size_t i = 0; i < sheet.parts.size(); ++i) {
    const SheetPart& part = sheet.parts[i];
    if (part.role == role && part.along_mm == along_mm && part.up_mm == up_mm) {
      return static_cast<int>(i);
    }
  }
  FAIL("the made run has no such part");
  return -1;
}

int said(QSignalSpy& spy) {
  REQUIRE(spy.count() == 1);
  return spy.takeFirst().at(0).toInt();
}

/// Ten posts in, at 1:25, so that posts 9 to 11 are in view.
std::unique_ptr<ShownElevation> at_post_ten() {
  auto shown = std::make_unique<ShownElevation>(made_run(usual));
  shown->picture.choose_post(10);
  shown->frame();
  return shown;
}

}  // namespace

TEST_CASE("a run opens at the scale of the rule and glides to the chosen post", "[item]") {
  const auto shown = at_post_ten();
  CHECK(shown->item->scale_denominator() == 25);
  CHECK(shown->item->centre_chainage() == 15000);
  shown->picture.choose_bay(20);
  CHECK(shown->item->centre_chainage() == 30750);
}

TEST_CASE("a touch on a joint says its part, on the sky the post, on the air the bay", "[item]") {
  const auto shown = at_post_ten();
  QSignalSpy parts(shown->item, &ElevationItem::partTouched);
  QSignalSpy posts(shown->item, &ElevationItem::postTouched);
  QSignalSpy bays(shown->item, &ElevationItem::bayTouched);
  const RunSheet& sheet = *shown->picture.sheet();
  shown->touch(shown->at(15000, 1100));
  CHECK(said(parts) == part_at(sheet, 15000, 1100, Role::fitting));
  shown->touch(shown->at(16500, 550));
  CHECK(said(parts) == part_at(sheet, 16500, 550, Role::fitting));
  shown->touch(shown->at(13500, -150));
  CHECK(said(parts) == part_at(sheet, 13500, 40, Role::base_fixing));
  shown->touch(shown->at(16400, 1500));
  CHECK(said(posts) == 11);
  shown->touch(shown->at(15750, 800));
  CHECK(said(bays) == 10);
  CHECK(parts.isEmpty());
}

TEST_CASE("drops of rain touch nothing", "[item]") {
  const auto shown = at_post_ten();
  QSignalSpy parts(shown->item, &ElevationItem::partTouched);
  QSignalSpy palms(shown->item, &ElevationItem::palmSeen);
  const QPoint joint = shown->at(15000, 1100);
  for (int drop = 0; drop < 10; ++drop) {
    shown->press({joint}, 2000 + drop * 10);
    shown->release({joint}, 2009 + drop * 10);
  }
  CHECK(parts.isEmpty());
  const QPoint beside = joint + QPoint(80, 60);
  shown->press({joint, beside, beside + QPoint(90, 0)}, 3000);
  shown->release({joint, beside, beside + QPoint(90, 0)}, 3100);
  CHECK(palms.count() == 1);
  shown->press({joint}, 3300);  // in the rest
  shown->release({joint}, 3400);
  CHECK(parts.isEmpty());
  shown->touch(joint);
  CHECK(parts.count() == 1);
}

TEST_CASE("a long touch holds the part under it", "[item]") {
  const auto shown = at_post_ten();
  QSignalSpy holds(shown->item, &ElevationItem::partHeld);
  QSignalSpy parts(shown->item, &ElevationItem::partTouched);
  const QPoint joint = shown->at(15000, 550);
  shown->press({joint}, 2000);
  shown->release({joint}, 3600);
  CHECK(said(holds) == part_at(*shown->picture.sheet(), 15000, 550, Role::fitting));
  CHECK(parts.isEmpty());
}

TEST_CASE("the drawing follows a finger and stops where it is left", "[item]") {
  const auto shown = at_post_ten();
  QSignalSpy swipes(shown->item, &ElevationItem::swiped);
  const double begun_mm = shown->item->centre_chainage();
  shown->press({{600, 300}}, 2000);
  for (int step = 1; step <= 10; ++step) shown->move({{600 - 10 * step, 300}}, 2000 + 100 * step);
  shown->release({{500, 300}}, 3400);
  CHECK(shown->item->centre_chainage() ==
        Approx(begun_mm + 100 / shown->item->view().scale()).margin(0.01));
  CHECK(swipes.isEmpty());
  CHECK_FALSE(shown->item->moving());
}

TEST_CASE("a flick says one post, to the left the next", "[item]") {
  const auto shown = at_post_ten();
  QSignalSpy swipes(shown->item, &ElevationItem::swiped);
  shown->press({{600, 300}}, 2000);
  for (int step = 1; step <= 5; ++step) shown->move({{600 - 40 * step, 300}}, 2000 + 20 * step);
  shown->release({{400, 300}}, 2105);
  CHECK(said(swipes) == 1);
  shown->press({{400, 300}}, 4000);
  for (int step = 1; step <= 5; ++step) shown->move({{400 + 40 * step, 300}}, 4000 + 20 * step);
  shown->release({{600, 300}}, 4105);
  CHECK(said(swipes) == -1);
}

TEST_CASE("a pinch scales freely and settles on a step", "[item]") {
  const auto shown = at_post_ten();
  shown->press({{400, 300}, {480, 300}}, 2000);
  for (int step = 1; step <= 5; ++step) {
    shown->move({{400 - 4 * step, 300}, {480 + 4 * step, 300}}, 2000 + 50 * step);
  }
  CHECK(shown->item->scale_denominator() == Approx(25.0 * 80 / 120));
  shown->release({{380, 300}, {500, 300}}, 2400);
  CHECK(shown->item->scale_denominator() == 20);
}

TEST_CASE("joints too near for a glove are drawn larger first and chosen then", "[item]") {
  // The lower cross stands 160 mm over the flange: 6.4 mm on the glass.
  ShownElevation shown(made_run({.posts = 40, .rails = 3, .rail_spacing_mm = 450}));
  RunSheet sheet = *shown.picture.sheet();
  for (SheetPart& part : sheet.parts) {
    if (part.role == Role::base_fixing) part.role = Role::fitting;
  }
  shown.show(sheet);
  shown.picture.choose_post(10);
  shown.frame();
  QSignalSpy parts(shown.item, &ElevationItem::partTouched);
  shown.touch(shown.at(15000, 120));
  CHECK(parts.isEmpty());
  REQUIRE(shown.item->joint_enlarged());
  shown.frame();
  const QPointF flange = shown.item->enlargedPlace(15000, 40);
  shown.touch(flange.toPoint());
  CHECK(said(parts) == part_at(sheet, 15000, 40, Role::fitting));
  CHECK_FALSE(shown.item->joint_enlarged());
  shown.touch(shown.at(15000, 120));
  shown.touch(QPoint(20, 20));  // beside it: put away, and the sky says its post
  CHECK(parts.isEmpty());
  CHECK_FALSE(shown.item->joint_enlarged());
}

TEST_CASE("a touch during which the window turns counts for nothing", "[item]") {
  const auto shown = at_post_ten();
  QSignalSpy parts(shown->item, &ElevationItem::partTouched);
  QSignalSpy bays(shown->item, &ElevationItem::bayTouched);
  QSignalSpy posts(shown->item, &ElevationItem::postTouched);
  const QPoint joint = shown->at(15000, 550);
  shown->press({joint}, 2000);
  shown->item->setSize({800, 506});
  shown->release({joint}, 2100);
  CHECK(parts.isEmpty());
  CHECK(bays.isEmpty());
  CHECK(posts.isEmpty());
  CHECK(shown->item->centre_chainage() == 15000);
  shown->touch(shown->at(15000, 550));
  CHECK(parts.count() == 1);
}

TEST_CASE("a window that turns during a glide has the deck and the post in place", "[item]") {
  const auto shown = at_post_ten();
  shown->tokens.set_less_motion(false);
  shown->picture.choose_post(12);
  REQUIRE(shown->item->moving());
  shown->item->setSize({800, 340});
  CHECK_FALSE(shown->item->moving());
  CHECK(shown->item->centre_chainage() == 18000);
  CHECK(shown->item->content_y() == Approx(340 - shown->item->deck_margin()));
}

TEST_CASE("the chosen part stays in view where the glass becomes lower", "[item]") {
  const auto shown = at_post_ten();
  shown->picture.choose_part(part_at(*shown->picture.sheet(), 15000, 1100, Role::fitting));
  shown->frame();
  shown->item->setSize({876, 240});
  shown->frame();
  CHECK(shown->item->chosen_rect().top() >= 0);
  CHECK(shown->item->chosen_rect().bottom() <= 240);
}

TEST_CASE("a drawing that is left alone is not drawn again", "[item]") {
  const auto shown = at_post_ten();
  for (int n = 0; n < 6; ++n) shown->frame();
  const int paints = shown->item->paints();
  QSignalSpy frames(&shown->window, &QQuickWindow::frameSwapped);
  for (int n = 0; n < 200; ++n) QCoreApplication::processEvents();
  CHECK(frames.isEmpty());
  CHECK(shown->item->paints() == paints);
}

TEST_CASE("panning makes only what comes into view, choosing only what changes", "[item]") {
  const auto shown = at_post_ten();
  for (int n = 0; n < 6; ++n) shown->frame();
  const auto made = shown->item->stretches_made();
  shown->item->set_centre_chainage(15100);
  shown->frame();
  CHECK(shown->item->stretches_made() == made);
  shown->picture.choose_post(11);
  for (int n = 0; n < 6; ++n) shown->frame();
  const auto after = shown->item->stretches_made();
  CHECK(after > made);
  CHECK(after <= made + 2);
}

TEST_CASE("a grade makes its own stretch again and draws what a new drawing shows", "[item]") {
  const RunSheet before = made_run(usual);
  const auto shown = at_post_ten();
  for (int n = 0; n < 6; ++n) shown->frame();
  const auto made = shown->item->stretches_made();
  shown->show(before);  // another reading of it, that says the same
  shown->frame();
  CHECK(shown->item->stretches_made() == made);
  RunSheet after = before;
  SheetGrade worst;
  worst.grade = 5;
  for (int i = 0; i < after.posts[10].parts; ++i)
    after.parts[static_cast<std::size_t>(after.posts[10].first_part + i)].now = worst;
  after.posts[10].state = PostState::seen;
  shown->show(after);
  for (int n = 0; n < 6; ++n) shown->frame();
  CHECK(shown->item->stretches_made() == made + 1);
  ShownElevation anew(after);
  anew.picture.choose_post(10);
  for (int n = 0; n < 6; ++n) anew.frame();
  CHECK(shown->window.grabWindow() == anew.window.grabWindow());
  after.bays[10].closed_off = !after.bays[10].closed_off;
  shown->show(after);
  for (int n = 0; n < 6; ++n) shown->frame();
  CHECK(shown->item->stretches_made() > made + 2);
}

TEST_CASE("a glide from far away makes only the stretches at its end", "[item]") {
  ShownElevation shown(made_run({.posts = 400}));
  shown.tokens.set_less_motion(false);
  const auto made = shown.item->stretches_made();
  shown.picture.choose_post(390);
  CHECK(shown.item->moving());
  for (int n = 0; shown.item->moving() && n < 10000; ++n) shown.frame();
  CHECK(shown.item->centre_chainage() == 390 * 1500);
  CHECK(shown.item->stretches_made() <= made + 6);
}

TEST_CASE("the parts in view are listed by name and place", "[item]") {
  const auto shown = at_post_ten();
  VisibleParts* visible = shown->item->visible_parts();
  REQUIRE(visible->count() > 10);
  CHECK(visible->count() <= 60);
  const int joint = part_at(*shown->picture.sheet(), 15000, 550, Role::fitting);
  bool found = false;
  for (int row = 0; row < visible->count(); ++row) {
    const QModelIndex index = visible->index(row);
    if (visible->data(index, VisibleParts::part_role).toInt() != joint) continue;
    found = true;
    const QRectF rect = visible->data(index, VisibleParts::rect_role).toRectF();
    const QPointF middle =
        rect.center() + QPointF(shown->item->content_x(), shown->item->content_y());
    CHECK((middle - QPointF(shown->at(15000, 550))).manhattanLength() < 2);
    CHECK(visible->data(index, VisibleParts::name_role).toString().startsWith("Post 11, mid-rail"));
  }
  CHECK(found);
}

TEST_CASE("brackets and the leader's end go with the chosen part", "[item]") {
  const auto shown = at_post_ten();
  const auto around_post = [&](double along_mm) {  // from over its top rail to the deck
    const QRectF rect = shown->item->chosen_rect();
    CHECK(rect.contains(QPointF(shown->at(along_mm, 1100))));
    CHECK(rect.contains(QPointF(shown->at(along_mm, 50))));
    CHECK_FALSE(rect.contains(QPointF(shown->at(along_mm, -50))));
    CHECK(rect.center().x() == Approx(shown->at(along_mm, 0).x()).margin(1));
  };
  around_post(15000);
  shown->picture.choose_part(part_at(*shown->picture.sheet(), 15000, 1100, Role::fitting));
  REQUIRE(shown->item->has_chosen());
  const QPointF joint = shown->at(15000, 1100);
  CHECK((shown->item->chosen_rect().center() - joint).manhattanLength() < 2);
  CHECK(shown->item->chosen_point().x() == Approx(joint.x() - 38).margin(1));
  shown->picture.choose_post(12);
  around_post(18000);
}

TEST_CASE("arrow keys go from part to part, page keys from post to post", "[item]") {
  const auto shown = at_post_ten();
  shown->item->forceActiveFocus();
  const RunSheet& sheet = *shown->picture.sheet();
  QSignalSpy parts(shown->item, &ElevationItem::partTouched);
  QSignalSpy swipes(shown->item, &ElevationItem::swiped);
  shown->picture.choose_part(part_at(sheet, 15000, 550, Role::fitting));
  QTest::keyClick(&shown->window, Qt::Key_Up);
  CHECK(said(parts) == part_at(sheet, 15000, 1100, Role::fitting));
  QTest::keyClick(&shown->window, Qt::Key_Right);
  CHECK(said(parts) == part_at(sheet, 15750, 550, Role::mid_rail));
  QTest::keyClick(&shown->window, Qt::Key_PageDown);
  CHECK(said(swipes) == 1);
}

TEST_CASE("a mouse touches, drags and turns the wheel", "[item]") {
  const auto shown = at_post_ten();
  QSignalSpy parts(shown->item, &ElevationItem::partTouched);
  QTest::mouseClick(&shown->window, Qt::LeftButton, {}, shown->at(15000, 1100));
  CHECK(parts.count() == 1);
  const double begun_mm = shown->item->centre_chainage();
  QWheelEvent wheel({400, 300}, {400, 300}, {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(&shown->window, &wheel);
  CHECK(shown->item->centre_chainage() > begun_mm);
  QWheelEvent larger({400, 300}, {400, 300}, {}, {0, 120}, Qt::NoButton, Qt::ControlModifier,
                     Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(&shown->window, &larger);
  CHECK(shown->item->scale_denominator() == 20);
}

TEST_CASE("runs of nothing, of one post and of 100,000 parts are drawn and touched", "[item]") {
  ShownElevation shown(RunSheet{});
  shown.touch({400, 300});
  shown.show(made_run({.posts = 1}));
  shown.picture.choose_post(0);
  shown.frame();
  QSignalSpy parts(shown.item, &ElevationItem::partTouched);
  shown.touch(shown.at(0, 1100));
  CHECK(parts.count() == 1);
  shown.show(run_of_parts(100000));
  shown.picture.choose_post(19000);
  shown.frame();
  parts.clear();
  shown.touch(shown.at(19000 * 1500.0, 550));
  CHECK(parts.count() == 1);
  CHECK(shown.item->stretches_made() < 20);
}

TEST_CASE("the software renderer shows the run, light and dark", "[item]") {
  const auto shown = at_post_ten();
  const auto color_of_deck = [&] {
    shown->frame();
    const QPoint deck = shown->at(15700, 0);
    return shown->window.grabWindow().pixelColor(deck);
  };
  CHECK(color_of_deck().lightness() < 120);
  shown->tokens.set_dark(true);
  CHECK(color_of_deck().lightness() > 150);
}

}  // namespace kneerail::tests
