#include "mobile/elevation/bay_shapes.h"

#include <array>

namespace kneerail::elevation {

void add_toe_board(ShapeList& list, const RunPen& pen, const SheetPart& part, const BayFrame& bay) {
  const auto height = static_cast<float>(2 * static_cast<double>(part.up_mm) * pen.scale());
  const bool painted = part.finish == Finish::paint || part.finish == Finish::zinc_and_paint;
  const auto& color = pen.color();
  Stroke edge{.width_px = pen.edge_px()};
  if (part.struck) {
    edge.on_px = pen.px(9);
    edge.off_px = pen.px(6);
  } else {
    list.rect({bay.left, -height}, {bay.right - bay.left, height},
              painted ? color.paint : color.zinc);
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
  const Stroke edge{.width_px = pen.edge_px()};
  const auto tube = [&](Point corner, Point size) {
    list.rect(corner, size, color.paint);
    list.rect_outline(corner, size, color.edge, edge);
  };
  tube({left, bay.top - od / 2}, {od, foot - bay.top + od});
  tube({right - od, bay.top - od / 2}, {od, foot - bay.top + od});
  for (const float y : {bay.top, middle, foot}) {
    tube({left + od, y - od / 2}, {right - left - 2 * od, od});
  }
  for (const float y : {bay.top + 2 * od, foot - 2 * od}) {
    list.circle({bay.left + od, y}, 0.5F * od, color.edge, edge);
  }
  list.rect({right, middle - 2 * od}, {bay.right - right, 0.7F * od}, color.edge);
  list.line(arc({left, foot}, right - left, -38, 0), color.edge,
            {.width_px = pen.px(1.4), .on_px = pen.px(6), .off_px = pen.px(5)});
}

void add_infill(ShapeList& list, const RunPen& pen, const BayFrame& bay) {
  if (pen.far()) return;
  const auto every = static_cast<float>(110 * pen.scale());
  const auto foot = static_cast<float>(-100 * pen.scale());
  const float half = pen.px(2.1);
  const Stroke hair{.width_px = pen.px(1.4)};
  for (float x = bay.left + every; x < bay.right - every / 2; x += every) {
    for (const float side : {-half, half}) {
      list.line(Point{x + side, bay.top}, Point{x + side, foot}, pen.color().edge, hair);
    }
  }
  list.line(Point{bay.left, foot}, Point{bay.right, foot}, pen.color().edge,
            {.width_px = pen.px(3)});
}

}  // namespace kneerail::elevation
