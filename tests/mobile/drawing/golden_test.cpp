#include "tests/mobile/drawing/golden.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "core/base/date.h"
#include "mobile/elevation/run_shapes.h"
#include "mobile/elevation/sign_shapes.h"
#include "tests/mobile/drawing/sign_sheet.h"
#include "tests/mobile/made_run.h"

namespace kneerail::tests {

namespace {

std::string named(std::string name, theme::Theme theme) {
  return name + (theme == theme::Theme::dark ? "-dark" : "-light");
}

struct Window {
  int first_post = 0;
  int posts = 4;
  double denominator = 25;
  QSize size{1140, 480};
};

QImage run_picture(const RunSheet& sheet, const Window& window, theme::Theme theme) {
  elevation::RunDrawing drawing;
  drawing.denominator = window.denominator;
  drawing.theme = theme;
  drawing.chosen_post = window.first_post + 1;
  const auto origin_mm =
      static_cast<double>(sheet.posts.at(static_cast<std::size_t>(window.first_post)).chainage_mm);
  const elevation::RunPiece piece =
      elevation::run_shapes(sheet, {window.first_post, window.posts, origin_mm}, drawing);
  elevation::ShapeList list = piece.body;
  list.add(piece.marks);
  const elevation::Point origin{50, static_cast<float>(window.size.height()) - 90};
  return drawn(list, window.size, origin, theme::palette(theme).paper);
}

constexpr theme::Theme themes[] = {theme::Theme::light, theme::Theme::dark};

}  // namespace

TEST_CASE("the signs look as they did", "[golden]") {
  for (const theme::Theme theme : themes) {
    const QImage seen = drawn(sign_sheet(theme), {sign_sheet_width_px, sign_sheet_height_px}, {},
                              theme::palette(theme).sheet);
    check_golden(named("signs", theme), seen);
  }
}

TEST_CASE("the tags that say when a site is due look as they did", "[golden]") {
  for (const theme::Theme theme : themes) {
    const theme::Palette& palette = theme::palette(theme);
    elevation::ShapeList list;
    elevation::add_due_tag(list, {{12, 12}, {176, 66}, 2, true}, palette);
    elevation::add_due_tag(list, {{12, 96}, {176, 66}, 2, false}, palette);
    elevation::add_due_tag(list, {{212, 12}, {352, 132}, 4, true}, palette);
    check_golden(named("due-tags", theme), drawn(list, {580, 176}, {}, palette.paper));
  }
}

TEST_CASE("a galvanized run looks as it did", "[golden]") {
  const RunSheet sheet = made_run({.posts = 20});
  for (const theme::Theme theme : themes) {
    check_golden(named("run", theme), run_picture(sheet, {.first_post = 3}, theme));
  }
}

TEST_CASE("the end of a run, with what is struck and skipped, looks as it did", "[golden]") {
  const RunSheet sheet = made_run({.posts = 18});
  const Window end{.first_post = 12, .posts = 6, .denominator = 50, .size = {1100, 320}};
  for (const theme::Theme theme : themes) {
    check_golden(named("run-end", theme), run_picture(sheet, end, theme));
  }
}

TEST_CASE("a welded run with a bent bar looks as it did", "[golden]") {
  RunSheet sheet =
      made_run({.posts = 8, .rail_spacing_mm = 950, .sleeve_every_bays = 0, .welded = true});
  SheetFinding bent;
  bent.record.bytes.fill(7);
  bent.bay = 1;
  bent.what = FindingKind::bent;
  bent.along_mm = 2300;
  bent.up_mm = 500;
  sheet.findings.push_back(bent);
  for (const theme::Theme theme : themes) {
    check_golden(named("welded", theme), run_picture(sheet, {.posts = 3}, theme));
  }
}

TEST_CASE("how high the water stood looks as it did", "[golden]") {
  RunSheet sheet = made_run({.posts = 20});
  sheet.findings.clear();
  sheet.water = {{EventKind::flood, 340, date_from_civil(2030, 2, 9)},
                 {EventKind::ice, -60, date_from_civil(2029, 1, 14)}};
  for (const theme::Theme theme : themes) {
    // From the middle of a stretch: the wave goes on in the next one.
    check_golden(named("water", theme), run_picture(sheet, {.first_post = 6, .posts = 3}, theme));
  }
}

TEST_CASE("a run from far off looks as it did", "[golden]") {
  const RunSheet sheet = made_run({.posts = 20});
  const Window far{.first_post = 0, .posts = 12, .denominator = 100, .size = {1100, 220}};
  for (const theme::Theme theme : themes) {
    check_golden(named("run-far", theme), run_picture(sheet, far, theme));
  }
}

}  // namespace kneerail::tests
