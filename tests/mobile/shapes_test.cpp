#include "mobile/elevation/shapes.h"

#include <QImage>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "mobile/elevation/shape_painter.h"
#include "mobile/elevation/triangles.h"

namespace kneerail::elevation {

namespace {

double area(const std::vector<Vertex>& vertices) {
  REQUIRE(vertices.size() % 3 == 0);
  double sum = 0;
  for (std::size_t i = 0; i < vertices.size(); i += 3) {
    const Vertex& a = vertices[i];
    const Vertex& b = vertices[i + 1];
    const Vertex& c = vertices[i + 2];
    sum += std::abs(static_cast<double>((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x))) / 2;
  }
  return sum;
}

constexpr int larger = 6;  // so that rough edges are few among the pixels

QImage painted(const ShapeList& list) {
  QImage image(60 * larger, 60 * larger, QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.scale(larger, larger);
  paint(painter, list, "B612");
  return image;
}

/// The triangles filled one by one, without smooth edges.
QImage from_triangles(const ShapeList& list) {
  QImage image(60 * larger, 60 * larger, QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.scale(larger, larger);
  painter.setPen(Qt::NoPen);
  const std::vector<Vertex> vertices = triangles(list);
  for (std::size_t i = 0; i < vertices.size(); i += 3) {
    QPolygonF triangle;
    for (std::size_t corner = i; corner < i + 3; ++corner) {
      triangle << QPointF(static_cast<double>(vertices[corner].x),
                          static_cast<double>(vertices[corner].y));
    }
    painter.setBrush(QColor(vertices[i].r, vertices[i].g, vertices[i].b));
    painter.drawPolygon(triangle);
  }
  return image;
}

/// Share of pixels that differ by more than a third.
double difference(const QImage& a, const QImage& b) {
  int differing = 0;
  for (int y = 0; y < a.height(); ++y) {
    for (int x = 0; x < a.width(); ++x) {
      if (std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x, y))) > 85) ++differing;
    }
  }
  return static_cast<double>(differing) / (a.width() * a.height());
}

const std::array star = {Point{30, 5},  Point{36, 24}, Point{55, 30}, Point{36, 36},
                         Point{30, 55}, Point{24, 36}, Point{5, 30},  Point{24, 24}};

}  // namespace

TEST_CASE("a ring becomes triangles of its own area, convex or not", "[shapes]") {
  ShapeList list;
  list.rect({10, 10}, {30, 20}, Qt::black);
  CHECK(area(triangles(list)) == Approx(600));
  list.clear();
  list.fill(star, Qt::black);
  CHECK(area(triangles(list)) == Approx(2 * 25 * 12 / 2 * 2));
  list.clear();
  list.disc({30, 30}, 20, Qt::black);
  CHECK(area(triangles(list)) == Approx(std::numbers::pi * 400).epsilon(0.005));
}

TEST_CASE("a line has its width all along, round corners too", "[shapes]") {
  ShapeList list;
  list.line(Point{0, 0}, Point{30, 40}, Qt::black, {.width_px = 3});
  CHECK(area(triangles(list)) == Approx(150));
  list.clear();
  list.circle({30, 30}, 20, Qt::black, {.width_px = 4});
  CHECK(area(triangles(list)) == Approx(2 * std::numbers::pi * 20 * 4).epsilon(0.002));
  list.clear();
  list.rect_outline({10, 10}, {20, 20}, Qt::black, {.width_px = 2});
  CHECK(area(triangles(list)) == Approx(22 * 22 - 18 * 18));
}

TEST_CASE("a dashed line is cut into its dashes, round corners too", "[shapes]") {
  const std::array way = {Point{0, 0}, Point{10, 0}, Point{10, 20}};
  const auto cut = dashes(way, {.on_px = 6, .off_px = 2});
  REQUIRE(cut.size() == 4);
  CHECK(cut[1].size() == 3);  // from 8 to 14, round the corner at 10
  CHECK(cut[3].back().y == Approx(20));
  CHECK(dashes(way, {}).size() == 1);
}

TEST_CASE("a strip lies between its two sides", "[shapes]") {
  ShapeList list;
  list.strip(arc({30, 30}, 20, 0, 360, 5), arc({30, 30}, 10, 0, 360, 5), Qt::black);
  CHECK(area(triangles(list)) == Approx(std::numbers::pi * 300).epsilon(0.002));
}

TEST_CASE("a circle has no more corners than its size needs", "[shapes]") {
  for (const float radius : {0.03F, 0.6F, 3.0F, 14.0F, 34.0F, 200.0F}) {
    INFO("radius " << radius);
    const auto ring = arc({0, 0}, radius, 0, 360);
    const float off =
        radius * (1 - std::cos(std::numbers::pi_v<float> / static_cast<float>(ring.size() - 1)));
    CHECK((off <= arc_error_px || ring.size() == 73));
    CHECK(ring.size() >= 5);
    CHECK(ring.size() <= 73);
  }
  CHECK(arc({0, 0}, 14, 0, 360).size() < 40);
}

TEST_CASE("both painters draw the same picture", "[shapes]") {
  ShapeList list;
  SECTION("star") {
    list.fill(star, Qt::black);
  }
  SECTION("ring") {
    list.strip(arc({30, 30}, 22, -40, 200, 5), arc({30, 30}, 12, -40, 200, 5), Qt::darkRed);
  }
  SECTION("lines") {
    list.circle({30, 30}, 20, Qt::black, {.width_px = 5, .on_px = 8, .off_px = 6});
    list.line(star, Qt::blue, {.width_px = 3});
  }
  CHECK(difference(painted(list), QImage(painted({}))) > 0.05);
  CHECK(difference(painted(list), from_triangles(list)) < 0.02);
}

TEST_CASE("a list put on another is moved as a whole", "[shapes]") {
  ShapeList one;
  one.rect({0, 0}, {10, 10}, Qt::black);
  one.label({.text = "118", .at = {5, 5}});
  ShapeList two;
  two.rect({0, 0}, {1, 1}, Qt::black);
  two.add(one, {100, 50});
  CHECK(two.points[two.shapes[1].first].x == 100);
  CHECK(two.labels[0].at.y == 55);
}

}  // namespace kneerail::elevation
