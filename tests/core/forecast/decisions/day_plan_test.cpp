// What fits into the time there is, and that more time never takes anything away.

#include "core/forecast/decisions/day_plan.h"

#include <catch2/catch.hpp>

using namespace kneerail::forecast;

namespace {

constexpr int stop_seconds = 20;

/// Two looks, then two readings at one post and one at another.
DayPlan small_day() {
  return {
      {{0, 0, 40, false}, {0, 1, 40, false}, {1, 1, 45, true}, {1, 1, 45, true}, {2, 0, 45, true}},
      stop_seconds};
}

}  // namespace

TEST_CASE("as many tasks from the front are done as there is time for", "[forecast]") {
  const DayPlan day = small_day();
  CHECK(day.fit(0) == 0);
  CHECK(day.fit(39) == 0);
  CHECK(day.fit(40) == 1);
  CHECK(day.fit(80) == 2);
  CHECK(day.fit(144) == 2);
  CHECK(day.fit(145) == 3);  // one stop at the post
  CHECK(day.fit(190) == 4);  // and no second one
  CHECK(day.fit(255) == 5);
  CHECK(day.fit(100'000) == 5);
  CHECK(day.seconds_of(0) == 0);
  CHECK(day.seconds_of(5) == 255);
  CHECK(day.stops(2) == 0);
  CHECK(day.stops(4) == 1);
  CHECK(day.stops(5) == 2);
}

TEST_CASE("each line says how much of it is done and what is left", "[forecast]") {
  const auto lines = small_day().lines(4);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].done == 2);
  CHECK(lines[0].seconds == 80);
  CHECK(lines[1].done == 2);
  CHECK(lines[1].seconds == 110);
  CHECK(lines[2].done == 0);
  CHECK(lines[2].all == 1);
  CHECK(lines[2].seconds == 0);
}

TEST_CASE("a day without a task has nothing to do", "[forecast]") {
  const DayPlan nothing;
  CHECK(nothing.fit(3600) == 0);
  CHECK(nothing.seconds_of(0) == 0);
  CHECK(nothing.lines(0).empty());
  CHECK(nothing.stops(0) == 0);
}
