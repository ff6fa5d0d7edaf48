#include "mobile/elevation/fitting_shapes.h"

#include <array>
#include <cmath>
#include <functional>

#include "mobile/elevation/grade_glyph.h"
#include "mobile/elevation/weld_shapes.h"

namespace kneerail::elevation {

namespace {

// In outside diameters of the tube.
constexpr float half_body = 1.62F / 2;
constexpr float arm_length = 2.35F;
constexpr float screw_radius = 0.22F;
constexpr float screw_along = 0.8F * arm_length;
constexpr float plate_length = 3.4F;
constexpr float plate_thickness = 0.42F;
constexpr float socket_width = 1.56F;
constexpr float socket_length = 1.5F;

/// Arms that a fitting has: those of its kind that a tube comes to.
Joins arms_of(WhatItDoes does, Joins joins) {
  const bool through = joins.left && joins.right;
  if (does == WhatItDoes::elbow || (does == WhatItDoes::three_way_tee && through)) joins.up = false;
  return joins;
}

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
    const WhatItDoes does = part_.does.value_or(WhatItDoes::plate);
    switch (does) {
      case WhatItDoes::three_way_tee:
      case WhatItDoes::corner_tee:
      case WhatItDoes::elbow:
      case WhatItDoes::cross:
        return arms(arms_of(does, fitting_.joins));
      case WhatItDoes::adjustable_swivel:
        return swivel();
      case WhatItDoes::sleeve_coupling:
        return sleeve();
      case WhatItDoes::base_flange:
        return base_flange();
      case WhatItDoes::wall_flange:
        return part_.role == Role::base_fixing ? post_on_wall() : wall_flange();
      case WhatItDoes::end_cap:
        return end_cap();
      case WhatItDoes::clip_on_for_infill:
        return clip_on();
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

  /// A body of one outline, in outside diameters about the middle.
  void body(const std::vector<Point>& outline) {
    std::vector<Point> ring;
    for (const Point& point : outline) ring.push_back(at(point.x, point.y));
    if (!part_.struck) list_.fill(ring, body_color());
    Stroke closed = edge_;
    closed.closed = true;
    list_.line(ring, pen_.color().edge, closed);
  }

  void box(float x, float y, float width, float height) {
    body({{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}});
  }

  void screw(float x, float y) {
    if (pen_.far() || part_.struck) return;
    std::array<Point, 6> corners;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const float angle = static_cast<float>(i) * 1.04719755F;  // 60 degrees
      corners[i] = at(x + screw_radius * std::cos(angle), y + screw_radius * std::sin(angle));
    }
    list_.fill(corners, pen_.color().edge);
  }

  void arms(const Joins& on) {
    constexpr float h = half_body;
    constexpr float l = arm_length;
    std::vector<Point> outline;
    // A corner between two arms is hollow, between none it stands out; beside one arm it is in
    // line.
    if (on.left == on.up) outline.push_back({-h, -h});
    if (on.up) outline.insert(outline.end(), {{-h, -l}, {h, -l}});
    if (on.up == on.right) outline.push_back({h, -h});
    if (on.right) outline.insert(outline.end(), {{l, -h}, {l, h}});
    if (on.right == on.down) outline.push_back({h, h});
    if (on.down) outline.insert(outline.end(), {{h, l}, {-h, l}});
    if (on.down == on.left) outline.push_back({-h, h});
    if (on.left) outline.insert(outline.end(), {{-l, h}, {-l, -h}});
    body(outline);
    if (on.left) screw(-screw_along, 0);
    if (on.right) screw(screw_along, 0);
    if (on.up) screw(0, -screw_along);
    if (on.down) screw(0, screw_along);
  }

  void swivel() {
    const Joins& on = fitting_.joins;
    std::vector<Point> ways;
    if (on.left) ways.push_back({-1, 0});
    if (on.right) ways.push_back({1, 0});
    if (ways.size() < 2) ways.push_back({0, 1});
    for (const Point& way : ways) {
      constexpr float half = 1.65F / 2;
      constexpr float from = 0.35F;
      constexpr float to = from + 2.0F;
      const Point across{-way.y * half, way.x * half};
      body({{way.x * from + across.x, way.y * from + across.y},
            {way.x * to + across.x, way.y * to + across.y},
            {way.x * to - across.x, way.y * to - across.y},
            {way.x * from - across.x, way.y * from - across.y}});
      screw(way.x * 1.75F, way.y * 1.75F);
    }
    if (!part_.struck) list_.disc(fitting_.middle, 0.88F * od_, body_color());
    list_.circle(fitting_.middle, 0.88F * od_, pen_.color().edge, edge_);
    if (!pen_.far() && !part_.struck) {
      list_.disc(fitting_.middle, 0.3F * od_, pen_.color().edge);
    }
  }

  void sleeve() {
    box(-1.75F, -0.75F, 3.5F, 1.5F);
    screw(-1.3F, 0);
    screw(1.3F, 0);
  }

  void base_flange() {
    const float down = (fitting_.deck_y - fitting_.middle.y) / od_;
    const float plate = down - plate_thickness;
    box(-socket_width / 2, plate - socket_length, socket_width, socket_length);
    box(-plate_length / 2, plate, plate_length, plate_thickness);
    if (pen_.far() || part_.struck) return;
    for (const float x : {-1.45F, 1.15F}) {
      list_.rect(at(x, plate - 0.28F), {0.3F * od_, 0.28F * od_}, pen_.color().edge);
    }
    screw(0, plate - 1.0F);
  }

  /// Where a rail ends at a wall.
  void wall_flange() {
    const float side = fitting_.joins.left && !fitting_.joins.right ? 1.0F : -1.0F;
    constexpr float face = socket_length + plate_thickness - 0.3F;  // the rail ends in it
    const auto out = [&](float x, float y) { return Point{side * x, y}; };
    constexpr float s = socket_width / 2;
    constexpr float inner = face - plate_thickness;
    constexpr float p = plate_length / 2;
    body({out(inner - socket_length, -s), out(inner, -s), out(inner, s),
          out(inner - socket_length, s)});
    body({out(inner, -p), out(face, -p), out(face, p), out(inner, p)});
    if (pen_.far()) return;
    screw(side * (inner - 0.75F), 0);
    const Stroke hair{.width_px = pen_.px(1)};
    for (float y = -p; y < p + 0.5F; y += 0.5F) {
      const Point from = out(face, y);
      const Point to = out(face + 0.9F, y - 0.9F);
      list_.line(at(from.x, from.y), at(to.x, to.y), pen_.color().concrete_line, hair);
    }
  }

  /// A post that stands on the face of a wall: plate behind it, four bolts.
  void post_on_wall() {
    box(-1.2F, -plate_length / 2, 2.4F, plate_length);
    box(-socket_width / 2, -socket_length / 2, socket_width, socket_length);
    for (const float x : {-0.95F, 0.95F}) {
      for (const float y : {-1.35F, 1.35F}) screw(x, y);
    }
  }

  void end_cap() {
    const float side = fitting_.joins.left && !fitting_.joins.right ? 1.0F : -1.0F;
    std::vector<Point> outline{{0, -side * 0.5F}};
    const float turn = side > 0 ? 0.0F : 180.0F;
    for (const Point& point : arc({side * 0.8F, 0}, 0.5F, turn - 90, turn + 90, arc_step_degrees)) {
      outline.push_back(point);
    }
    outline.push_back({0, side * 0.5F});
    body(outline);
  }

  void clip_on() {
    const Stroke bar{.width_px = pen_.px(1.4)};
    if (!pen_.far() && !part_.struck) {
      list_.line(at(-2.4F, 1), at(2.4F, 1), pen_.color().edge, {.width_px = pen_.px(1.7)});
      for (const float x : {-1.8F, -0.9F, 0.0F, 0.9F, 1.8F}) {
        list_.line(at(x, 1), at(x, 3.4F), pen_.color().edge, bar);
      }
    }
    body({{-0.7F, -0.8F},
          {0.7F, -0.8F},
          {0.7F, 0.9F},
          {0.3F, 0.9F},
          {0.3F, 0.68F},
          {-0.3F, 0.68F},
          {-0.3F, 0.9F},
          {-0.7F, 0.9F}});
  }

  void anchor() {
    if (pen_.far() || part_.struck) return;
    const float down = (fitting_.deck_y - fitting_.middle.y) / od_;
    for (const float x : {-1.3F, 1.3F}) {
      list_.line(at(x, down), at(x, down + 1.3F), pen_.color().edge, {.width_px = pen_.px(3)});
    }
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
  const SheetPart& part = *fitting.part;
  const WeldPlace place{&part, fitting.middle, fitting.deck_y};
  if (part.role == Role::weld) return add_weld(list, pen, place);
  if (part.role == Role::cut_edge) return add_cut_edge(list, pen, place);
  if (part.welded) {
    if (part.role == Role::base_fixing) add_weld_foot(list, pen, place);
    return;
  }
  FittingDrawer(list, pen, fitting).draw();
}

void add_weeping(ShapeList& list, const RunPen& pen, const Fitting& fitting) {
  if (pen.far() || fitting.part->struck) return;
  const float od = pen.od_px(*fitting.part);
  const auto seed = std::hash<Uuid>{}(fitting.part->id);
  constexpr float longest = 4.2F;
  constexpr float tongue_x[] = {-0.26F, 0.04F, 0.30F};
  constexpr float shares[] = {0.62F, 1.0F, 0.45F};
  const float top =
      fitting.joins.down ? fitting.middle.y + arm_length * od : fitting.middle.y + half_body * od;
  for (unsigned tongue = 0; tongue < 3; ++tongue) {
    const auto share = static_cast<float>((seed >> (8 * tongue)) & 0xFFU) / 255.0F;
    const float length = longest * shares[tongue] * (0.8F + 0.2F * share) * od;
    const float x = fitting.middle.x + tongue_x[tongue] * od;
    const float half = (0.10F + 0.05F * share) * od;
    list.fill(std::array{Point{x - half, top}, Point{x + half, top},
                         Point{x + 0.55F * half, top + 0.7F * length}, Point{x, top + length},
                         Point{x - 0.45F * half, top + 0.6F * length}},
              pen.color().patch[1]);
  }
}

float glyph_radius_px(const RunPen& pen, Room room) {
  if (pen.far()) return pen.px(8);
  if (room == Room::little) return pen.px(pen.crowded() ? 9 : 11);
  return pen.px(pen.crowded() ? 12 : 14);
}

void add_grade_of(ShapeList& list, const RunPen& pen, const SheetPart& part, Point middle,
                  float radius, Ghost ghost) {
  if (part.struck) return;
  list.disc(middle, radius + pen.px(glyph_ground_drawn), pen.color().sheet);
  if (part.now) {
    const int grade = std::clamp(part.now->grade, 1, 5);
    const QColor& color = pen.color().grade[static_cast<std::size_t>(grade - 1)];
    return add_grade(list, middle, radius, grade, color);
  }
  add_open_grade(list, middle, radius, pen.ink2(), pen.px(1));
  if (part.last && ghost == Ghost::shown) {
    add_last_grade(list, middle, radius, part.last->grade, pen.ghost());
  }
}

}  // namespace kneerail::elevation
