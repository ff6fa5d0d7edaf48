#include "core/corrosion/category.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace kneerail::corrosion;
using Catch::Matchers::WithinAbs;

TEST_CASE("the upper bound of a category belongs to it", "[core][reference]") {
  struct Row {
    Metal metal;
    double rate_um;
    std::string_view category;
  };
  // ISO 9223:2012, Table 2.
  const auto row = GENERATE(
      Row{Metal::zinc, 0.1, "C1"}, Row{Metal::zinc, 0.1001, "C2"}, Row{Metal::zinc, 2.1, "C3"},
      Row{Metal::zinc, 4.2, "C4"}, Row{Metal::zinc, 8.4, "C5"}, Row{Metal::zinc, 25, "CX"},
      Row{Metal::zinc, 25.1, ">CX"}, Row{Metal::carbon_steel, 25, "C2"},
      Row{Metal::carbon_steel, 50.1, "C4"}, Row{Metal::carbon_steel, 701, ">CX"});
  const auto found = category_of(row.metal, row.rate_um);
  REQUIRE(found);
  CHECK(to_text(*found) == row.category);
}

TEST_CASE("beyond the scheme there is no band and no middle", "[core]") {
  CHECK_FALSE(first_year_band(Metal::zinc, CorrosivityCategory::beyond));
  CHECK_FALSE(middle_first_year_um(Metal::zinc, CorrosivityCategory::beyond));
  CHECK_FALSE(category_of(Metal::aluminium, 1));
  CHECK_FALSE(first_year_band(Metal::copper, CorrosivityCategory::c3));
}

TEST_CASE("every rate lies in the band of its category", "[core][property]") {
  const auto metal = GENERATE(Metal::zinc, Metal::carbon_steel);
  for (double rate = 0.05; rate < 700; rate *= 1.07) {
    const auto category = category_of(metal, rate);
    REQUIRE(category);
    if (*category == CorrosivityCategory::beyond) continue;
    const auto band = first_year_band(metal, *category);
    REQUIRE(band);
    INFO("rate " << rate);
    CHECK(rate > band->low_um);
    CHECK(rate <= band->high_um);
  }
}

TEST_CASE("the middle of a category is its middle on a logarithmic scale", "[core]") {
  CHECK_THAT(*middle_first_year_um(Metal::zinc, CorrosivityCategory::c3),
             WithinAbs(std::sqrt(0.7 * 2.1), 1e-15));
  CHECK_THAT(*middle_first_year_um(Metal::zinc, CorrosivityCategory::c1),
             WithinAbs(std::sqrt(0.05 * 0.1), 1e-15));
}

TEST_CASE("an estimated rate is off by a factor, not by an amount", "[core][reference]") {
  // ISO 9223:2012, Annex A: -33 % to +50 % for zinc and steel, -50 % to +100 % for aluminium.
  CHECK_THAT(ln_sd_of_interval(1 / 1.5, 1.5), WithinAbs(0.405465108108164, 1e-15));
  CHECK_THAT(estimate_ln_sd(Metal::zinc), WithinAbs(ln_sd_of_interval(1 / 1.5, 1.5), 1e-15));
  CHECK_THAT(estimate_ln_sd(Metal::aluminium), WithinAbs(ln_sd_of_interval(0.5, 2), 1e-15));
}
