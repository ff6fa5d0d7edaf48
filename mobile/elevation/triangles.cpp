#include "mobile/elevation/triangles.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace kneerail::elevation {

namespace {

float cross(Point a, Point b, Point c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

float area(std::span<const Point> ring) {
  float twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point& next = ring[(i + 1) % ring.size()];
    twice += ring[i].x * next.y - next.x * ring[i].y;
  }
  return twice / 2;
}

bool is_convex(std::span<const Point> ring, float turn) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point& next = ring[(i + 1) % ring.size()];
    if (cross(ring[i], next, ring[(i + 2) % ring.size()]) * turn < 0) return false;
  }
  return true;
}

class Cutter {
 public:
  explicit Cutter(std::vector<Vertex>& out) : out_(out) {}

  void color(QRgb color) {
    const int alpha = qAlpha(color);
    const auto times_alpha = [&](int part) {
      return static_cast<std::uint8_t>((part * alpha + 127) / 255);
    };
    vertex_.r = times_alpha(qRed(color));
    vertex_.g = times_alpha(qGreen(color));
    vertex_.b = times_alpha(qBlue(color));
    vertex_.a = static_cast<std::uint8_t>(alpha);
  }

  void fill(std::span<const Point> ring) {
    const float turn = area(ring);
    if (is_convex(ring, turn)) {
      for (std::size_t i = 2; i < ring.size(); ++i) triangle(ring[0], ring[i - 1], ring[i]);
    } else {
      ears(ring, turn);
    }
  }

  void strip(std::span<const Point> both) {
    const std::size_t side = both.size() / 2;
    for (std::size_t i = 1; i < side; ++i) {
      quad(both[i - 1], both[i], both[side + i], both[side + i - 1]);
    }
  }

  void line(std::span<const Point> way, const Stroke& stroke) {
    if (stroke.on_px > 0 && stroke.off_px > 0) {
      for (const auto& dash : dashes(way, stroke)) solid(dash, stroke.width_px / 2, false);
    } else {
      solid(way, stroke.width_px / 2, stroke.closed);
    }
  }

 private:
  void triangle(Point a, Point b, Point c) {
    for (const Point& point : {a, b, c}) {
      vertex_.x = point.x;
      vertex_.y = point.y;
      out_.push_back(vertex_);
    }
  }

  void quad(Point a, Point b, Point c, Point d) {
    triangle(a, b, c);
    triangle(a, c, d);
  }

  void ears(std::span<const Point> ring, float turn) {
    std::vector<std::size_t> left(ring.size());
    std::iota(left.begin(), left.end(), 0U);
    std::size_t at = 0;
    std::size_t tried = 0;
    while (left.size() > 3 && tried < left.size()) {
      const std::size_t n = left.size();
      const Point a = ring[left[at % n]];
      const Point b = ring[left[(at + 1) % n]];
      const Point c = ring[left[(at + 2) % n]];
      if (is_ear(ring, left, at % n, turn)) {
        triangle(a, b, c);
        left.erase(left.begin() + static_cast<std::ptrdiff_t>((at + 1) % n));
        tried = 0;
      } else {
        ++at;
        ++tried;
      }
      at %= left.size();
    }
    for (std::size_t i = 2; i < left.size(); ++i) {
      triangle(ring[left[0]], ring[left[i - 1]], ring[left[i]]);
    }
  }

  static bool is_ear(std::span<const Point> ring, const std::vector<std::size_t>& left,
                     std::size_t at, float turn) {
    const std::size_t n = left.size();
    const Point a = ring[left[at]];
    const Point b = ring[left[(at + 1) % n]];
    const Point c = ring[left[(at + 2) % n]];
    if (cross(a, b, c) * turn <= 0) return false;
    for (std::size_t i = 3; i < n; ++i) {
      const Point p = ring[left[(at + i) % n]];
      const bool inside =
          cross(a, b, p) * turn >= 0 && cross(b, c, p) * turn >= 0 && cross(c, a, p) * turn >= 0;
      if (inside) return false;
    }
    return true;
  }

  void solid(std::span<const Point> all, float half, bool closed) {
    std::vector<Point> way;
    for (const Point& point : all) {
      if (way.empty() || std::hypot(point.x - way.back().x, point.y - way.back().y) > 1e-3F) {
        way.push_back(point);
      }
    }
    if (way.size() < 2) return;
    const std::size_t n = way.size();
    std::vector<Joint> joints(n);
    for (std::size_t i = 0; i < n; ++i) {
      const bool first = i == 0 && !closed;
      const bool last = i + 1 == n && !closed;
      const Point before = first ? normal(way[0], way[1]) : normal(way[(i + n - 1) % n], way[i]);
      const Point after = last ? before : normal(way[i], way[(i + 1) % n]);
      joints[i] = joint(before, after, half);
      if (joints[i].sharp) bevel(way[i], joints[i]);
    }
    for (std::size_t i = closed ? 0 : 1; i < n; ++i) {
      const std::size_t from = (i + n - 1) % n;
      const Point start = joints[from].after;
      const Point end = joints[i].before;
      quad(plus(way[from], start, 1), plus(way[i], end, 1), plus(way[i], end, -1),
           plus(way[from], start, -1));
    }
  }

  /// How far the sides of a line stand from one of its points, for the piece before and after it.
  struct Joint {
    Point before;
    Point after;
    bool sharp = false;
  };

  void bevel(Point at, const Joint& joint) {
    triangle(at, plus(at, joint.before, 1), plus(at, joint.after, 1));
    triangle(at, plus(at, joint.before, -1), plus(at, joint.after, -1));
  }

  static Point normal(Point from, Point to) {
    const float length = std::max(std::hypot(to.x - from.x, to.y - from.y), 1e-6F);
    return {-(to.y - from.y) / length, (to.x - from.x) / length};
  }

  /// Mitred: half the width along the line that halves the corner.
  static Joint joint(Point before, Point after, float half) {
    const Point sum{before.x + after.x, before.y + after.y};
    const float squared = sum.x * sum.x + sum.y * sum.y;
    constexpr float sharpest = 1;  // |sum| 1: the mitre is twice the half width
    if (squared < sharpest) {
      return {{before.x * half, before.y * half}, {after.x * half, after.y * half}, true};
    }
    const Point side{sum.x * 2 / squared * half, sum.y * 2 / squared * half};
    return {side, side, false};
  }

  static Point plus(Point at, Point by, float times) {
    return {at.x + by.x * times, at.y + by.y * times};
  }

  std::vector<Vertex>& out_;
  Vertex vertex_;
};

}  // namespace

std::vector<Vertex> triangles(const ShapeList& list) {
  std::vector<Vertex> out;
  out.reserve(list.points.size() * 4);
  Cutter cutter(out);
  for (const Shape& shape : list.shapes) {
    const auto points = std::span(list.points).subspan(shape.first, shape.count);
    cutter.color(shape.color);
    switch (shape.kind) {
      case ShapeKind::fill:
        cutter.fill(points);
        break;
      case ShapeKind::strip:
        cutter.strip(points);
        break;
      case ShapeKind::line:
        cutter.line(points, shape.stroke);
        break;
    }
  }
  return out;
}

}  // namespace kneerail::elevation
