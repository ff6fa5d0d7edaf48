// What of a run comes due before a day.

#include "core/forecast/decisions/coming_due.h"

#include <catch2/catch.hpp>

#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

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
    for (const RunComing& run : coming_due(made.portfolio, forecast->limits, site, question)) {
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
  CHECK(coming_due(made.portfolio, forecast->limits, "elsewhere", question).empty());
}
