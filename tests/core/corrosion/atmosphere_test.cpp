#include "core/corrosion/atmosphere.h"

#include <catch2/catch.hpp>

using namespace kneerail::corrosion;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("first-year zinc loss equals the published vector", "[core][reference]") {
  // ISO 9223:2012, 8.3; value from a public test suite, 15 digits.
  const Atmosphere air{
      .temperature_c = 15, .humidity_pct = 70, .so2_mg_per_m2_day = 4, .chloride_mg_per_m2_day = 3};
  CHECK_THAT(first_year_zinc_loss_um(air), WithinAbs(0.621711285799244, 1e-12));
}

TEST_CASE("steel and aluminium follow their own functions", "[core][reference]") {
  // ISO 9223:2012, 8.3, recomputed with R; the coefficients of aluminium are from memory.
  const Atmosphere cold{
      .temperature_c = 5, .humidity_pct = 80, .so2_mg_per_m2_day = 8, .chloride_mg_per_m2_day = 15};
  CHECK_THAT(first_year_steel_loss_um(cold), WithinRel(21.5681988304239, 1e-12));
  CHECK_THAT(first_year_aluminium_loss_g_per_m2(cold), WithinRel(0.207808535535725, 1e-12));
}

TEST_CASE("the functions do not jump at 10 degrees", "[core][property]") {
  Atmosphere under{.temperature_c = 10 - 1e-9,
                   .humidity_pct = 75,
                   .so2_mg_per_m2_day = 10,
                   .chloride_mg_per_m2_day = 60};
  Atmosphere over = under;
  over.temperature_c = 10 + 1e-9;
  CHECK_THAT(first_year_zinc_loss_um(under), WithinRel(first_year_zinc_loss_um(over), 1e-8));
  CHECK_THAT(first_year_steel_loss_um(under), WithinRel(first_year_steel_loss_um(over), 1e-8));
}

TEST_CASE("air outside the fitted range is said to be so", "[core]") {
  const Atmosphere air{
      .temperature_c = 15, .humidity_pct = 70, .so2_mg_per_m2_day = 4, .chloride_mg_per_m2_day = 3};
  CHECK(in_fitted_range(air));
  auto changed = air;
  changed.temperature_c = 28.8;
  CHECK_FALSE(in_fitted_range(changed));
  changed = air;
  changed.humidity_pct = 33;
  CHECK_FALSE(in_fitted_range(changed));
  changed = air;
  changed.so2_mg_per_m2_day = 0.6;
  CHECK_FALSE(in_fitted_range(changed));
  changed = air;
  changed.chloride_mg_per_m2_day = 761;
  CHECK_FALSE(in_fitted_range(changed));
}
