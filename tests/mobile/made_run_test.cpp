#include "tests/mobile/made_run.h"

#include <algorithm>
#include <catch2/catch.hpp>

namespace kneerail::tests {

namespace {

long fittings(const RunSheet& sheet) {
  return std::count_if(sheet.parts.begin(), sheet.parts.end(), [](const SheetPart& part) {
    return part.role == Role::fitting || part.role == Role::base_fixing;
  });
}

}  // namespace

TEST_CASE("the run that panning is measured on has 620 posts and 2,500 fittings", "[elevation]") {
  const RunSheet sheet = long_run();
  CHECK(sheet.posts.size() == 620);
  CHECK(fittings(sheet) == 2500);
}

TEST_CASE("each part of a made run stands in its post's range", "[elevation]") {
  for (const bool welded : {false, true}) {
    const RunSheet sheet = made_run({.posts = 40, .welded = welded});
    for (std::size_t post = 0; post < sheet.posts.size(); ++post) {
      const SheetPost& at = sheet.posts[post];
      for (int i = at.first_part; i < at.first_part + at.parts; ++i) {
        CHECK(sheet.parts[static_cast<std::size_t>(i)].post == static_cast<int>(post));
      }
    }
  }
}

TEST_CASE("the same numbers make the same run", "[elevation]") {
  const RunSheet one = made_run({.posts = 20});
  const RunSheet two = made_run({.posts = 20});
  REQUIRE(one.parts.size() == two.parts.size());
  CHECK(std::equal(one.parts.begin(), one.parts.end(), two.parts.begin(),
                   [](const auto& a, const auto& b) { return a.id == b.id; }));
}

}  // namespace kneerail::tests
