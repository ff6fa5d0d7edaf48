#include "mobile/elevation/weld_shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "mobile/elevation/fitting_shapes.h"
#include "mobile/elevation/grade_glyph.h"

namespace kneerail::elevation {

namespace {

constexpr double pitch_drawn = 4.2;
constexpr double height_drawn = 6;         // of an arc, from the joint's line
constexpr float beside_the_grade = 1.12F;  // outside diameters

}  // namespace

void add_ripple(ShapeList& list, const RunPen& pen, Point from, Point to) {
  const float length = std::hypot(to.x - from.x, to.y - from.y);
  if (length <= 0) return;
  const Point along{(to.x - from.x) / length, (to.y - from.y) / length};
  const Point out{along.y, -along.x};
  const int arcs = std::max(static_cast<int>(std::lround(length / pen.px(pitch_drawn))), 1);
  const float pitch = length / static_cast<float>(arcs);
  const float high = pen.px(height_drawn) / 2;
  std::vector<Point> way;
  for (int i = 0; i < arcs; ++i) {
    constexpr int steps = 6;  // small: 4 px from end to end
    for (int step = way.empty() ? 0 : 1; step <= steps; ++step) {
      const float turn = std::numbers::pi_v<float> * static_cast<float>(step) / steps;
      const float s = (static_cast<float>(i) + 0.5F - std::cos(turn) / 2) * pitch;
      const float t = std::sin(turn) * high;
      way.push_back({from.x + along.x * s + out.x * t, from.y + along.y * s + out.y * t});
    }
  }
  list.line(way, pen.color().edge, {.width_px = pen.px(1.2)});
}

void add_weld(ShapeList& list, const RunPen& pen, const WeldPlace& at) {
  if (pen.far() || at.part->struck) return;
  const float od = pen.od_px(*at.part);
  const float outside = glyph_radius_px(pen) + pen.px(glyph_ground_drawn) + pen.px(1);
  const float beside = std::max(beside_the_grade * od, outside);
  const float half = std::max(0.62F * od, pen.px(6));
  const Point m = at.middle;
  add_ripple(list, pen, {m.x - beside, m.y + half}, {m.x - beside, m.y - half});
  add_ripple(list, pen, {m.x + beside, m.y - half}, {m.x + beside, m.y + half});
}

void add_weld_foot(ShapeList& list, const RunPen& pen, const WeldPlace& at) {
  const float od = pen.od_px(*at.part);
  const Point corner{at.middle.x - 1.7F * od, at.deck_y - 0.42F * od};
  const Point size{3.4F * od, 0.42F * od};
  if (at.part->struck) {
    return list.rect_outline(corner, size, pen.color().edge,
                             {.width_px = pen.px(1.6), .on_px = pen.px(6), .off_px = pen.px(4)});
  }
  list.rect(corner, size, pen.color().paint);
  list.rect_outline(corner, size, pen.color().edge, {.width_px = pen.px(1.7)});
  if (pen.far()) return;
  add_ripple(list, pen, {at.middle.x - 0.9F * od, corner.y}, {at.middle.x + 0.9F * od, corner.y});
}

void add_cut_edge(ShapeList& list, const RunPen& pen, const WeldPlace& at) {
  if (pen.far() || at.part->struck) return;
  const float beside = glyph_radius_px(pen) + pen.px(glyph_ground_drawn);
  const Stroke stroke{.width_px = pen.px(1.6)};
  const float dash = pen.px(9);
  const float gap = pen.px(3);
  const float dot = pen.px(2.5);
  for (const float side : {-1.0F, 1.0F}) {
    const auto piece = [&](float from, float length) {
      const float start = at.middle.x + side * (beside + from);
      list.line(Point{start, at.middle.y}, Point{start + side * length, at.middle.y},
                pen.color().edge, stroke);
    };
    piece(0, dash);
    piece(dash + gap, dot);
    piece(dash + dot + 2 * gap, dash);
  }
}

}  // namespace kneerail::elevation
