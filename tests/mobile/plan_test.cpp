#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "mobile/demo/plan.h"
#include "mobile/demo/weather.h"

using namespace kneerail;
using namespace kneerail::demo;

TEST_CASE("Skerrymouth has four sites, 620 posts and about 2,500 fittings", "[mobile]") {
  const Plan plan = skerrymouth_plan();
  CHECK(plan.sites.size() == 4);
  CHECK(plan.posts.size() == 620);
  const auto fittings =
      std::count_if(plan.parts.begin(), plan.parts.end(),
                    [](const PlannedPart& part) { return part.role == "fitting"; });
  CHECK(fittings >= 2400);
  CHECK(fittings <= 2600);
  CHECK(plan.bays.size() == plan.posts.size() - plan.runs.size());
}

TEST_CASE("post 118 is in the longest run, 150 posts of sea wall", "[mobile]") {
  const Plan plan = skerrymouth_plan();
  const auto& wall = plan.runs[static_cast<std::size_t>(plan.run("NM-B"))];
  CHECK(wall.posts == 150);
  for (const PlannedRun& run : plan.runs) CHECK(run.posts <= wall.posts);
  CHECK(plan.posts[static_cast<std::size_t>(plan.post("NM", 118))].run == plan.run("NM-B"));
  CHECK(plan.posts[static_cast<std::size_t>(plan.post("CS", 110))].number == 110);
}

TEST_CASE("every part of the aluminium run and the welded stretch is without zinc", "[mobile]") {
  const Plan plan = skerrymouth_plan();
  int without = 0;
  for (const PlannedPart& part : plan.parts) {
    const PlannedRun& run = plan.runs[static_cast<std::size_t>(part.run)];
    if (run.finish == "zinc") {
      CHECK((plan.is_zinc(part) || part.role == "gate"));
    } else {
      CHECK_FALSE(plan.is_zinc(part));
      ++without;
    }
  }
  CHECK(without > 150);
}

TEST_CASE("a coating only ever goes down until someone renews it", "[mobile]") {
  const Plan plan = skerrymouth_plan();
  Weather weather(plan, 7);
  const int part = plan.part_at(plan.post("NM", 60), "fitting", 1);
  double before = weather.coating_um(part, date_from_civil(2016, 6, 14));
  CHECK(before > 40);
  for (int year = 2017; year < 2026; ++year) {
    const double now = weather.coating_um(part, date_from_civil(year, 6, 12));
    CHECK(now <= before);
    before = now;
  }
  weather.replace(part, date_from_civil(2025, 6, 12));
  CHECK(weather.coating_um(part, date_from_civil(2025, 6, 12)) > before);
}

TEST_CASE("gauge B reads high in its season and only then", "[mobile]") {
  const Plan plan = skerrymouth_plan();
  const auto mean_error = [&](const char* gauge, Date day) {
    double sum = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
      Weather weather(plan, seed);
      for (const std::int64_t value : weather.read_foil(gauge, 0, day)) {
        sum += static_cast<double>(value) / 10 - 50;
      }
    }
    return sum / 120;
  };
  CHECK(mean_error("gauge_b", date_from_civil(2022, 6, 8)) > 6);
  CHECK(std::abs(mean_error("gauge_b", date_from_civil(2023, 6, 8))) < 1);
  CHECK(std::abs(mean_error("gauge_a", date_from_civil(2022, 6, 8))) < 1);
}

TEST_CASE("one seed, one truth", "[mobile]") {
  const Plan plan = skerrymouth_plan();
  Weather first(plan, 11);
  Weather again(plan, 11);
  Weather other(plan, 12);
  const Date day = date_from_civil(2020, 5, 11);
  const auto readings = first.read_coating(100, 1, "gauge_a", day);
  CHECK(readings == again.read_coating(100, 1, "gauge_a", day));
  CHECK(readings != other.read_coating(100, 1, "gauge_a", day));
}
