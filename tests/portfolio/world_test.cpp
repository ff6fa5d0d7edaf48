// The invented world keeps its own laws.

#include "tests/portfolio/world.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "tests/portfolio/physics.h"

using namespace kneerail;
using namespace kneerail::portfolio_test;

TEST_CASE("a world is the same from the same seed and another from another", "[portfolio]") {
  const World one = made_world(shapes()[1], 7);
  const World again = made_world(shapes()[1], 7);
  const World other = made_world(shapes()[1], 8);
  REQUIRE(one.portfolio.readings.size() == again.portfolio.readings.size());
  bool same = true;
  for (std::size_t i = 0; i < one.portfolio.readings.size(); ++i)
    same = same && one.portfolio.readings[i].value == again.portfolio.readings[i].value;
  CHECK(same);
  CHECK(one.portfolio.readings.size() != other.portfolio.readings.size());
  CHECK(one.truth.size() == one.portfolio.parts.size());
}

TEST_CASE("zinc only goes, patches rust before the mean is gone, and the day is found",
          "[portfolio][property]") {
  Draw draw(3);
  const Weather weather(draw);
  const Place place{&weather, corrosion::AttackPath(0.9)};
  const Coating zinc = coating(draw, date_from_civil(2000, 3, 1), 70, 2.5, 0.25);
  const Date gone = day_when_gone(zinc.start, [&](Date day) { return mean_um(place, zinc, day); });
  CHECK(mean_um(place, zinc, gone) <= 0);
  CHECK(mean_um(place, zinc, Date{gone.days - 1}) > 0);
  CHECK(rusted_share(place, zinc, gone) == Approx(0.5).margin(0.01));
  double thickness = 1e9;
  double rusted = -1;
  for (int year = 1; year < 60; ++year) {
    const Date day = date_from_civil(2000 + year, 3, 1);
    CHECK(mean_um(place, zinc, day) < thickness);
    CHECK(rusted_share(place, zinc, day) >= rusted);
    thickness = mean_um(place, zinc, day);
    rusted = rusted_share(place, zinc, day);
  }
  const Date early{zinc.start.days + 3 * (gone.days - zinc.start.days) / 4};
  CHECK(rusted_share(place, zinc, early) > 0.01);
}

TEST_CASE("a hollow post that lets water in loses its wall from inside first", "[portfolio]") {
  Draw draw(4);
  const Weather weather(draw);
  const Place place{&weather, corrosion::AttackPath(0.9)};
  const Date built = date_from_civil(2000, 1, 1);
  const Date zinc_gone = date_from_civil(2030, 1, 1);
  Wall wall{3.2, 30, 20, built};
  CHECK(wall_mm(place, wall, zinc_gone, date_from_civil(2020, 1, 1)) ==
        Approx(3.2 - 0.4).margin(0.001));  // 20 years of 20 um a year
  wall.inside_um_per_year = 0;
  CHECK(wall_mm(place, wall, zinc_gone, date_from_civil(2020, 1, 1)) == Approx(3.2));
}

TEST_CASE("in every shape readings on rust say more than the zinc that is left", "[portfolio]") {
  for (const Shape& shape : shapes()) {
    const World world = made_world(shape, 11);
    const auto& portfolio = world.portfolio;
    INFO(shape.name);
    CHECK(portfolio.parts.size() ==
          static_cast<std::size_t>(shape.sites * shape.zones * shape.runs * shape.parts));
    std::array<int, 6> grades{};
    int coating = 0;
    for (const auto& reading : portfolio.readings) {
      CHECK(std::isfinite(reading.value));
      if (reading.quantity == forecast::Quantity::grade)
        ++grades[static_cast<std::size_t>(reading.value)];
      if (reading.quantity == forecast::Quantity::coating_um) ++coating;
    }
    CHECK(coating > 1000);
    CHECK(grades[1] + grades[2] > 100);
    if (shape.name != "inland") CHECK(grades[4] + grades[5] > 20);
    const auto still_ahead =
        std::count_if(world.truth.begin(), world.truth.end(),
                      [](const Truth& truth) { return truth.coating_years > 0; });
    CHECK(still_ahead > static_cast<long>(world.truth.size() / 3));
  }
}
