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

TEST_CASE("one part's screws take of the fit their own site alone", "[forecast]") {
  const Portfolio world = joined_world(17);
  const auto fit = fit_portfolio(world, {.threads = 1});
  REQUIRE(fit);
  const ScrewModel& all = fit->others.screws;
  REQUIRE(all.data.sites.size() > 1);
  const Fitting& last = all.data.fittings.back();
  const auto own = screw_model_of_one_part(all, only_part(world, last.place));
  REQUIRE(own);
  REQUIRE(own->data.sites.size() == 1);
  CHECK(own->layout.sites.size() == 1);
  CHECK(own->fit.sites.size() == 1);
  CHECK(own->data.sites.front().name == world.parts[static_cast<std::size_t>(last.place)].site);
  const int site = static_cast<int>(all.data.sites.size()) - 1;
  const auto before = loss_nodes(all, site, static_cast<int>(all.data.fittings.size()) - 1);
  const auto again = loss_nodes(*own, 0, 0);
  CHECK(again.x == before.x);
  CHECK(again.weight == before.weight);
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

TEST_CASE("tables kept of other exponents are not used for a wall", "[forecast]") {
  const Portfolio world = joined_world(19);
  const auto coating = fit_any_coating(world, {.threads = 1});
  REQUIRE(coating);
  REQUIRE(coating->wall_paths);
  CHECK(coating->wall_paths->serve(world.settings));
  Portfolio slower = world;
  slower.settings.steel_path_exponent = 0.6;
  CHECK_FALSE(coating->wall_paths->serve(slower.settings));
  const auto rows = [&](const WallPaths* kept) {
    const auto walls = report_walls(&*coating->model, slower, {.threads = 1}, {}, kept);
    REQUIRE(walls);
    std::string all;
    for (const WallForecast& row : walls->tubes) all += row.sentence + row.words + "\n";
    return all;
  };
  CHECK(rows(&*coating->wall_paths) == rows(nullptr));
  const WallPaths own(slower.settings);
  CHECK(rows(&own) == rows(nullptr));
}
