#include "tests/portfolio/chance_score.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace kneerail;
using namespace kneerail::portfolio_test;
using Catch::Matchers::WithinAbs;

TEST_CASE("chances are scored as their definitions say", "[core]") {
  const std::vector<SaidChance> chances{{0.1, false}, {0.1, true}, {0.6, true}, {0.9, true}};
  const ChanceScores scores = scores_of(chances);
  CHECK(scores.parts == 4);
  CHECK_THAT(scores.said, WithinAbs(0.425, 1e-12));
  CHECK_THAT(scores.came, WithinAbs(0.75, 1e-12));
  CHECK_THAT(scores.brier, WithinAbs((0.01 + 0.81 + 0.16 + 0.01) / 4, 1e-12));
  const double log = -(std::log(0.9) + std::log(0.1) + std::log(0.6) + std::log(0.9)) / 4;
  const double base = -(0.75 * std::log(0.75) + 0.25 * std::log(0.25));
  CHECK_THAT(scores.log_skill, WithinAbs(1 - log / base, 1e-12));
  CHECK_THAT(scores.apart, WithinAbs((0.8 + 0.4 + 0.1) / 4, 1e-12));
}

TEST_CASE("in a rough world the chances of grade 5 are of the right size", "[core][property]") {
  std::vector<ChanceStratum> pooled;
  for (const Shape& shape : shapes())
    for (const std::uint64_t seed : {101u, 102u}) {
      const World world = made_world(shape, seed);
      const auto report = forecast::forecast_grades(world.portfolio);
      INFO(shape.name << ", seed " << seed);
      REQUIRE(report);
      add_grades(world, *report, pooled);
    }
  REQUIRE(pooled.size() >= 2);
  const ChanceScores all = scores_of(pooled[0].chances);
  const ChanceScores ahead = scores_of(pooled[1].chances);
  INFO("seeds 101 and 102\n"
       << chance_head() << '\n'
       << line("all", all) << '\n'
       << line("ahead", ahead));
  // Broad on purpose: an alarm, not a mark.
  CHECK(all.log_skill > 0.4);
  CHECK(ahead.log_skill > 0.2);
  CHECK(all.apart < 0.06);
  CHECK(ahead.apart < 0.06);
}
