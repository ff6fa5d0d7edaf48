#include "mobile/elevation/bay_shapes.h"

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace kneerail::elevation {

namespace {

bool is_painted(const SheetPart& part) {
  return part.finish == Finish::paint || part.finish == Finish::zinc_and_paint;
}

}  // namespace

void add_toe_board(ShapeList& list, const RunPen& pen, const SheetPart& part, const BayFrame& bay) {
  const auto height = static_cast<float>(2 * static_cast<double>(part.up_mm) * pen.scale());
  const auto& color = pen.color();
  Stroke edge{.width_px = pen.edge_px()};
  if (part.struck) {
    edge.on_px = pen.px(9);
    edge.off_px = pen.px(6);
  } else {
    list.rect({bay.left, -height}, {bay.right - bay.left, height},
              is_painted(part) ? color.paint : color.zinc);
  }
  for (const float y : {-height, 0.0F}) {
    list.line(Point{bay.left, y}, Point{bay.right, y}, color.edge, edge);
  }
  if (pen.far() || part.struck) return;
  const Stroke grain{.width_px = pen.px(1)};
  for (int tick = 1; tick < 4; ++tick) {
    const float y = -height * static_cast<float>(tick) / 4;
    const float length = pen.px(6);
    list.line(Point{bay.left, y}, Point{bay.left + length, y}, color.edge, grain);
    list.line(Point{bay.right - length, y}, Point{bay.right, y}, color.edge, grain);
  }
}

void add_gate(ShapeList& list, const RunPen& pen, const SheetPart& part, const BayFrame& bay) {
  const float od = pen.od_px(part);
  const auto& color = pen.color();
  const float left = bay.left + 1.6F * od;
  const float right = bay.right - 1.6F * od;
  const float foot = static_cast<float>(-80 * pen.scale());
  const float middle = (bay.top + foot) / 2;
  Stroke edge{.width_px = pen.edge_px()};
  if (part.struck) {
    edge.on_px = pen.px(9);
    edge.off_px = pen.px(6);
  }
  const auto tube = [&](Point corner, Point size) {
    if (!part.struck) list.rect(corner, size, is_painted(part) ? color.paint : color.zinc);
    list.rect_outline(corner, size, color.edge, edge);
  };
  for (const float y : {bay.top, middle, foot}) {
    tube({left + od, y - od / 2}, {right - left - 2 * od, od});
  }
  tube({left, bay.top - od / 2}, {od, foot - bay.top + od});
  tube({right - od, bay.top - od / 2}, {od, foot - bay.top + od});
  if (part.struck) return;
  for (const float share : {0.24F, 0.70F}) {  // hinge eyes, between post and frame
    const float y = bay.top + share * (foot - bay.top);
    list.line(Point{bay.left + od / 2, y}, Point{left, y}, color.edge, {.width_px = pen.px(3)});
    list.disc({bay.left + 1.05F * od, y}, 0.42F * od, color.zinc);
    list.circle({bay.left + 1.05F * od, y}, 0.42F * od, color.edge, edge);
  }
  list.rect({right - 0.4F * od, middle - 3 * od}, {bay.right - right, 0.6F * od}, color.edge);
  if (pen.far()) return;
  list.line(arc({left, foot}, right - left, -38, -3), color.edge,
            {.width_px = pen.px(1.4), .on_px = pen.px(6), .off_px = pen.px(5)});
}

void add_infill(ShapeList& list, const RunPen& pen, const BayFrame& bay) {
  if (pen.far()) return;
  const auto every = static_cast<float>(110 * pen.scale());
  const float half = pen.px(2.1);
  const Stroke hair{.width_px = pen.px(1.4)};
  for (float x = bay.left + every; x < bay.right - every / 2; x += every) {
    for (const float side : {-half, half}) {
      list.line(Point{x + side, bay.top}, Point{x + side, bay.foot}, pen.color().edge, hair);
    }
  }
  if (bay.has_foot) return;
  list.line(Point{bay.left, bay.foot}, Point{bay.right, bay.foot}, pen.color().edge,
            {.width_px = pen.px(3)});
}

void add_bent_bar(ShapeList& list, const RunPen& pen, const BayFrame& bay, float x) {
  if (pen.far()) return;
  const auto out = static_cast<float>(70 * pen.scale());
  std::vector<Point> bar;
  constexpr int steps = 24;
  for (int step = 0; step <= steps; ++step) {
    const float share = static_cast<float>(step) / steps;
    const float bow = std::sin(std::numbers::pi_v<float> * share);
    bar.push_back({x + out * bow * bow, bay.top + (bay.foot - bay.top) * share});
  }
  list.line(bar, pen.color().edge, {.width_px = pen.px(4.2)});
}

}  // namespace kneerail::elevation
