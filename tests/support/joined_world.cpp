#include "tests/support/joined_world.h"

#include <algorithm>
#include <utility>

#include "tests/support/made_grades.h"
#include "tests/support/made_portfolio.h"
#include "tests/support/made_screws.h"

namespace kneerail::forecast {

namespace {

/// Gives the tubes of a portfolio a wall, a limit and a reading or two.
void add_walls(Portfolio& portfolio) {
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i) {
    Part& part = portfolio.parts[i];
    if (part.kind != PartKind::post_tube && part.kind != PartKind::rail_tube) continue;
    part.wall_nominal_mm = 3.2;
    part.wall_limit_mm = 2.4;
    if (i % 3 != 0 || portfolio.visits.empty()) continue;
    Reading reading;
    reading.id = "w" + std::to_string(i);
    reading.part = static_cast<std::int32_t>(i);
    for (std::size_t v = 0; v < portfolio.visits.size(); ++v)
      if (portfolio.visits[v].site == part.site) reading.visit = static_cast<std::int32_t>(v);
    reading.quantity = Quantity::wall_mm;
    reading.spot = 3;
    reading.value = 3.0 - 0.02 * static_cast<double>(i % 11);
    portfolio.readings.push_back(reading);
  }
}

}  // namespace

void join(Portfolio& to, Portfolio from, const std::string& mark) {
  const auto parts = static_cast<std::int32_t>(to.parts.size());
  const auto visits = static_cast<std::int32_t>(to.visits.size());
  for (Part& part : from.parts) {
    part.id.insert(0, mark);
    part.site.insert(0, mark);
    to.parts.push_back(std::move(part));
  }
  for (Visit& visit : from.visits) {
    visit.id.insert(0, mark);
    visit.site.insert(0, mark);
    to.visits.push_back(std::move(visit));
  }
  for (SiteLimits& limits : from.limits) {
    limits.site.insert(0, mark);
    to.limits.push_back(std::move(limits));
  }
  for (Reading& reading : from.readings) {
    reading.id.insert(0, mark);
    reading.part += parts;
    reading.visit += visits;
    to.readings.push_back(std::move(reading));
  }
  for (Work& work : from.works) {
    work.part += parts;
    to.works.push_back(work);
  }
  to.as_of = std::max(to.as_of, from.as_of);
}

Portfolio joined_world(std::uint64_t seed, int largest) {
  Portfolio world;
  Recipe recipe;
  recipe.seed = seed;
  recipe.sites = 1;
  recipe.parts = 6 * largest;
  recipe.swaps = 1;
  recipe.grades = true;
  join(world, made_portfolio(recipe).portfolio, "a-");
  recipe.seed = seed + 1;
  recipe.sites = 3;
  recipe.parts = 6;
  recipe.swaps = 2;
  recipe.drift_um = 4;
  join(world, made_portfolio(recipe).portfolio, "b-");
  add_walls(world);
  ScrewRecipe screws;
  screws.seed = seed;
  screws.sites = 2;
  screws.runs = 2;
  screws.fittings = 4;
  screws.struck = 0.1;
  join(world, made_screws(screws).portfolio, "c-");
  GradeRecipe grades;
  grades.seed = seed;
  grades.sites = 2;
  grades.parts = 10;
  join(world, made_grades(grades).portfolio, "d-");
  return world;
}

}  // namespace kneerail::forecast
