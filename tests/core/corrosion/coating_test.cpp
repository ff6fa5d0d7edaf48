#include <array>
#include <catch2/catch.hpp>

#include "core/corrosion/rust.h"
#include "core/corrosion/zinc_coating.h"

using namespace kneerail::corrosion;
using Catch::Matchers::WithinAbs;

TEST_CASE("new coatings are held to the table of ISO 1461", "[core][reference]") {
  struct Row {
    Article article;
    double metal_mm, local_um, mean_um;
  };
  // ISO 1461:2009, Table 3; the bounds 3 and 6 mm belong to the thinner row of steel.
  const auto row = GENERATE(Row{Article::steel, 6.01, 70, 85}, Row{Article::steel, 6, 55, 70},
                            Row{Article::steel, 3, 45, 55}, Row{Article::steel, 1.5, 45, 55},
                            Row{Article::steel, 1.49, 35, 45}, Row{Article::casting, 6, 70, 80},
                            Row{Article::casting, 5.9, 60, 70});
  const auto least = least_coating(row.article, row.metal_mm);
  CHECK(least.local_um == row.local_um);
  CHECK(least.mean_um == row.mean_um);
}

TEST_CASE("bare spots may be mended up to half a percent and 10 cm2 each", "[core][reference]") {
  // ISO 1461:2009, 6.3: 2 m2 allow 100 cm2 in all, 0.25 m2 allow 12.5 cm2.
  CHECK(renovation_allowed(2, std::array{9.0, 8.0, 10.0}));
  CHECK_FALSE(renovation_allowed(0.25, std::array{9.0, 8.0}));
  CHECK_FALSE(renovation_allowed(2, std::array{10.1}));
  CHECK(renovation_allowed(0.2, std::array{10.0}));
  CHECK(renovation_allowed(0.2, {}));
}

TEST_CASE("a thickness weighs by the density that is named", "[core]") {
  CHECK_THAT(areal_mass_g_per_m2(85), WithinAbs(606.9, 1e-9));
  CHECK_THAT(areal_mass_g_per_m2(85, iso1461_density_g_per_cm3), WithinAbs(612, 1e-9));
  CHECK_THAT(life_at_constant_rate_years(85, 1.5), WithinAbs(56.6666666666667, 1e-12));
}

TEST_CASE("a rusted area has the grade of its band", "[core][reference]") {
  // ASTM D610-08, Table 1: upper edges inclusive.
  CHECK(d610_grade(0) == 10);
  CHECK(d610_grade(0.01) == 10);
  CHECK(d610_grade(0.03) == 9);
  CHECK(d610_grade(0.031) == 8);
  CHECK(d610_grade(5) == 4);
  CHECK(d610_grade(16) == 3);
  CHECK(d610_grade(50) == 1);
  CHECK(d610_grade(50.01) == 0);
  CHECK_FALSE(d610_grade(-0.1));
  CHECK_FALSE(d610_grade(100.1));
}

TEST_CASE("a picture of rust stands for an area, Ri 5 for a range", "[core][reference]") {
  // ISO 4628-3:2016, Table 1.
  CHECK(ri_picture_area(3)->low == 1);
  CHECK(ri_picture_area(5)->low == 40);
  CHECK(ri_picture_area(5)->high == 50);
  CHECK_FALSE(ri_picture_area(6));
}
