#include "mobile/elevation/scale_steps.h"

#include <catch2/catch.hpp>

namespace kneerail::elevation {

TEST_CASE("a rail of 1.10 m with bays of 1.50 m opens at 1:25 on a tablet of 10 inch", "[scale]") {
  const double landscape_mm = 876 / 5.88;
  const double portrait_mm = 800 / 5.88;
  for (const double width_mm : {landscape_mm, portrait_mm}) {
    CHECK(opening_scale({.width_mm = width_mm, .rail_gap_mm = 550, .bay_mm = 1500}) == 25);
  }
}

TEST_CASE("the opening scale keeps rails apart and shows the posts on both sides", "[scale]") {
  CHECK(opening_scale({.width_mm = 200, .rail_gap_mm = 450, .bay_mm = 1500}) == 20);
  CHECK(opening_scale({.width_mm = 149, .rail_gap_mm = 1000, .bay_mm = 2400}) == 50);
  // Rails too near for a glove at every scale that shows the posts: the posts decide.
  CHECK(opening_scale({.width_mm = 149, .rail_gap_mm = 450, .bay_mm = 1500}) == 25);
  CHECK(opening_scale({.width_mm = 60, .rail_gap_mm = 450, .bay_mm = 3000}) == 50);
}

TEST_CASE("a pinch settles on the nearest step by ratio", "[scale]") {
  CHECK(nearest_step(10.2) == 10);
  CHECK(nearest_step(14.2) == 20);
  CHECK(nearest_step(14.1) == 10);
  CHECK(nearest_step(22) == 20);
  CHECK(nearest_step(35) == 25);
  CHECK(nearest_step(36) == 50);
  CHECK(nearest_step(7000) == 100);
  CHECK(nearest_step(0.1) == 10);
}

TEST_CASE("steps go one by one and stop at the ends", "[scale]") {
  CHECK(next_step(25, 1) == 50);
  CHECK(next_step(25, -1) == 20);
  CHECK(next_step(100, 1) == 100);
  CHECK(next_step(10, -1) == 10);
}

}  // namespace kneerail::elevation
