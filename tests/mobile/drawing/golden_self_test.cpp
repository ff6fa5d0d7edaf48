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
  CHECK(compare(glyph(3), glyph(4)).share > 10 * most_differing_share);
}

TEST_CASE("a sign moved by a pixel, or without its coating line, is seen", "[golden-self]") {
  CHECK(compare(glyph(2), glyph(2, 41)).share > most_differing_share);
  elevation::ShapeList list;
  elevation::add_grade(list, {40, 40}, 34, 1, Qt::black);
  list.shapes.erase(list.shapes.begin());
  CHECK(compare(glyph(1), drawn(list, {80, 80}, {}, Qt::white)).share > most_differing_share);
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
