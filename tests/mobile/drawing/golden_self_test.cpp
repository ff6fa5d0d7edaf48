#include <QImage>
#include <catch2/catch.hpp>

#include "mobile/elevation/grade_glyph.h"
#include "tests/mobile/drawing/golden.h"

namespace kneerail::tests {

namespace {

QImage glyph(int grade, float x = 40) {
  elevation::ShapeList list;
  elevation::add_grade(list, {x, 40}, 34, grade, Qt::black);
  return drawn(list, {80, 80}, {}, Qt::white);
}

}  // namespace

TEST_CASE("a picture is like itself and unlike another", "[golden-self]") {
  CHECK(compare(glyph(3), glyph(3)).differing == 0);
  CHECK(compare(glyph(3), glyph(3)).alike());
  CHECK_FALSE(compare(glyph(3), glyph(4)).alike());
}

TEST_CASE("a sign moved by a pixel, or without its coating line, is seen", "[golden-self]") {
  CHECK_FALSE(compare(glyph(2), glyph(2, 41)).alike());
  elevation::ShapeList list;
  elevation::add_grade(list, {40, 40}, 34, 1, Qt::black);
  list.shapes.erase(list.shapes.begin());
  CHECK_FALSE(compare(glyph(1), drawn(list, {80, 80}, {}, Qt::white)).alike());
}

TEST_CASE("a small sign lost on a large sheet is seen", "[golden-self]") {
  elevation::ShapeList sheet;
  sheet.rect({0, 0}, {2000, 1000}, Qt::white);
  elevation::add_grade(sheet, {1203, 407}, 40, 1, Qt::black);
  const QImage without = drawn(sheet, {2000, 1000}, {}, Qt::white);
  sheet.line(elevation::Point{300, 300}, elevation::Point{340, 300}, Qt::black, {.width_px = 2});
  const Comparison result = compare(drawn(sheet, {2000, 1000}, {}, Qt::white), without);
  CHECK(result.share < most_differing_share);
  CHECK_FALSE(result.alike());
}

TEST_CASE("where pictures differ is marked, and another size is all different", "[golden-self]") {
  const Comparison result = compare(glyph(1), glyph(5));
  int red = 0;
  for (int y = 0; y < 80; ++y) {
    for (int x = 0; x < 80; ++x) red += result.difference.pixel(x, y) == qRgb(200, 0, 0) ? 1 : 0;
  }
  CHECK(red == result.differing);
  CHECK(compare(glyph(1), glyph(1).copy(0, 0, 79, 80)).share == 1);
}

}  // namespace kneerail::tests
