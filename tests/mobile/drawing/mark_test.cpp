#include "mobile/elevation/mark_shapes.h"

#include <QStringList>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "mobile/elevation/sign_shapes.h"
#include "tests/mobile/made_run.h"

namespace kneerail::elevation {

namespace {

using tests::made_run;

const theme::Palette& light = theme::palette(theme::Theme::light);

Uuid uuid(std::uint8_t byte) {
  Uuid id;
  id.bytes.fill(byte);
  return id;
}

ShapeList marks_of(const RunSheet& sheet, int post, double denominator = 25) {
  RunDrawing drawing;
  drawing.denominator = denominator;
  return run_shapes(sheet, {post, 1, 0}, drawing).marks;
}

QStringList chalk_words(const ShapeList& list) {
  QStringList words;
  for (const Label& label : list.labels) {
    if (label.color == light.chalk.rgba()) words.push_back(label.text);
  }
  return words;
}

std::vector<float> radii(const ChalkRing& ring) {
  ShapeList list;
  add_chalk_ring(list, ring, Qt::blue);
  const Shape& turn = list.shapes.back();
  std::vector<float> found;
  for (const Point& at : std::span(list.points).subspan(turn.first, turn.count)) {
    found.push_back(std::hypot(at.x - ring.middle.x, at.y - ring.middle.y));
  }
  return found;
}

}  // namespace

TEST_CASE("what was found is written beside its ring, at small scales its number alone", "[mark]") {
  RunSheet sheet = made_run({.posts = 8});
  CHECK(chalk_words(marks_of(sheet, 3)) == QStringList{"F-2 rust weeping", "from drain hole"});
  CHECK(chalk_words(marks_of(sheet, 3, 50)) == QStringList{"F-2"});
  CHECK(chalk_words(marks_of(sheet, 3, 100)).isEmpty());
  CHECK(chalk_words(marks_of(sheet, 4)).isEmpty());
  sheet.findings[0].text = "Rust weeps from the drain hole after rain";
  CHECK(chalk_words(marks_of(sheet, 3)).back() == "Rust weeps from the …");
  sheet.findings[0].what = FindingKind::other;
  sheet.findings[0].text.clear();
  CHECK(chalk_words(marks_of(sheet, 3)) == QStringList{"F-2"});
}

TEST_CASE("two findings on one part have words in places of their own", "[mark]") {
  RunSheet sheet = made_run({.posts = 8});
  SheetFinding second = sheet.findings[0];
  second.number = "F-9";
  second.record = uuid(9);
  sheet.findings.push_back(second);
  std::vector<float> heights;
  const ShapeList marks = marks_of(sheet, 3);
  for (const Label& label : marks.labels) {
    if (label.color == light.chalk.rgba()) heights.push_back(label.at.y);
  }
  REQUIRE(heights.size() == 4);
  std::sort(heights.begin(), heights.end());
  for (std::size_t i = 1; i < heights.size(); ++i) {
    CHECK(heights[i] - heights[i - 1] > 15);
  }
}

TEST_CASE("a ring is drawn by hand: round, never a circle, always the same", "[mark]") {
  const ChalkRing ring{{50, 60}, 40, 4, uuid(3)};
  const std::vector<float> once = radii(ring);
  CHECK(once.size() == 50);  // 46 points and 8 % overlap
  CHECK(radii(ring) == once);
  CHECK(radii({{50, 60}, 40, 4, uuid(77)}) != once);
  for (const int seed : {0, 1, 99, 170, 255}) {
    const std::vector<float> found =
        radii({{50, 60}, 40, 4, uuid(static_cast<std::uint8_t>(seed))});
    const auto [least, most] = std::minmax_element(found.begin(), found.end());
    INFO("seed " << seed);
    CHECK(*least > 40 * 0.88F);
    CHECK(*most < 40 * 1.12F);
    CHECK(*most - *least > 40 * 0.03F);
  }
}

TEST_CASE("the bars of a board end at its edges and take half of it", "[mark]") {
  for (const float width : {20.0F, 90.0F, 273.0F}) {
    const BarrierBoard board{{7, 11}, {width, 28}};
    ShapeList list;
    add_barrier_board(list, board, light);
    double dark = 0;
    for (const Shape& shape : list.shapes) {
      const auto ring = std::span(list.points).subspan(shape.first, shape.count);
      for (const Point& at : ring) {
        CHECK(at.x >= board.corner.x);
        CHECK(at.x <= board.corner.x + board.size.x);
        CHECK(at.y >= board.corner.y);
        CHECK(at.y <= board.corner.y + board.size.y);
      }
      if (shape.color != light.tape_ink.rgba()) continue;
      double twice = 0;
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point& next = ring[(i + 1) % ring.size()];
        twice += static_cast<double>(ring[i].x * next.y - next.x * ring[i].y);
      }
      dark += std::abs(twice) / 2;
    }
    INFO("width " << width);
    CHECK(dark / static_cast<double>(board.size.x * board.size.y) == Approx(0.5).margin(0.12));
  }
}

TEST_CASE("where posts stand is marked once on the dimension line", "[mark]") {
  const RunSheet sheet = made_run({.posts = 8});
  const auto upright = [](const ShapeList& list) {
    int count = 0;
    for (const Shape& shape : list.shapes) {
      const Point& a = list.points[shape.first];
      const Point& b = list.points[shape.first + 1];
      if (shape.kind == ShapeKind::line && shape.count == 2 && a.x == b.x && a.y > 40) ++count;
    }
    return count;
  };
  RunDrawing drawing;
  CHECK(upright(run_shapes(sheet, {0, 4, 0}, drawing).marks) == 4);
  CHECK(upright(run_shapes(sheet, {4, 4, 6000}, drawing).marks) == 4);  // three bays and the end
}

}  // namespace kneerail::elevation
