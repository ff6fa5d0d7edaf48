#include "core/structure/section.h"

#include <catch2/catch.hpp>

using namespace kneerail::structure;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a new tube has the properties of the printed tables", "[core][reference]") {
  // EN 10219-2 tables of round hollow sections, to their printed digits.
  const Tube tube{.outside_mm = 48.3, .wall_mm = 3.2};
  CHECK_THAT(area_mm2(tube), WithinAbs(453, 0.5));
  CHECK_THAT(second_moment_mm4(tube), WithinAbs(116e3, 500));
  CHECK_THAT(elastic_modulus_mm3(tube), WithinAbs(4800, 5));
  CHECK_THAT(plastic_modulus_mm3(tube), WithinAbs(6520, 5));
  CHECK_THAT(mass_kg_per_m(tube), WithinAbs(3.56, 0.005));
}

TEST_CASE("metal lost outside costs more than metal lost inside", "[core]") {
  const Tube tube{.outside_mm = 48.3, .wall_mm = 3.2};
  const auto outside = after_loss(tube, {.outside_mm = 0.5, .inside_mm = 0});
  const auto inside = after_loss(tube, {.outside_mm = 0, .inside_mm = 0.5});
  REQUIRE(outside);
  REQUIRE(inside);
  CHECK_THAT(elastic_modulus_mm3(*outside), WithinAbs(3991.95651218547, 1e-9));  // R
  CHECK(elastic_modulus_mm3(*outside) < elastic_modulus_mm3(*inside));
}

TEST_CASE("a tube without wall left is no tube", "[core]") {
  const Tube tube{.outside_mm = 33.7, .wall_mm = 2.6};
  CHECK_FALSE(after_loss(tube, {.outside_mm = 1.3, .inside_mm = 1.3}));
  CHECK_FALSE(after_loss(tube, {.outside_mm = 3, .inside_mm = 0}));
  CHECK_FALSE(is_tube({.outside_mm = 10, .wall_mm = 5.1}));
  CHECK_FALSE(is_tube({.outside_mm = 10, .wall_mm = 0}));
}

TEST_CASE("the loss at a fraction leaves that fraction", "[core][property]") {
  const auto modulus = GENERATE(Modulus::elastic, Modulus::plastic);
  const double fraction = GENERATE(0.05, 0.5, 0.8, 0.95, 1.0);
  const Tube tube{.outside_mm = 42.4, .wall_mm = 4.0};
  const auto of = [&](const Tube& t) {
    return modulus == Modulus::elastic ? elastic_modulus_mm3(t) : plastic_modulus_mm3(t);
  };
  const auto loss = outside_loss_at_mm(tube, modulus, fraction);
  REQUIRE(loss);
  const auto left = after_loss(tube, {.outside_mm = *loss, .inside_mm = 0});
  REQUIRE(left);
  CHECK_THAT(of(*left), WithinRel(fraction * of(tube), 1e-9));
}

TEST_CASE("a fraction that cannot be is refused", "[core]") {
  const Tube tube{.outside_mm = 42.4, .wall_mm = 4.0};
  CHECK_FALSE(outside_loss_at_mm(tube, Modulus::elastic, 0));
  CHECK_FALSE(outside_loss_at_mm(tube, Modulus::elastic, 1.01));
}
