// Which parts to measure where the time does not do for all.

#include "core/forecast/decisions/measure_first.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>

#include "tests/core/forecast/decisions/rows.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;
using namespace kneerail::tests;

namespace {

/// Ten parts of one zone and two runs, five each.
Portfolio ten_parts() {
  Portfolio made;
  for (int i = 0; i < 10; ++i) {
    Part part;
    part.id = "p" + std::to_string(i);
    part.site = "quay";
    part.zone = "face";
    part.run = i < 5 ? "west" : "east";
    made.parts.push_back(part);
  }
  return made;
}

LimitForecast coating(std::int32_t part, double chance_in_5, double own_share, int readings) {
  auto row = row_of({never, never, never, never, never, never, never}, {0, 0, 0, chance_in_5},
                    Limit::coating_exhausted, part);
  row.has_years = false;
  row.own_share = own_share;
  row.readings_used = readings;
  return row;
}

std::vector<std::int32_t> parts_of(const std::vector<ToMeasure>& chosen) {
  std::vector<std::int32_t> parts;
  for (const ToMeasure& one : chosen) parts.push_back(one.part);
  return parts;
}

}  // namespace

TEST_CASE("what is open and near is measured first, up to its share of the zone", "[forecast]") {
  std::vector<LimitForecast> rows;
  for (std::int32_t part = 0; part < 10; ++part) rows.push_back(coating(part, 0.01, 0.5, 2));
  rows[3] = coating(3, 0.9, 0.95, 6);  // near, but known well: 0.045
  rows[4] = coating(4, 0.2, 0.1, 1);   // 0.18
  rows[8] = coating(8, 0.5, 0.4, 2);   // 0.30
  const MeasureQuestion question{.site = "quay", .years_of_two_visits = 5};
  const auto chosen = measure_first(ten_parts(), rows, question);
  CHECK(parts_of(chosen) == std::vector<std::int32_t>{8, 4});
  CHECK(chosen[0].worth == Approx(0.3));
  CHECK(chosen[0].words ==
        "50 % to reach a coating limit in two visits, and 60 % of its rate still open");
  const MeasureQuestion more{.site = "quay", .years_of_two_visits = 5, .share_of_a_zone = 0.3};
  CHECK(parts_of(measure_first(ten_parts(), rows, more)) == std::vector<std::int32_t>{8, 4, 3});
  CHECK(measure_first(ten_parts(), rows, {.site = "elsewhere"}).empty());
}

TEST_CASE("a run that nobody has measured gets one part", "[forecast]") {
  std::vector<LimitForecast> rows;
  for (std::int32_t part = 0; part < 10; ++part)
    rows.push_back(coating(part, part < 5 ? 0.2 : 0.0, part < 5 ? 0.5 : 0.0, part < 5 ? 2 : 0));
  const auto chosen = measure_first(ten_parts(), rows, {.site = "quay"});
  CHECK(parts_of(chosen) == std::vector<std::int32_t>{0, 1, 5});
  CHECK(chosen[2].why == WhyMeasure::run_never_measured);
}

TEST_CASE("a gauge with no part of its own among them gets the one it knows best", "[forecast]") {
  auto portfolio = ten_parts();
  const auto visit = [&](const char* gauge, std::vector<std::int32_t> parts) {
    Visit made;
    made.id = "v" + std::to_string(portfolio.visits.size());
    made.coating_gauge = gauge;
    portfolio.visits.push_back(made);
    for (const std::int32_t part : parts) {
      Reading reading;
      reading.part = part;
      reading.visit = static_cast<std::int32_t>(portfolio.visits.size()) - 1;
      portfolio.readings.push_back(reading);
    }
  };
  visit("C-1", {0, 1, 2});
  visit("C-2", {6, 7});
  visit("C-2", {7});
  std::vector<LimitForecast> rows;
  for (std::int32_t part = 0; part < 10; ++part)
    rows.push_back(coating(part, part < 2 ? 0.3 : 0.01, 0.5, 1));
  const auto chosen = measure_first(portfolio, rows, {.site = "quay"});
  CHECK(parts_of(chosen) == std::vector<std::int32_t>{0, 1, 7});
  CHECK(chosen[2].words == "gauge C-2 has measured it before");
}

TEST_CASE("of a whole portfolio no part is asked for twice, and none that no gauge can tell",
          "[forecast]") {
  const Made made = made_portfolio({.seed = 33});
  const auto forecast = forecast_coating(made.portfolio, {.threads = 1});
  REQUIRE(forecast);
  std::set<std::int32_t> answered;
  for (const auto& row : forecast->limits)
    if (row.answered) answered.insert(row.part);
  const std::string site = made.portfolio.parts.front().site;
  const auto chosen = measure_first(made.portfolio, forecast->limits, {.site = site});
  REQUIRE_FALSE(chosen.empty());
  std::set<std::int32_t> seen;
  double before = 1;
  std::map<std::string, int> taken;
  std::map<std::string, int> in_zone;
  for (const std::int32_t part : answered) {
    const Part& own = made.portfolio.parts[static_cast<std::size_t>(part)];
    if (own.site == site) ++in_zone[own.zone];
  }
  for (const ToMeasure& one : chosen) {
    CHECK(seen.insert(one.part).second);
    CHECK(answered.contains(one.part));
    const Part& own = made.portfolio.parts[static_cast<std::size_t>(one.part)];
    CHECK(own.site == site);
    if (one.why != WhyMeasure::open_and_near) continue;
    CHECK(one.worth <= before);
    before = one.worth;
    ++taken[own.zone];
  }
  for (const auto& [zone, count] : taken) CHECK(count <= std::ceil(0.2 * in_zone[zone]));
}
