#include "mobile/elevation/run_shapes.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "mobile/elevation/grade_glyph.h"
#include "mobile/elevation/triangles.h"
#include "tests/mobile/made_run.h"

namespace kneerail::elevation {

namespace {

using tests::made_run;

const RunDrawing usual;

double area(const ShapeList& list) {
  const std::vector<Vertex> vertices = triangles(list);
  double sum = 0;
  for (std::size_t i = 0; i < vertices.size(); i += 3) {
    const Vertex& a = vertices[i];
    const Vertex& b = vertices[i + 1];
    const Vertex& c = vertices[i + 2];
    sum += std::abs(static_cast<double>((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x))) / 2;
  }
  return sum;
}

/// Area filled in one colour.
double area_in(const ShapeList& list, const QColor& color) {
  ShapeList of_color = list;
  std::erase_if(of_color.shapes, [&](const Shape& shape) {
    return shape.color != color.rgba() || shape.kind == ShapeKind::line;
  });
  return area(of_color);
}

/// One post tube, 1 m high, and nothing else.
RunSheet one_tube(int grade) {
  RunSheet sheet;
  sheet.height_mm = 1000;
  SheetPost post;
  post.height_mm = 1000;
  post.parts = 1;
  sheet.posts.push_back(post);
  SheetPart tube;
  tube.post = 0;
  tube.role = Role::post_tube;
  tube.up_mm = 500;
  tube.now = SheetGrade{};
  tube.now->grade = grade;
  sheet.parts.push_back(tube);
  return sheet;
}

std::vector<float> lines_of(const ShapeList& list) {
  std::vector<float> numbers;
  for (const Point& point : list.points) {
    numbers.push_back(point.x);
    numbers.push_back(point.y);
  }
  return numbers;
}

}  // namespace

TEST_CASE("a tube is drawn to scale, and never under 3 px", "[drawing]") {
  const auto width_px = [](double denominator) {
    RunDrawing drawing;
    drawing.denominator = denominator;
    const RunSheet sheet = one_tube(1);
    const auto& color = theme::palette(theme::Theme::light).zinc;
    const ShapeList body = run_shapes(sheet, {0, 1, 0}, drawing).body;
    return area_in(body, color) / (1000 * 5.88 / denominator);
  };
  CHECK(width_px(10) == Approx(48.3 * 5.88 / 10).epsilon(0.01));
  CHECK(width_px(25) == Approx(48.3 * 5.88 / 25).epsilon(0.01));
  CHECK(width_px(100) == Approx(3).epsilon(0.01));
}

TEST_CASE("the worse the grade, the less ink its sign has", "[drawing]") {
  double before = 1e9;
  for (int grade = 1; grade <= 5; ++grade) {
    ShapeList sign;
    add_grade(sign, {0, 0}, 14, grade, Qt::black);
    const double ink = area(sign);
    INFO("grade " << grade);
    CHECK(ink < before);
    CHECK(ink > 80);
    before = ink;
  }
}

TEST_CASE("the same run is drawn the same each time", "[drawing]") {
  const RunSheet sheet = made_run({.posts = 12});
  const RunPiece one = run_shapes(sheet, {0, 4, 0}, usual);
  const RunPiece two = run_shapes(sheet, {0, 4, 0}, usual);
  CHECK(lines_of(one.body) == lines_of(two.body));
  CHECK(lines_of(one.marks) == lines_of(two.marks));
}

TEST_CASE("rust is drawn where it was recorded and nowhere else", "[drawing]") {
  const auto& palette = theme::palette(theme::Theme::light);
  const auto rust = [&](int grade) {
    const ShapeList body = run_shapes(one_tube(grade), {0, 1, 0}, usual).body;
    return area_in(body, palette.patch[0]) + area_in(body, palette.patch[1]) +
           area_in(body, palette.patch[2]);
  };
  CHECK(rust(1) == 0);
  CHECK(rust(2) == 0);
  CHECK(rust(3) > 0);
  CHECK(rust(4) > rust(3));
}

TEST_CASE("what is struck is an outline", "[drawing]") {
  RunSheet sheet = one_tube(3);
  sheet.parts[0].struck = true;
  const ShapeList body = run_shapes(sheet, {0, 1, 0}, usual).body;
  const auto& palette = theme::palette(theme::Theme::light);
  CHECK(area_in(body, palette.zinc) == 0);
  CHECK(std::any_of(body.shapes.begin(), body.shapes.end(),
                    [](const Shape& shape) { return shape.stroke.on_px > 0; }));
}

TEST_CASE("a bay that is closed off carries the barrier board, others do not", "[drawing]") {
  const RunSheet sheet = made_run({.posts = 12});  // bay 5 is closed off
  const auto tape = theme::palette(theme::Theme::light).tape;
  CHECK(area_in(run_shapes(sheet, {4, 4, 6000}, usual).marks, tape) > 0);
  CHECK(area_in(run_shapes(sheet, {0, 4, 0}, usual).marks, tape) == 0);
}

TEST_CASE("the chosen post's tag is chalk, a seen one ink, an open one sheet", "[drawing]") {
  const RunSheet sheet = made_run({.posts = 12});
  const auto& palette = theme::palette(theme::Theme::light);
  RunDrawing drawing;
  drawing.chosen_post = 0;
  const auto tag_of = [&](int post) {
    return run_shapes(sheet, {post, 1, static_cast<double>(post) * 1500}, drawing).marks;
  };
  CHECK(area_in(tag_of(0), palette.chalk) > 1000);
  CHECK(area_in(tag_of(1), palette.sheet) > 1000);
  CHECK(area_in(tag_of(2), palette.ink) > 1000);
}

TEST_CASE("toe boards, gates and infill are drawn", "[drawing]") {
  RunSheet sheet = made_run({.posts = 3, .tubes = false});
  const double before = area(run_shapes(sheet, {0, 3, 0}, usual).body);
  SECTION("toe board") {
    sheet.parts[1].role = Role::toe_board;
  }
  SECTION("gate") {
    sheet.parts[1].role = Role::gate;
  }
  SECTION("infill") {
    sheet.bays[0].kind = BayKind::mesh_infill;
  }
  sheet.parts[1].bay = 0;
  sheet.parts[1].up_mm = 75;
  CHECK(area(run_shapes(sheet, {0, 3, 0}, usual).body) > before + 1000);
}

}  // namespace kneerail::elevation
