// When a limit reaches a chance, and what of a run comes due before a day.

#include "core/forecast/coming_due.h"

#include <catch2/catch.hpp>
#include <limits>

#include "core/forecast/predictive.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

LimitForecast row_of(std::array<double, 7> years, std::array<double, 4> p_by) {
  LimitForecast row;
  row.answered = true;
  row.years = years;
  row.p_by = p_by;
  return row;
}

}  // namespace

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
}

TEST_CASE("the time to a chance never falls when the chance rises", "[forecast]") {
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
  }
}

TEST_CASE("a later day has at least as many parts due, and none is counted twice", "[forecast]") {
  const Made made = made_portfolio({.seed = 32});
  const auto forecast = forecast_coating(made.portfolio, {.threads = 1});
  REQUIRE(forecast);
  const std::string site = made.portfolio.parts.front().site;
  ComingQuestion question;
  question.chance = {0.05, 0.05, 0.10, 0.25};
  int before = 0;
  int rows = 0;
  for (const auto& row : forecast->limits) {
    const auto& part = made.portfolio.parts[static_cast<std::size_t>(row.part)];
    rows += part.site == site && row.answered && row.limit == Limit::coating_exhausted ? 1 : 0;
  }
  REQUIRE(rows > 0);
  for (const double years : {0.0, 5.0, 20.0, 80.0}) {
    question.years = years;
    int may = 0;
    int parts = 0;
    for (const RunComing& run : coming_due(made.portfolio, *forecast, site, question)) {
      CHECK(run.likely <= run.may);
      CHECK(run.may <= run.parts);
      may += run.may;
      parts += run.parts;
    }
    CHECK(parts == rows);
    CHECK(may >= before);
    before = may;
  }
  CHECK(before > 0);
  CHECK(coming_due(made.portfolio, *forecast, "elsewhere", question).empty());
}
