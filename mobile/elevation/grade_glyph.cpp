#include "mobile/elevation/grade_glyph.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace kneerail::elevation {

namespace {

constexpr float coating_radius = 0.97F;
constexpr float wall_radius = 0.82F;

struct Pit {
  float angle;  ///< degrees
  float depth;  ///< in outer radii
  float half_width;
};

struct Section {
  float thickness;  ///< in outer radii
  std::vector<Pit> pits;
  float from = 0;
  float to = 360;
};

Section section(int grade) {
  switch (grade) {
    case 1:
      return {0.50F, {}};
    case 2:
      return {0.37F, {}};
    case 3:
      return {0.28F, {{40, 0.17F, 22}}};
    case 4:
      return {0.18F, {{20, 0.12F, 20}, {140, 0.13F, 24}, {265, 0.10F, 18}}};
    default:
      return {0.18F, {{150, 0.11F, 22}, {240, 0.09F, 18}}, -5, 275};
  }
}

float pitted(float angle, const std::vector<Pit>& pits) {
  float radius = wall_radius;
  for (const Pit& pit : pits) {
    const float off = std::remainder(angle - pit.angle, 360.0F);
    if (std::abs(off) >= pit.half_width) continue;
    const float cosine = std::cos(std::numbers::pi_v<float> / 2 * off / pit.half_width);
    radius -= pit.depth * cosine * cosine;
  }
  return radius;
}

void wall(ShapeList& list, Point middle, float radius, const Section& at, const QColor& color) {
  const float step = at.pits.empty() ? arc_step(radius) : arc_step_degrees;
  std::vector<Point> outer = arc(middle, radius, at.from, at.to, step);
  const std::vector<Point> inner =
      arc(middle, radius * (wall_radius - at.thickness), at.from, at.to, step);
  const auto steps = static_cast<float>(outer.size() - 1);
  for (std::size_t i = 0; i < outer.size(); ++i) {
    const float angle = at.from + (at.to - at.from) * static_cast<float>(i) / steps;
    const float share = pitted(angle, at.pits);
    outer[i] = {middle.x + (outer[i].x - middle.x) * share,
                middle.y + (outer[i].y - middle.y) * share};
  }
  list.strip(outer, inner, color);
}

}  // namespace

void add_grade(ShapeList& list, Point middle, float radius, int grade, const QColor& color) {
  const Stroke coating{.width_px = std::max(1.4F, 0.085F * radius)};
  if (grade == 1) list.circle(middle, coating_radius * radius, color, coating);
  if (grade == 2) {
    constexpr float turn = 36;  // ten dashes, 42 % on
    for (int dash = 0; dash < 10; ++dash) {
      const float from = turn * static_cast<float>(dash);
      list.line(arc(middle, coating_radius * radius, from, from + 0.42F * turn), color, coating);
    }
  }
  if (grade == 3) list.line(arc(middle, coating_radius * radius, 90, 270), color, coating);
  wall(list, middle, radius, section(grade), color);
  if (grade >= 5) {  // the piece that has gone
    const Point thrown{middle.x + 0.30F * radius, middle.y - 0.30F * radius};
    wall(list, thrown, radius, {0.18F, {}, -62, -32}, color);
  }
}

void add_open_grade(ShapeList& list, Point middle, float radius, const QColor& color, float px) {
  const float around = 2 * std::numbers::pi_v<float> * coating_radius * radius;
  const float dash = around / (2 * std::max(std::round(around / (8 * px)), 6.0F));
  list.circle(middle, coating_radius * radius, color,
              {.width_px = 1.6F * px, .on_px = dash, .off_px = dash});
}

void add_last_grade(ShapeList& list, Point middle, float radius, int grade, const QColor& color) {
  add_grade(list, middle, 0.72F * radius, grade, color);
}

}  // namespace kneerail::elevation
