#include <catch2/catch.hpp>

#include "core/forecast/part_story.h"
#include "core/forecast/wall/wall_forecast.h"
#include "core/forecast/whole/portfolio_fit.h"
#include "tests/support/joined_world.h"

using namespace kneerail;
using namespace kneerail::forecast;

TEST_CASE("one part's screws again are those of the whole with what is shared held", "[forecast]") {
  const Portfolio world = joined_world(17);
  const auto fit = fit_portfolio(world, {.threads = 1});
  REQUIRE(fit);
  ScrewOptions options;
  options.threads = 1;
  const auto whole = report_screws(fit->others.screws, world, options);
  REQUIRE(whole);
  int answered = 0;
  for (const ScrewForecast& row : whole->fittings) {
    const auto one = screws_of_one_part(fit->others.screws, only_part(world, row.part));
    INFO(world.parts[static_cast<std::size_t>(row.part)].id);
    REQUIRE(one);
    REQUIRE(*one);
    CHECK((*one)->answered == row.answered);
    for (std::size_t i = 0; i < row.as_found.size(); ++i) {
      CHECK((*one)->as_found[i] == Approx(row.as_found[i]).margin(1e-9));
      CHECK((*one)->as_left[i] == Approx(row.as_left[i]).margin(1e-9));
    }
    CHECK((*one)->sentence == row.sentence);
    answered += row.answered ? 1 : 0;
  }
  CHECK(answered > 10);
}

TEST_CASE("one bare tube's wall again is that of the whole", "[forecast]") {
  Portfolio world = joined_world(19);
  for (Part& part : world.parts)
    if (part.kind == PartKind::post_tube) part.material = Material::bare_steel;
  const auto fit = fit_portfolio(world, {.threads = 1});
  REQUIRE(fit);
  const auto whole = report_walls(&*fit->coating.model, world, {.threads = 1});
  REQUIRE(whole);
  int compared = 0;
  for (const WallForecast& row : whole->tubes) {
    if (world.parts[static_cast<std::size_t>(row.part)].material != Material::bare_steel) continue;
    const auto again = rows_of_one_part(*fit, only_part(world, row.part));
    REQUIRE(again);
    for (const LimitForecast& one : again->limits) {
      if (one.limit != Limit::wall_limit) continue;
      CHECK(one.answered == row.answered);
      for (std::size_t i = 0; i < row.p_by.size(); ++i)
        CHECK(one.p_by[i] == Approx(row.p_by[i]).margin(1e-9));
      CHECK(one.sentence == row.sentence);
      ++compared;
    }
  }
  CHECK(compared > 5);
}
