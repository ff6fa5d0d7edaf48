#include "core/corrosion/attack.h"

#include <catch2/catch.hpp>
#include <limits>

using namespace kneerail::corrosion;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("attack after 20 years goes on along a straight line", "[core][reference]") {
  // ISO 9224:2012: zinc, b 0.813, first-year rate 1 um, 30 years; from a public test suite.
  CHECK_THAT(attack_um({.first_year_rate_um = 1, .exponent = 0.813, .age_years = 30}),
             WithinAbs(16.06486657718427, 1e-12));
  const AttackPath path(0.813);
  CHECK_THAT(path.growth(20 + 1e-9) - path.growth(20), WithinAbs(1e-9 * path.slope(20), 1e-13));
  CHECK_THAT(path.growth(60) - path.growth(40), WithinRel(20 * path.slope(25), 1e-12));
}

TEST_CASE("growth equals the table printed in the standard", "[core][reference]") {
  struct Row {
    Metal metal;
    double years, mean, upper;
  };
  // ISO 9224:2012, Table 3, to its three decimals.
  const auto row = GENERATE(
      Row{Metal::carbon_steel, 2, 1.437, 1.490}, Row{Metal::carbon_steel, 20, 4.791, 5.599},
      Row{Metal::zinc, 5, 3.701, 4.076}, Row{Metal::zinc, 10, 6.501, 7.464},
      Row{Metal::zinc, 20, 11.422, 13.671}, Row{Metal::aluminium, 15, 7.181, 8.894});
  CHECK_THAT(power_growth(mean_exponent(row.metal), row.years), WithinAbs(row.mean, 0.00055));
  CHECK_THAT(power_growth(upper_exponent(row.metal), row.years), WithinAbs(row.upper, 0.00055));
  CHECK(AttackPath(mean_exponent(row.metal)).growth(row.years) ==
        power_growth(mean_exponent(row.metal), row.years));
}

TEST_CASE("a first-year rate is not a constant rate", "[core]") {
  // 85 um at 1.5 um in the first year: 57 years at a constant rate, 117 along the standard's path.
  CHECK_THAT(years_to_consume({.thickness_um = 85, .first_year_rate_um = 1.5, .exponent = 0.813}),
             WithinAbs(117.447490739448, 1e-9));
  CHECK_THAT(years_to_consume({.thickness_um = 85, .first_year_rate_um = 1.5, .exponent = 1}),
             WithinAbs(85 / 1.5, 1e-12));
}

TEST_CASE("the age of an attack is the inverse of the attack", "[core][property]") {
  const double exponent = GENERATE(0.523, 0.75, 0.813, 0.9, 1.0);
  const double years = GENERATE(1e-3, 0.5, 1.0, 19.999, 20.0, 20.001, 47.0, 400.0);
  const AttackPath path(exponent);
  INFO("b " << exponent << ", " << years << " years");
  CHECK_THAT(path.age_of_growth(path.growth(years)), WithinRel(years, 1e-12));
  CHECK_THAT(path.age(path.effective_age(years)), WithinRel(years, 1e-12));
  const double step = 1e-6 * years;
  CHECK_THAT((path.growth(years + step) - path.growth(years - step)) / (2 * step),
             WithinRel(path.slope(years), 1e-5));
}

TEST_CASE("effective age makes a loss the 20-year mean rate times it", "[core]") {
  const AttackPath path(0.9);
  CHECK(path.effective_age(0) == 0);
  CHECK(path.effective_age(20) == 20);
  CHECK_THAT(path.first_year_to_mean(), WithinAbs(0.7411344491069477, 1e-15));  // 20^-0.1
  const double first_year_um = 2.1;
  CHECK_THAT(first_year_um * path.growth(13),
             WithinRel(first_year_um * path.first_year_to_mean() * path.effective_age(13), 1e-14));
  CHECK(path.effective_age(-2) == -2);
  CHECK(AttackPath(1).effective_age(33.25) == 33.25);
}

TEST_CASE("nothing to lose and nothing lost have their answers", "[core]") {
  CHECK(years_to_consume({.thickness_um = 0, .first_year_rate_um = 1, .exponent = 0.9}) == 0);
  CHECK(years_to_consume({.thickness_um = 50, .first_year_rate_um = 0, .exponent = 0.9}) ==
        std::numeric_limits<double>::infinity());
  CHECK(attack_um({.first_year_rate_um = 2, .exponent = 0.9, .age_years = 0}) == 0);
}
