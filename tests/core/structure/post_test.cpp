#include "core/structure/post.h"

#include <catch2/catch.hpp>

#include "core/structure/line_load.h"
#include "core/structure/screw.h"
#include "core/structure/units.h"

using namespace kneerail::structure;
using Catch::Matchers::WithinAbs;

TEST_CASE("the widest spacing brings a post to its plastic moment", "[core]") {
  // Statics, and EN 1993-1-1, 6.2.5, with a partial factor of 1.
  const Tube tube{.outside_mm = 48.3, .wall_mm = 3.2};
  const double spacing_m = widest_spacing_m({.tube = tube,
                                             .yield_mpa = 235,
                                             .line_load_kn_per_m = 0.74,
                                             .height_m = 1.1,
                                             .load_factor = 1.5});
  CHECK_THAT(spacing_m, WithinAbs(1.25482583674584, 1e-12));  // R
  const double moment =
      foot_moment_kn_m({.line_load_kn_per_m = 1.5 * 0.74, .spacing_m = spacing_m, .height_m = 1.1});
  CHECK_THAT(moment, WithinAbs(plastic_moment_kn_m(tube, 235), 1e-12));
}

TEST_CASE("a post pushed at its top bends as a cantilever", "[core]") {
  CHECK_THAT(tip_deflection_mm({.force_kn = 0.54,
                                .height_m = 1.1,
                                .tube = {.outside_mm = 48.3, .wall_mm = 3.2},
                                .modulus_gpa = 210}),
             WithinAbs(9.84715680249702, 1e-9));  // R
}

TEST_CASE("one torque is not one force", "[core]") {
  const double slack = screw_force_kn({.torque_nm = 39, .nut_factor = 0.15, .thread_mm = 10});
  const double dry = screw_force_kn({.torque_nm = 39, .nut_factor = 0.30, .thread_mm = 10});
  CHECK_THAT(slack, WithinAbs(26, 1e-12));
  CHECK_THAT(slack / dry, WithinAbs(2, 1e-12));
  CHECK_THAT(embedding_loss_kn({.embedding_um = 8, .screw_um_per_kn = 1.2, .part_um_per_kn = 0.4}),
             WithinAbs(5, 1e-12));
}

TEST_CASE("test torques of set screws are those of the table", "[core][reference]") {
  // ISO 898-5, class 45H.
  CHECK(test_torque_45h_nm("M8") == 20);
  CHECK(test_torque_45h_nm("M10") == 40);
  CHECK_FALSE(test_torque_45h_nm("M7"));
}

TEST_CASE("line loads are those of the table", "[core][reference]") {
  // BS 6180:2011, Table 2.
  CHECK(bs6180_line_load_kn_per_m(Occupancy::single_family_dwelling) == 0.36);
  CHECK(bs6180_line_load_kn_per_m(Occupancy::overcrowded) == 3.0);
  CHECK(occupancy_from_text("Areas with fixed seating") == Occupancy::fixed_seating);
  CHECK_FALSE(occupancy_from_text("somewhere"));
}

TEST_CASE("pounds and inches turn into newtons and millimetres", "[core][reference]") {
  // 29 CFR 1910.29(b) prints 200 lbf as 890 N and 42 in as 107 cm.
  CHECK_THAT(200 * newtons_per_pound_force, WithinAbs(889.6443230521, 1e-9));
  CHECK_THAT(42 * mm_per_inch, WithinAbs(1066.8, 1e-9));
  CHECK_THAT(newton_metres_per_pound_force_foot, WithinAbs(1.3558179483314, 1e-12));
}
