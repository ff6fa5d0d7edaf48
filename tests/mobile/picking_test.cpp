#include "mobile/elevation/picking.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "tests/mobile/made_run.h"

namespace kneerail::elevation {

namespace {

using tests::made_run;
using What = Pick::What;

int part_at(const RunSheet& sheet, RunPoint at, Role role = Role::fitting) {
  const auto found = std::find_if(sheet.parts.begin(), sheet.parts.end(), [&](const auto& part) {
    return part.role == role && static_cast<double>(part.along_mm) == at.along_mm &&
           static_cast<double>(part.up_mm) == at.up_mm;
  });
  REQUIRE(found != sheet.parts.end());
  return static_cast<int>(found - sheet.parts.begin());
}

Pick part(int place) {
  return {What::part, place, {}};
}

void add_part(RunSheet& sheet, Role role, std::int64_t along_mm, std::int64_t up_mm) {
  SheetPart part;
  part.post = 0;
  part.role = role;
  part.along_mm = along_mm;
  part.up_mm = up_mm;
  sheet.parts.push_back(part);
}

RunSheet one_post(std::initializer_list<std::int64_t> joints_up_mm) {
  RunSheet sheet;
  sheet.posts.resize(1);
  sheet.posts[0].height_mm = 1100;
  for (const std::int64_t up_mm : joints_up_mm) add_part(sheet, Role::fitting, 0, up_mm);
  return sheet;
}

/// The nearest joint by looking at every one of them.
int nearest_by_looking(const RunSheet& sheet, RunPoint touch, double reach) {
  int nearest = -1;
  for (std::size_t i = 0; i < sheet.parts.size(); ++i) {
    const SheetPart& part = sheet.parts[i];
    if (part.role != Role::fitting && part.role != Role::base_fixing) continue;
    const double distance = std::hypot(static_cast<double>(part.along_mm) - touch.along_mm,
                                       static_cast<double>(part.up_mm) - touch.up_mm);
    if (distance >= reach) continue;
    reach = distance;
    nearest = static_cast<int>(i);
  }
  return nearest;
}

}  // namespace

TEST_CASE("the nearest joint within 11 mm on the glass is chosen", "[picking]") {
  const RunSheet sheet = made_run({.posts = 10});
  const PickIndex index(sheet);
  const int cross = part_at(sheet, {4500, 550});
  CHECK(index.pick({4500, 550}, 25) == part(cross));
  CHECK(index.pick({4500 + 10.9 * 25, 550}, 25) == part(cross));
  CHECK_FALSE(index.pick({4500 + 11.1 * 25, 550}, 25) == part(cross));
  // The same place on the run is further away on the glass when the drawing is larger.
  CHECK_FALSE(index.pick({4500 + 10.9 * 25, 550}, 10) == part(cross));
}

TEST_CASE("cells of two joints meet halfway", "[picking]") {
  const RunSheet sheet = made_run({.posts = 10});
  const PickIndex index(sheet);
  const int top = part_at(sheet, {4500, 1100});
  const int cross = part_at(sheet, {4500, 550});
  CHECK(index.pick({4500, 826}, 50, Crowds::choose_nearest) == part(top));
  CHECK(index.pick({4500, 824}, 50, Crowds::choose_nearest) == part(cross));
}

TEST_CASE("sky above the rail is the post, open air the bay, ground the base fixing", "[picking]") {
  const RunSheet sheet = made_run({.posts = 10});
  const PickIndex index(sheet);
  CHECK(index.pick({4600, 1500}, 25) == Pick{What::post, 3, {}});
  CHECK(index.pick({5100, 1500}, 25) == Pick{What::post, 3, {}});
  CHECK(index.pick({5400, 1500}, 25) == Pick{What::post, 4, {}});
  CHECK(index.pick({5250, 800}, 25) == Pick{What::bay, 3, {}});
  CHECK(index.pick({5250, 300}, 25) == Pick{What::bay, 3, {}});
  CHECK(index.pick({4700, -200}, 25) == part(part_at(sheet, {4500, 40}, Role::base_fixing)));
}

TEST_CASE("a tube is chosen along its whole length beside the joints", "[picking]") {
  const RunSheet sheet = made_run({.posts = 10});
  const PickIndex index(sheet);
  const int rail = part_at(sheet, {5250, 1100}, Role::top_rail);
  CHECK(index.pick({4900, 1100}, 25) == part(rail));
  CHECK(index.pick({5600, 1100 - 5 * 25.0}, 25) == part(rail));
  CHECK(index.pick({5250, 1100 - 6 * 25.0}, 25) == Pick{What::bay, 3, {}});
  const int tube = part_at(sheet, {4500, 550}, Role::post_tube);
  CHECK(index.pick({4500, 830}, 20) == part(tube));
}

TEST_CASE("a welded section is chosen by its rails, which run at its welds", "[picking]") {
  const RunSheet sheet = made_run({.posts = 10, .rails = 2, .welded = true});
  const PickIndex index(sheet);
  const int section = part_at(sheet, {5250, 550}, Role::welded_section);
  CHECK(index.pick({5250, 1100}, 25) == part(section));
  CHECK(index.pick({5250, 550}, 25) == part(section));
  CHECK(index.pick({5250, 300}, 25) == Pick{What::bay, 3, {}});
}

TEST_CASE("joints closer than 20 mm on the glass are asked again unless the touch is clear",
          "[picking]") {
  const RunSheet sheet = one_post({500, 950});  // 18 mm apart at 1:25, 22.5 at 1:20
  const PickIndex index(sheet);
  CHECK(index.pick({0, 725}, 25).what == What::crowd);
  CHECK(index.pick({0, 725}, 25).middle.up_mm == Approx(725));
  CHECK(index.pick({0, 725 - 4.9 * 25}, 25).what == What::crowd);
  CHECK(index.pick({0, 725 - 5.1 * 25}, 25) == part(0));
  CHECK(index.pick({0, 725 + 5.1 * 25}, 25) == part(1));
  CHECK(index.pick({0, 720}, 20) == part(0));
  CHECK(index.pick({0, 720}, 25, Crowds::choose_nearest) == part(0));
}

TEST_CASE("joints on top of each other are asked again wherever they are touched", "[picking]") {
  const PickIndex index(one_post({200, 260}));
  for (const double up_mm : {120.0, 200.0, 230.0, 260.0, 330.0}) {
    CHECK(index.pick({0, up_mm}, 25).what == What::crowd);
  }
  CHECK(index.pick({0, 225}, 10, Crowds::choose_nearest) == part(0));
  CHECK(index.pick({0, 235}, 10, Crowds::choose_nearest) == part(1));
}

TEST_CASE("anchors right under a flange are chosen by the ground alone", "[picking]") {
  RunSheet sheet = one_post({40});
  add_part(sheet, Role::base_fixing, 0, 0);
  const PickIndex index(sheet);
  CHECK(index.pick({0, 5}, 25) == part(0));
  CHECK(index.pick({0, -5}, 25) == part(1));
}

TEST_CASE("a run of nothing, and one post without parts, can be touched", "[picking]") {
  CHECK(PickIndex(RunSheet{}).pick({100, 100}, 25).what == What::nothing);
  const PickIndex index(one_post({}));
  CHECK(index.pick({0, 500}, 25) == Pick{What::post, 0, {}});
  CHECK(index.pick({9000, 500}, 25).what == What::nothing);
  CHECK(index.pick({0, -100}, 25) == Pick{What::post, 0, {}});
}

TEST_CASE("parts that name no post or bay are still chosen where they stand", "[picking]") {
  RunSheet sheet = one_post({500});
  sheet.parts[0].post = 7;
  SheetPart rail;
  rail.role = Role::top_rail;
  rail.post = -1;
  rail.bay = 3;
  rail.along_mm = 2000;
  rail.up_mm = 1000;
  sheet.parts.push_back(rail);
  const PickIndex index(sheet);
  CHECK(index.pick({0, 500}, 25) == part(0));
  CHECK(index.pick({2000, 1000}, 25) == part(1));
}

TEST_CASE("among 100,000 parts the index finds what looking at every one finds", "[picking]") {
  const RunSheet sheet = tests::run_of_parts(100000);
  REQUIRE(sheet.parts.size() >= 100000);
  const PickIndex index(sheet);
  const unsigned seed = 20311125;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const double length_mm = static_cast<double>(sheet.posts.back().chainage_mm);
  std::uniform_real_distribution<double> along(0, length_mm);
  std::uniform_real_distribution<double> up(1, 1300);
  int found = 0;
  for (int n = 0; n < 300; ++n) {
    const RunPoint touch{along(random), up(random)};
    const int wanted = nearest_by_looking(sheet, touch, reach_mm * 50);
    if (wanted < 0) continue;
    ++found;
    CHECK(index.pick(touch, 50, Crowds::choose_nearest) == part(wanted));
  }
  CHECK(found > 100);
}

}  // namespace kneerail::elevation
