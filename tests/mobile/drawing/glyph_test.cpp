#include "mobile/elevation/grade_glyph.h"

#include <QImage>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/mobile/drawing/golden.h"

namespace kneerail::elevation {

namespace {

constexpr int side_px = 28;

/// How dark each pixel of a glyph is, 0 to 1, at 28 px across: black on white, so shape alone.
class Ink {
 public:
  explicit Ink(int grade) {
    ShapeList list;
    add_grade(list, {side_px / 2.0F + 1, side_px / 2.0F + 1}, side_px / 2.0F, grade, Qt::black);
    image_ = tests::drawn(list, {side_px + 2, side_px + 2}, {}, Qt::white);
  }

  [[nodiscard]] double at(int x, int y) const { return 1 - qGray(image_.pixel(x, y)) / 255.0; }

  [[nodiscard]] double area_px() const {
    double sum = 0;
    each([&](int x, int y) { sum += at(x, y); });
    return sum;
  }

  /// Ink that only one of the two has, as a share of the heavier one's.
  [[nodiscard]] double difference(const Ink& other) const {
    double differing = 0;
    each([&](int x, int y) { differing += std::abs(at(x, y) - other.at(x, y)); });
    return differing / std::max(area_px(), other.area_px());
  }

 private:
  template <class Do>
  void each(Do act) const {
    for (int y = 0; y < image_.height(); ++y) {
      for (int x = 0; x < image_.width(); ++x) act(x, y);
    }
  }

  QImage image_;
};

}  // namespace

TEST_CASE("the ink of the five grades falls as it was measured", "[glyph]") {
  constexpr std::array<double, 5> measured_px = {470, 340, 286, 142, 130};
  for (int grade = 1; grade <= 5; ++grade) {
    const double expected_px = measured_px[static_cast<std::size_t>(grade - 1)];
    INFO("grade " << grade);
    CHECK(Ink(grade).area_px() == Approx(expected_px).epsilon(0.05));
  }
}

TEST_CASE("any two grades differ in shape alone", "[glyph]") {
  const std::array glyphs = {Ink(1), Ink(2), Ink(3), Ink(4), Ink(5)};
  for (std::size_t a = 0; a < glyphs.size(); ++a) {
    for (std::size_t b = a + 1; b < glyphs.size(); ++b) {
      INFO("grades " << a + 1 << " and " << b + 1);
      CHECK(glyphs[a].difference(glyphs[b]) > 0.25);
    }
  }
  struct Pair {
    std::size_t a;
    std::size_t b;
    double measured;
  };
  for (const Pair& pair :
       {Pair{1, 2, 0.28}, Pair{2, 3, 0.37}, Pair{3, 4, 0.56}, Pair{4, 5, 0.51}, Pair{1, 5, 0.78}}) {
    INFO("grades " << pair.a << " and " << pair.b);
    CHECK(glyphs[pair.a - 1].difference(glyphs[pair.b - 1]) == Approx(pair.measured).margin(0.05));
  }
}

TEST_CASE("the open ring is of whole dashes at every size", "[glyph]") {
  for (const float radius : {8.0F, 11.0F, 14.0F, 21.0F, 34.0F, 47.5F}) {
    ShapeList list;
    add_open_grade(list, {0, 0}, radius, Qt::black);
    REQUIRE(list.shapes.size() == 1);
    const Shape& ring = list.shapes[0];
    const auto way = std::span(list.points).subspan(ring.first, ring.count);
    const auto cut = dashes(way, ring.stroke);
    const auto length = [](const std::vector<Point>& dash) {
      float sum = 0;
      for (std::size_t i = 1; i < dash.size(); ++i) {
        sum += std::hypot(dash[i].x - dash[i - 1].x, dash[i].y - dash[i - 1].y);
      }
      return sum;
    };
    INFO("radius " << radius);
    for (const auto& dash : cut) {
      CHECK(length(dash) == Approx(ring.stroke.on_px).epsilon(0.01));
    }
    CHECK(ring.stroke.on_px == Approx(4).margin(0.9));
  }
}

TEST_CASE("last visit's grade stands inside the open ring", "[glyph]") {
  for (int grade = 1; grade <= 5; ++grade) {
    ShapeList list;
    add_last_grade(list, {0, 0}, 20, grade, Qt::black);
    for (const Point& point : list.points) {
      INFO("grade " << grade);
      CHECK(std::hypot(point.x, point.y) < 0.97F * 20);
    }
  }
}

}  // namespace kneerail::elevation
