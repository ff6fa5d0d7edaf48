#include "mobile/elevation/fitting_shapes.h"

#include <array>
#include <cmath>

#include "mobile/elevation/grade_glyph.h"

namespace kneerail::elevation {

namespace {

// In outside diameters of the tube.
constexpr float body_width = 1.62F;
constexpr float arm_length = 2.35F;
constexpr float screw_radius = 0.22F;

struct Arms {
  bool left = false;
  bool right = false;
  bool up = false;
  bool down = false;
};

class FittingDrawer {
 public:
  FittingDrawer(ShapeList& list, const RunPen& pen, const Fitting& fitting)
      : list_(list),
        pen_(pen),
        fitting_(fitting),
        part_(*fitting.part),
        od_(pen.od_px(part_)),
        edge_{.width_px = pen.px(1.7)} {
    if (part_.struck) edge_ = {.width_px = pen.px(1.6), .on_px = pen.px(6), .off_px = pen.px(4)};
  }

  void draw() {
    if (part_.role == Role::weld) return weld();
    if (part_.welded) return part_.role == Role::base_fixing ? weld_foot() : void();
    switch (part_.does.value_or(WhatItDoes::plate)) {
      case WhatItDoes::three_way_tee:
      case WhatItDoes::corner_tee:
      case WhatItDoes::elbow:
        return arms(arms_at({.left = true, .right = true, .up = !fitting_.at_top, .down = true}));
      case WhatItDoes::cross:
        return arms(arms_at({.left = true, .right = true, .up = true, .down = true}));
      case WhatItDoes::adjustable_swivel:
        return swivel();
      case WhatItDoes::sleeve_coupling:
        return sleeve();
      case WhatItDoes::base_flange:
      case WhatItDoes::wall_flange:
        return flange();
      case WhatItDoes::end_cap:
        return end_cap();
      case WhatItDoes::clip_on_for_infill:
        return box(-0.7F, -0.8F, 1.4F, 1.6F);
      case WhatItDoes::bolt:
        return anchor();
      default:
        return;
    }
  }

 private:
  [[nodiscard]] Point at(float x, float y) const {
    return {fitting_.middle.x + x * od_, fitting_.middle.y + y * od_};
  }

  [[nodiscard]] QColor body_color() const {
    const auto& known = part_.now ? part_.now : part_.last;
    const bool rusty = known && known->grade >= 3 && part_.finish != Finish::aluminium &&
                       part_.finish != Finish::stainless;
    return rusty ? pen_.color().fitting_rust : pen_.color().zinc;
  }

  void box(float x, float y, float width, float height) {
    const Point size{width * od_, height * od_};
    if (!part_.struck) list_.rect(at(x, y), size, body_color());
    list_.rect_outline(at(x, y), size, pen_.color().edge, edge_);
  }

  void screw(float x, float y) {
    if (pen_.far() || part_.struck) return;
    std::vector<Point> hexagon = arc(at(x, y), screw_radius * od_, 0, 360);
    std::array<Point, 6> corners;
    for (std::size_t i = 0; i < corners.size(); ++i) corners[i] = hexagon[i * 12];
    list_.fill(corners, pen_.color().edge);
  }

  [[nodiscard]] Arms arms_at(Arms all) const {
    if (fitting_.neighbours == Neighbours::left_only) all.right = false;
    if (fitting_.neighbours == Neighbours::right_only) all.left = false;
    return all;
  }

  void arms(const Arms& on) {
    constexpr float half = body_width / 2;
    constexpr float reach = arm_length - half;
    constexpr float screw_at = 0.8F * arm_length;
    if (on.left) box(-arm_length, -half, reach, body_width);
    if (on.right) box(half, -half, reach, body_width);
    if (on.up) box(-half, -arm_length, body_width, reach);
    if (on.down) box(-half, half, body_width, reach);
    box(-half, -half, body_width, body_width);
    if (on.left) screw(-screw_at, 0);
    if (on.right) screw(screw_at, 0);
    if (on.up) screw(0, -screw_at);
    if (on.down) screw(0, screw_at);
  }

  void swivel() {
    box(-2.35F, -0.825F, 2, 1.65F);
    box(0.35F, -0.825F, 2, 1.65F);
    if (!part_.struck) list_.disc(fitting_.middle, 0.88F * od_, body_color());
    list_.circle(fitting_.middle, 0.88F * od_, pen_.color().edge, edge_);
  }

  void sleeve() {
    box(-1.75F, -0.75F, 3.5F, 1.5F);
    screw(-1.2F, 0);
    screw(1.2F, 0);
  }

  void flange() {
    const float down = (fitting_.deck_y - fitting_.middle.y) / od_;
    constexpr float plate = 0.42F;
    box(-0.78F, down - plate - 1.5F, 1.56F, 1.5F);
    box(-1.7F, down - plate, 3.4F, plate);
    if (pen_.far()) return;
    for (const float x : {-1.3F, 1.0F}) box(x, down - plate - 0.24F, 0.3F, 0.24F);
    screw(0, down - plate - 1.1F);
  }

  void end_cap() {
    const bool to_right = fitting_.neighbours == Neighbours::left_only;
    const float turn = to_right ? 0 : 180;
    const Point start = at(to_right ? 0.8F : -0.8F, 0);
    std::vector<Point> ring = arc(start, 0.5F * od_, turn - 90, turn + 90);
    ring.push_back(at(0, to_right ? 0.5F : -0.5F));
    ring.push_back(at(0, to_right ? -0.5F : 0.5F));
    if (!part_.struck) list_.fill(ring, body_color());
    Stroke closed = edge_;
    closed.closed = true;
    list_.line(ring, pen_.color().edge, closed);
  }

  void anchor() {
    if (pen_.far()) return;
    const float down = (fitting_.deck_y - fitting_.middle.y) / od_;
    for (const float x : {-1.15F, 1.15F}) {
      list_.line(at(x, down), at(x, down + 1.3F), pen_.color().edge, {.width_px = pen_.px(3)});
    }
  }

  /// Ripples along the joint, either side of the grade.
  void weld() {
    if (pen_.far()) return;
    const float pitch = pen_.px(4.2);
    for (const float side : {-1.12F, 1.12F}) {
      const float x = fitting_.middle.x + side * od_;
      for (int i = -2; i < 2; ++i) {
        const float y = fitting_.middle.y + (static_cast<float>(i) + 0.5F) * pitch;
        const float from = side < 0 ? 90.0F : -90.0F;
        list_.line(arc({x, y}, pitch / 2, from, from + 180), pen_.color().edge,
                   {.width_px = pen_.px(1.4)});
      }
    }
  }

  void weld_foot() {
    const float down = (fitting_.deck_y - fitting_.middle.y) / od_;
    box(-1.7F, down - 0.42F, 3.4F, 0.42F);
  }

  ShapeList& list_;
  const RunPen& pen_;
  const Fitting& fitting_;
  const SheetPart& part_;
  float od_;
  Stroke edge_;
};

}  // namespace

void add_fitting(ShapeList& list, const RunPen& pen, const Fitting& fitting) {
  FittingDrawer(list, pen, fitting).draw();
}

void add_grade_of(ShapeList& list, const RunPen& pen, const SheetPart& part, Point middle,
                  Room room) {
  if (part.struck) return;
  const float radius = pen.px(pen.far() ? 8 : (room == Room::little ? 11 : 14));
  list.disc(middle, radius + pen.px(glyph_ground_drawn), pen.color().sheet);
  if (part.now) {
    const auto which = static_cast<std::size_t>(std::clamp(part.now->grade, 1, 5) - 1);
    return add_grade(list, middle, radius, part.now->grade, pen.color().grade[which]);
  }
  add_open_grade(list, middle, radius, pen.ink2(), pen.px(1));
  if (part.last) add_last_grade(list, middle, radius, part.last->grade, pen.ghost());
}

}  // namespace kneerail::elevation
