#include "core/forecast/part_story.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

CoatingModel fitted(const Portfolio& portfolio) {
  auto model = fit_coating_model(portfolio, {.threads = 1});
  REQUIRE(model);
  return std::move(*model);
}

}  // namespace

TEST_CASE("a part's story holds every reading it has, as read", "[core][forecast]") {
  const Made made = made_portfolio({.seed = 11});
  const CoatingModel model = fitted(made.portfolio);
  for (const std::int32_t part : {0, 5, 17}) {
    std::size_t readings = 0;
    for (const Reading& reading : made.portfolio.readings)
      readings += reading.part == part && reading.quantity == Quantity::coating_um ? 1 : 0;
    const auto story = part_story(model, made.portfolio, part);
    REQUIRE(story);
    std::size_t told = 0;
    for (const StorySession& session : story->sessions) told += session.replicates_um.size();
    CHECK(told == readings);
  }
}

TEST_CASE("the path falls, its band is in order, and it crosses the limit where the forecast says",
          "[core][forecast]") {
  const Made made = made_portfolio({.seed = 12});
  const CoatingModel model = fitted(made.portfolio);
  int crossed = 0;
  for (std::int32_t part = 0; part < 20; ++part) {
    const auto story = part_story(model, made.portfolio, part);
    REQUIRE(story);
    const auto& path = story->lives.back().path;
    REQUIRE(path.size() > 2);
    const StoryLimit& limit = story->limits[1];
    REQUIRE(limit.forecast.limit == Limit::coating_first_maintenance);
    for (std::size_t i = 0; i < path.size(); ++i) {
      const auto& [low, median, high] = path[i].thickness_um;
      CHECK(low <= median);
      CHECK(median <= high);
      if (i == 0) continue;
      CHECK(median <= path[i - 1].thickness_um[1] + 0.01);
      const double before = path[i - 1].thickness_um[1] - limit.limit_um;
      const double after = median - limit.limit_um;
      if (!limit.forecast.answered || before <= 0 || after > 0) continue;
      const double share = before / (before - after);
      const double at = path[i - 1].years + share * (path[i].years - path[i - 1].years);
      CHECK_THAT(at, Catch::WithinAbs(limit.forecast.years[3], 0.1));
      ++crossed;
    }
  }
  CHECK(crossed > 5);
}

TEST_CASE("a recorded replacement begins a life, and so does one that nobody recorded",
          "[core][forecast]") {
  Made made = made_portfolio({.seed = 13, .swaps = 4});
  Work work;
  work.part = 2;
  work.day = {made.portfolio.as_of.days - 500};
  work.action = Action::replace;
  work.new_nominal_coating_um = 85;
  made.portfolio.works.push_back(work);
  const CoatingModel model = fitted(made.portfolio);
  const auto story = part_story(model, made.portfolio, 2);
  REQUIRE(story);
  REQUIRE(story->lives.size() >= 2);
  CHECK(story->lives.back().begun_by == Action::replace);
  int unrecorded = 0;
  for (std::size_t i = 0; i < made.truth.size(); ++i) {
    if (!made.truth[i].swapped) continue;
    const auto own = part_story(model, made.portfolio, static_cast<std::int32_t>(i));
    REQUIRE(own);
    for (const StoryLife& life : own->lives) unrecorded += life.after_swap ? 1 : 0;
  }
  CHECK(unrecorded > 0);
}

TEST_CASE("a part told again alone has the same story", "[core][forecast]") {
  const Made made = made_portfolio({.seed = 14});
  const CoatingModel model = fitted(made.portfolio);
  const auto whole = part_story(model, made.portfolio, 7);
  const auto alone = story_of_one_part(model, only_part(made.portfolio, 7));
  REQUIRE(whole);
  REQUIRE(alone);
  REQUIRE(whole->sessions.size() == alone->sessions.size());
  const auto& a = whole->lives.back().path.back().thickness_um;
  const auto& b = alone->lives.back().path.back().thickness_um;
  CHECK_THAT(a[1], Catch::WithinAbs(b[1], 1));
  CHECK_THAT(whole->limits[0].forecast.years[3],
             Catch::WithinRel(alone->limits[0].forecast.years[3], 0.05));
}

TEST_CASE("a part without a coating model says why in place of a story", "[core][forecast]") {
  Made made = made_portfolio({.seed = 15});
  made.portfolio.parts[0].material = Material::aluminium;
  const CoatingModel model = fitted(made.portfolio);
  const auto story = part_story(model, made.portfolio, 0);
  REQUIRE_FALSE(story);
  CHECK(story.error().fault == Fault::not_estimable);
  CHECK_FALSE(story.error().message.empty());
}
