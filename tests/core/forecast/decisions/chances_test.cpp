// A row read between its figures.

#include "core/forecast/decisions/chances.h"

#include <catch2/catch.hpp>
#include <limits>

#include "core/forecast/predictive.h"
#include "tests/core/forecast/decisions/rows.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;
using namespace kneerail::tests;

TEST_CASE("a chance that is a quantile is reached at that quantile", "[forecast]") {
  const auto row = row_of({3, 4, 6, 8, 12, 20, 30}, {0.01, 0.02, 0.03, 0.15});
  for (std::size_t i = 0; i < quantile_levels.size(); ++i)
    CHECK(years_to_chance(row, quantile_levels[i]) == Approx(row.years[i]));
  CHECK(years_to_chance(row, 0.03) == Approx(2));
  CHECK(years_to_chance(row, 0.025) == Approx(1.5));
  CHECK(years_to_chance(row, 0.99) == never);
}

TEST_CASE("what is reached by now takes no time, and what nobody can say takes for ever",
          "[forecast]") {
  CHECK(years_to_chance(row_of({-4, -2, 1, 3, 6, 9, never}, {0.2, 0.25, 0.4, 0.6}), 0.05) == 0);
  CHECK(years_to_chance(row_of({2, 9, never, never, never, never, never}, {0, 0.01, 0.05, 0.07}),
                        0.5) == never);
  LimitForecast unknown;
  CHECK(years_to_chance(unknown, 0.05) == never);
  CHECK(chance_within(unknown, 50) == 0);
}

TEST_CASE("a row without years is read from its chances alone", "[forecast]") {
  auto screws = row_of({}, {0.04, 0.10, 0.20, 0.50});
  screws.has_years = false;
  CHECK(years_to_chance(screws, 0.05) == Approx(1.0 / 6));
  CHECK(years_to_chance(screws, 0.5) == Approx(5));
  CHECK(years_to_chance(screws, 0.6) == never);
  CHECK(chance_within(screws, 3.5) == Approx(0.35));
  CHECK(chance_within(screws, 40) == Approx(0.50));  // nothing is said beyond
}

TEST_CASE("the time to a chance never falls when the chance rises, nor the chance with time",
          "[forecast]") {
  const Made made = made_portfolio({.seed = 31});
  const auto forecast = forecast_coating(made.portfolio, {.threads = 1});
  REQUIRE(forecast);
  REQUIRE_FALSE(forecast->limits.empty());
  for (const LimitForecast& row : forecast->limits) {
    double before = 0;
    for (double chance = 0.01; chance < 0.96; chance += 0.02) {
      const double years = years_to_chance(row, chance);
      CHECK(years >= before);
      before = years;
    }
    double so_far = 0;
    for (double years = 0; years < 120; years += 0.7) {
      const double chance = chance_within(row, years);
      CHECK(chance >= so_far);
      CHECK(chance <= 1);
      so_far = chance;
    }
  }
}

TEST_CASE("the chance within the time to a chance is that chance", "[forecast]") {
  const auto row = row_of({3, 4, 6, 8, 12, 20, 30}, {0.01, 0.02, 0.03, 0.15});
  for (const double chance : {0.012, 0.03, 0.08, 0.25, 0.6, 0.94})
    CHECK(chance_within(row, years_to_chance(row, chance)) == Approx(chance));
  CHECK(chance_within(row, 0) == Approx(0.01));
  CHECK(chance_within(row, 500) == Approx(0.95));
}
