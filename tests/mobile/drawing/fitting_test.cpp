#include "mobile/elevation/fitting_shapes.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "mobile/elevation/part_place.h"
#include "tests/mobile/made_run.h"

namespace kneerail::elevation {

namespace {

using tests::made_run;

const RunDrawing usual;
const theme::Palette& light = theme::palette(theme::Theme::light);

struct Box {
  float left = 1e9F;
  float right = -1e9F;
  float top = 1e9F;
  float foot = -1e9F;
  int count = 0;
};

/// Around everything that is filled in one colour.
Box box_of(const ShapeList& list, const QColor& color) {
  Box box;
  for (const Shape& shape : list.shapes) {
    if (shape.kind == ShapeKind::line || QColor::fromRgb(shape.color) != QColor(color.rgb())) {
      continue;
    }
    ++box.count;
    for (const Point& at : std::span(list.points).subspan(shape.first, shape.count)) {
      box.left = std::min(box.left, at.x);
      box.right = std::max(box.right, at.x);
      box.top = std::min(box.top, at.y);
      box.foot = std::max(box.foot, at.y);
    }
  }
  return box;
}

/// The body of a fitting about 0, 0, in outside diameters.
Box body_of(WhatItDoes does, Joins joins) {
  const RunPen pen(usual);
  SheetPart part;
  part.does = does;
  ShapeList list;
  add_fitting(list, pen, {&part, {0, 0}, 40, joins});
  Box box = box_of(list, light.zinc);
  const float od = pen.od_px(part);
  for (float* side : {&box.left, &box.right, &box.top, &box.foot}) *side /= od;
  return box;
}

RunPiece piece_of(const RunSheet& sheet, int first, int posts) {
  const auto origin = sheet.posts.at(static_cast<std::size_t>(first)).chainage_mm;
  return run_shapes(sheet, {first, posts, static_cast<double>(origin)}, usual);
}

int in_color(const ShapeList& list, const QColor& color) {
  return static_cast<int>(
      std::count_if(list.shapes.begin(), list.shapes.end(),
                    [&](const Shape& shape) { return shape.color == color.rgba(); }));
}

}  // namespace

TEST_CASE("a fitting has an arm on each side that its kind and the tubes give it", "[fitting]") {
  const auto arm = Approx(2.35).epsilon(0.01);
  const auto body = Approx(0.81).epsilon(0.01);
  struct Kind {
    WhatItDoes does;
    Joins joins;
    bool left, right, up, down;
  };
  const Kind kinds[] = {
      {WhatItDoes::three_way_tee, {true, true, true, true}, true, true, false, true},
      {WhatItDoes::three_way_tee, {true, false, true, true}, true, false, true, true},
      {WhatItDoes::corner_tee, {false, true, true, true}, false, true, true, true},
      {WhatItDoes::corner_tee, {false, true, false, true}, false, true, false, true},
      {WhatItDoes::cross, {true, true, true, true}, true, true, true, true},
      {WhatItDoes::cross, {true, false, true, true}, true, false, true, true},
      {WhatItDoes::elbow, {true, false, true, true}, true, false, false, true}};
  for (const Kind& kind : kinds) {
    const Box box = body_of(kind.does, kind.joins);
    INFO("kind " << static_cast<int>(kind.does));
    CHECK(box.count == 1);  // one outline, no line across it
    CHECK(-box.left == (kind.left ? arm : body));
    CHECK(box.right == (kind.right ? arm : body));
    CHECK(-box.top == (kind.up ? arm : body));
    CHECK(box.foot == (kind.down ? arm : body));
  }
}

TEST_CASE("sleeve, flanges and cap have the sizes of their kinds", "[fitting]") {
  const Box sleeve = body_of(WhatItDoes::sleeve_coupling, {});
  CHECK(sleeve.right - sleeve.left == Approx(3.5).epsilon(0.01));
  CHECK(sleeve.foot - sleeve.top == Approx(1.5).epsilon(0.01));
  const Box base = body_of(WhatItDoes::base_flange, {});
  CHECK(base.right - base.left == Approx(3.4).epsilon(0.01));
  CHECK(base.foot - base.top == Approx(1.92).epsilon(0.01));
  const Box wall = body_of(WhatItDoes::wall_flange, {true, false, false, false});
  CHECK(wall.foot - wall.top == Approx(3.4).epsilon(0.01));
  CHECK(wall.right == Approx(1.62).epsilon(0.01));  // away from the rail
  const Box cap = body_of(WhatItDoes::end_cap, {true, false, false, false});
  CHECK(cap.right == Approx(1.3).epsilon(0.01));
  CHECK(cap.foot - cap.top == Approx(1).epsilon(0.01));
}

TEST_CASE("a fitting reaches no arm into a gate", "[fitting]") {
  RunSheet sheet = made_run({.posts = 5, .tubes = false});
  std::erase_if(sheet.parts, [](const SheetPart& part) { return part.role != Role::fitting; });
  sheet.posts[2].first_part = 0;
  sheet.posts[2].parts = 1;
  sheet.parts.resize(1);
  sheet.parts[0].post = 2;
  sheet.parts[0].now.reset();
  sheet.parts[0].last.reset();
  const float od = RunPen(usual).od_px(sheet.parts[0]);
  sheet.parts[0].along_mm = sheet.posts[2].chainage_mm;
  CHECK(box_of(piece_of(sheet, 2, 1).body, light.zinc).right == Approx(2.35F * od).epsilon(0.01));
  sheet.bays[2].kind = BayKind::gate;
  const Box beside_gate = box_of(piece_of(sheet, 2, 1).body, light.zinc);
  CHECK(beside_gate.right == Approx(0.81F * od).epsilon(0.01));
  CHECK(beside_gate.left == Approx(-2.35F * od).epsilon(0.01));
}

TEST_CASE("an end cap stands at the outer end of its run, on whichever side it was put down",
          "[fitting]") {
  RunSheet sheet = made_run({.posts = 4, .tubes = false});
  for (const int post : {0, 3}) {
    SheetPart& part = sheet.parts[static_cast<std::size_t>(
        sheet.posts[static_cast<std::size_t>(post)].first_part + 2)];
    part.does = WhatItDoes::end_cap;
    part.along_mm = sheet.posts[static_cast<std::size_t>(post)].chainage_mm + 60;
  }
  const int first = sheet.posts[0].first_part + 2;
  const int last = sheet.posts[3].first_part + 2;
  CHECK(along_of(sheet, sheet.parts[static_cast<std::size_t>(first)]) == -60);
  CHECK(along_of(sheet, sheet.parts[static_cast<std::size_t>(last)]) == 4560);
  // Its sign stands clear of the fitting's it closes: 33 px on the glass.
  CHECK(part_place(sheet, first, 25).along_mm * 5.88 / 25 < -33);
  CHECK((part_place(sheet, last, 25).along_mm - 4500) * 5.88 / 25 > 33);
}

TEST_CASE("the sign of bolts stands beside the post, in the ground, clear of the flange's",
          "[fitting]") {
  RunSheet sheet = made_run({.posts = 2, .tubes = false});
  const int flange = sheet.posts[0].first_part;
  const int bolts = flange + 1;
  sheet.parts[static_cast<std::size_t>(flange)].role = Role::fitting;
  SheetPart& part = sheet.parts[static_cast<std::size_t>(bolts)];
  part.role = Role::base_fixing;
  part.does = WhatItDoes::bolt;
  part.up_mm = 0;
  for (const double denominator : {20.0, 25.0, 50.0}) {
    const double px = 5.88 / denominator;
    const RunPoint sign = part_place(sheet, bolts, denominator);
    constexpr double half_px = 11 + 2.5;
    CHECK(sign.along_mm * px - half_px > 1.7 * 48.3 * 5.88 / 25);  // beyond the plate, at 1:25
    CHECK(-sign.up_mm * px - half_px > 0);
    CHECK(-sign.up_mm * px + half_px < 30);  // what an upright drawing shows under its deck
    const RunPoint above = part_place(sheet, flange, denominator);
    CHECK(std::hypot(sign.along_mm - above.along_mm, sign.up_mm - above.up_mm) * px > 2 * half_px);
  }
}

TEST_CASE("rust weeps below the joint where it was found, and nowhere else", "[fitting]") {
  RunSheet sheet = made_run({.posts = 7, .tubes = false});  // found on post 3
  const auto weeping = [&](int post) {
    return box_of(piece_of(sheet, post, 1).body, light.patch[1]);
  };
  CHECK(weeping(2).count == 0);
  CHECK(weeping(3).count == 3);
  const SheetPart& part = sheet.parts[static_cast<std::size_t>(sheet.findings[0].part)];
  const float joint_y = static_cast<float>(-part.up_mm) * 5.88F / 25;
  CHECK(weeping(3).top > joint_y);
  CHECK(weeping(3).foot - weeping(3).top < 4.2F * 48.3F * 5.88F / 25);
  sheet.findings[0].what = FindingKind::loose;
  CHECK(weeping(3).count == 0);
}

TEST_CASE("a bent bar is drawn in the infill where it was found", "[fitting]") {
  RunSheet sheet = made_run({.posts = 8, .welded = true});
  const std::size_t before = piece_of(sheet, 1, 1).body.shapes.size();
  SheetFinding bent;
  bent.bay = 1;
  bent.what = FindingKind::bent;
  sheet.findings.push_back(bent);
  CHECK(piece_of(sheet, 1, 1).body.shapes.size() == before + 1);
  sheet.bays[1].kind = BayKind::rails;  // without infill there is no bar to bend
  const std::size_t rails = piece_of(sheet, 1, 1).body.shapes.size();
  sheet.findings.pop_back();
  CHECK(piece_of(sheet, 1, 1).body.shapes.size() == rails);
}

TEST_CASE("joints of a post that was passed by stay hollow", "[fitting]") {
  RunSheet sheet = made_run({.posts = 7, .sleeve_every_bays = 0});
  for (SheetPart& part : sheet.parts) part.now.reset();
  CHECK(in_color(piece_of(sheet, 1, 1).body, light.ghost) > 0);
  sheet.posts[1].state = PostState::skipped;
  CHECK(in_color(piece_of(sheet, 1, 1).body, light.ghost) == 0);
}

TEST_CASE("rust stays on its tube", "[fitting]") {
  RunSheet sheet = made_run({.posts = 3});
  for (SheetPart& part : sheet.parts) {
    part.now = SheetGrade{};
    part.now->grade = 4;
    if (part.role != Role::top_rail) part.struck = true;
  }
  sheet.findings.clear();
  const ShapeList body = piece_of(sheet, 0, 1).body;
  const float half = 48.3F * 5.88F / 25 / 2 + 0.01F;
  const float rail_y = -1100 * 5.88F / 25;
  for (const QColor& color : light.patch) {
    const Box box = box_of(body, color);
    REQUIRE(box.count > 2);
    CHECK(box.top >= rail_y - half);
    CHECK(box.foot <= rail_y + half);
    CHECK(box.left >= 0);
    CHECK(box.right <= 1500 * 5.88F / 25 + 0.01F);
  }
}

TEST_CASE("a part looks the same from whichever place the run is drawn", "[fitting]") {
  const RunSheet sheet = made_run({.posts = 12});
  const ShapeList one = run_shapes(sheet, {4, 2, 6000}, usual).body;
  const ShapeList other = run_shapes(sheet, {4, 2, 3000}, usual).body;
  REQUIRE(one.points.size() == other.points.size());
  REQUIRE(one.shapes.size() == other.shapes.size());
  const float by = 3000 * 5.88F / 25;
  float furthest = 0;
  for (std::size_t i = 0; i < one.points.size(); ++i) {
    furthest = std::max({furthest, std::abs(one.points[i].x + by - other.points[i].x),
                         std::abs(one.points[i].y - other.points[i].y)});
  }
  CHECK(furthest < 0.01F);
}

}  // namespace kneerail::elevation
