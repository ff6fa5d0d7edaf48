#include "mobile/elevation/ring_fill.h"

#include <QCoreApplication>
#include <catch2/catch.hpp>

#include "mobile/elevation/part_place.h"
#include "tests/mobile/shown_elevation.h"

namespace kneerail::tests {

namespace {

const MadeRun usual{.posts = 20, .sleeve_every_bays = 0};
constexpr std::size_t walked = 10;  // post

/// The joints of the walked post graded now.
RunSheet graded(RunSheet sheet, int grade) {
  const SheetPost& post = sheet.posts[walked];
  for (int i = post.first_part; i < post.first_part + post.parts; ++i) {
    SheetGrade given;
    given.grade = grade;
    sheet.parts[static_cast<std::size_t>(i)].now = given;
  }
  return sheet;
}

RunSheet open_post(RunSheet sheet) {
  for (SheetPart& part : sheet.parts) part.now.reset();
  return sheet;
}

std::size_t joints(const RunSheet& sheet) {
  const SheetPost& post = sheet.posts[walked];
  std::size_t count = 0;
  for (int i = post.first_part; i < post.first_part + post.parts; ++i)
    count += elevation::is_joint(sheet.parts[static_cast<std::size_t>(i)]) ? 1 : 0;
  return count;
}

std::unique_ptr<ShownElevation> at_post(const RunSheet& sheet) {
  auto shown = std::make_unique<ShownElevation>(sheet);
  shown->picture.choose_post(static_cast<int>(walked));
  for (int n = 0; n < 6; ++n) shown->frame();
  return shown;
}

void until_still(ShownElevation& shown) {
  for (int n = 0; shown.item->rings_filling() > 0 && n < 100'000; ++n) shown.frame();
  CHECK(shown.item->rings_filling() == 0);
  for (int n = 0; n < 3; ++n) shown.frame();
}

}  // namespace

TEST_CASE("rings fill with the grades just given and empty when they are taken back", "[item]") {
  const RunSheet before = open_post(made_run(usual));
  const RunSheet after = graded(before, 2);
  REQUIRE(joints(after) >= 2);
  const auto shown = at_post(before);
  shown->tokens.set_less_motion(false);
  shown->show(after);
  CHECK(shown->item->rings_filling() == joints(after));
  until_still(*shown);
  CHECK(shown->window.grabWindow() == at_post(after)->window.grabWindow());
  shown->show(before);
  CHECK(shown->item->rings_filling() == joints(after));
  until_still(*shown);
  CHECK(shown->window.grabWindow() == at_post(before)->window.grabWindow());
}

TEST_CASE("a ring that has filled leaves the drawing still", "[item]") {
  const RunSheet before = open_post(made_run(usual));
  const auto shown = at_post(before);
  shown->tokens.set_less_motion(false);
  shown->show(graded(before, 3));
  until_still(*shown);
  const int paints = shown->item->paints();
  QSignalSpy frames(&shown->window, &QQuickWindow::frameSwapped);
  for (int n = 0; n < 200; ++n) QCoreApplication::processEvents();
  CHECK(frames.isEmpty());
  CHECK(shown->item->paints() == paints);
}

TEST_CASE("with less motion no ring fills, nor where another run is shown", "[item]") {
  const RunSheet before = open_post(made_run(usual));
  const auto shown = at_post(before);
  shown->show(graded(before, 2));
  CHECK(shown->item->rings_filling() == 0);
  shown->tokens.set_less_motion(false);
  RunSheet other = graded(before, 4);
  other.id = Uuid{{9}};
  shown->show(other);
  CHECK(shown->item->rings_filling() == 0);
}

TEST_CASE("a ring that is half full shows less of its grade than a full one", "[item]") {
  const RunSheet sheet = open_post(made_run(usual));
  const elevation::RingChange change = elevation::ring_change(sheet, graded(sheet, 1));
  CHECK_FALSE(change.back);
  REQUIRE(change.rings.size() == joints(sheet));
  elevation::RunView view;
  view.width_px = 800;
  view.centre_mm = static_cast<double>(sheet.posts[walked].chainage_mm);
  const auto reach = [&](float share) {
    const auto list = elevation::filling_rings(sheet, {change.rings.front()}, {}, view, share);
    float most = 0;
    const QColor grade = theme::palette(theme::Theme::light).grade[0];
    for (const auto& shape : list.shapes)
      if (shape.color == grade.rgba())
        for (std::size_t i = 0; i < shape.count; ++i)
          most = std::max(most, std::abs(list.points[shape.first + i].x - 400));
    return most;
  };
  CHECK(reach(0) == 0);
  CHECK(reach(0.5F) > 0);
  CHECK(reach(0.5F) < 0.7F * reach(1));
}

}  // namespace kneerail::tests
