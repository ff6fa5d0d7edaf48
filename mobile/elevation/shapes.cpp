#include "mobile/elevation/shapes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/base/result.h"

namespace kneerail::elevation {

void ShapeList::clear() {
  points.clear();
  shapes.clear();
  labels.clear();
}

void ShapeList::add(const ShapeList& other, Point by) {
  const auto first = static_cast<std::uint32_t>(points.size());
  for (const Point& point : other.points) points.push_back({point.x + by.x, point.y + by.y});
  for (Shape shape : other.shapes) {
    shape.first += first;
    shapes.push_back(shape);
  }
  for (Label label : other.labels) {
    label.at = {label.at.x + by.x, label.at.y + by.y};
    labels.push_back(std::move(label));
  }
}

void ShapeList::add_shape(ShapeKind kind, std::span<const Point> of, const QColor& color,
                          const Stroke& stroke) {
  Shape shape;
  shape.kind = kind;
  shape.color = color.rgba();
  shape.first = static_cast<std::uint32_t>(points.size());
  shape.count = static_cast<std::uint32_t>(of.size());
  shape.stroke = stroke;
  points.insert(points.end(), of.begin(), of.end());
  shapes.push_back(shape);
}

void ShapeList::fill(std::span<const Point> ring, const QColor& color) {
  if (ring.size() >= 3) add_shape(ShapeKind::fill, ring, color);
}

void ShapeList::strip(std::span<const Point> outer, std::span<const Point> inner,
                      const QColor& color) {
  check(outer.size() == inner.size(), "a strip has two sides of different length");
  if (outer.size() < 2) return;
  add_shape(ShapeKind::strip, outer, color);
  points.insert(points.end(), inner.begin(), inner.end());
  shapes.back().count *= 2;
}

void ShapeList::line(std::span<const Point> way, const QColor& color, const Stroke& stroke) {
  if (way.size() >= 2) add_shape(ShapeKind::line, way, color, stroke);
}

void ShapeList::line(Point from, Point to, const QColor& color, const Stroke& stroke) {
  line(std::array{from, to}, color, stroke);
}

void ShapeList::rect(Point corner, Point size, const QColor& color) {
  const Point end{corner.x + size.x, corner.y + size.y};
  fill(std::array{corner, Point{end.x, corner.y}, end, Point{corner.x, end.y}}, color);
}

void ShapeList::rect_outline(Point corner, Point size, const QColor& color, Stroke stroke) {
  const Point end{corner.x + size.x, corner.y + size.y};
  stroke.closed = true;
  line(std::array{corner, Point{end.x, corner.y}, end, Point{corner.x, end.y}}, color, stroke);
}

void ShapeList::disc(Point middle, float radius, const QColor& color) {
  std::vector<Point> ring = arc(middle, radius, 0, 360);
  ring.pop_back();
  fill(ring, color);
}

void ShapeList::circle(Point middle, float radius, const QColor& color, Stroke stroke) {
  std::vector<Point> ring = arc(middle, radius, 0, 360);
  ring.pop_back();
  stroke.closed = true;
  line(ring, color, stroke);
}

float arc_step(float radius) {
  if (radius <= arc_error_px) return 90;
  const float half = std::acos(1 - arc_error_px / radius);
  return std::max(2 * half * 180 / std::numbers::pi_v<float>, arc_step_degrees);
}

std::vector<Point> arc(Point middle, float radius, float from_degrees, float to_degrees) {
  return arc(middle, radius, from_degrees, to_degrees, arc_step(radius));
}

std::vector<Point> arc(Point middle, float radius, float from_degrees, float to_degrees,
                       float step_degrees) {
  const float turn = to_degrees - from_degrees;
  const int steps = std::max(static_cast<int>(std::ceil(std::abs(turn) / step_degrees)), 1);
  std::vector<Point> points;
  points.reserve(static_cast<std::size_t>(steps) + 1);
  for (int step = 0; step <= steps; ++step) {
    const float degrees =
        from_degrees + turn * static_cast<float>(step) / static_cast<float>(steps);
    const float angle = degrees * std::numbers::pi_v<float> / 180;
    points.push_back({middle.x + radius * std::cos(angle), middle.y + radius * std::sin(angle)});
  }
  return points;
}

std::vector<std::vector<Point>> dashes(std::span<const Point> way, const Stroke& stroke) {
  std::vector<Point> whole(way.begin(), way.end());
  if (stroke.closed && !whole.empty()) whole.push_back(whole.front());
  if (stroke.on_px <= 0 || stroke.off_px <= 0) return {whole};
  std::vector<std::vector<Point>> found;
  bool on = true;
  float left = stroke.on_px;
  std::vector<Point> dash{whole.front()};
  for (std::size_t i = 1; i < whole.size(); ++i) {
    Point from = whole[i - 1];
    float length = std::hypot(whole[i].x - from.x, whole[i].y - from.y);
    while (length > left) {
      const float t = left / length;
      from = {from.x + (whole[i].x - from.x) * t, from.y + (whole[i].y - from.y) * t};
      length -= left;
      if (on) {
        dash.push_back(from);
        found.push_back(std::move(dash));
      }
      dash = {from};
      on = !on;
      left = on ? stroke.on_px : stroke.off_px;
    }
    left -= length;
    if (on) dash.push_back(whole[i]);
  }
  if (on && dash.size() > 1) found.push_back(std::move(dash));
  return found;
}

}  // namespace kneerail::elevation
