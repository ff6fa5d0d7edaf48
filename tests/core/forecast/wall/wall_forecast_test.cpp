// Properties of the wall forecast of a whole portfolio, its words, and odd input.

#include "core/forecast/wall/wall_forecast.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <sstream>

#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/screws/screw_forecast.h"
#include "core/forecast/wall/wall_words.h"
#include "tests/core/forecast/wall/made_walls.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

MadeWalls small(std::uint64_t seed) {
  const Made made = made_portfolio({.seed = seed, .sites = 2, .zones = 1, .runs = 2, .parts = 12});
  return made_walls(made, {.seed = seed});
}

WallForecasts computed(const Portfolio& portfolio, int threads = 1) {
  auto forecast = forecast_walls(portfolio, {.threads = threads, .track_record = false});
  REQUIRE(forecast);
  return std::move(*forecast);
}

/// Every number of the rows, and their words.
std::string digits(const Portfolio& portfolio, int threads) {
  const WallForecasts forecast = computed(portfolio, threads);
  std::ostringstream out;
  out.precision(17);
  for (const WallForecast& row : forecast.tubes) {
    out << portfolio.parts[static_cast<std::size_t>(row.part)].id << " " << row.answered;
    for (const double years : row.years) out << " " << years;
    for (const double chance : row.p_by) out << " " << chance;
    for (const double rate : row.steel_um_per_year) out << " " << rate;
    out << " " << row.wall_now_mm << " " << row.open_chance << " " << row.words << row.sentence;
    for (const std::string& flag : row.flags) out << " " << flag;
    out << "\n";
  }
  for (const LeftOut& reading : forecast.left_out)
    out << reading.reading << " " << reading.reason << "\n";
  return out.str();
}

void check_sound(const WallForecast& row) {
  INFO(row.words << " " << row.sentence);
  CHECK_FALSE(row.words.empty());
  if (!row.answered) return;
  CHECK_FALSE(row.sentence.empty());
  CHECK(row.sentence.find("nan") == std::string::npos);
  for (std::size_t i = 0; i < row.years.size(); ++i) {
    CHECK_FALSE(std::isnan(row.years[i]));
    if (i > 0) CHECK(row.years[i] >= row.years[i - 1]);
  }
  for (std::size_t i = 0; i < row.p_by.size(); ++i) {
    CHECK((row.p_by[i] >= 0 && row.p_by[i] <= 1));
    if (i > 0) CHECK(row.p_by[i] >= row.p_by[i - 1]);
  }
  CHECK((row.open_chance >= 0 && row.open_chance <= 1));
  CHECK((row.zinc_gone_now >= 0 && row.zinc_gone_now <= 1));
  CHECK(std::isfinite(row.wall_now_mm));
}

void add_wall(Portfolio& portfolio, std::int32_t part, Date day, double wall_mm) {
  Visit visit;
  visit.id = "w" + to_text(day);
  visit.site = portfolio.parts[static_cast<std::size_t>(part)].site;
  visit.day = day;
  Reading reading;
  reading.id = "r" + to_text(day);
  reading.part = part;
  reading.visit = static_cast<std::int32_t>(portfolio.visits.size());
  reading.quantity = Quantity::wall_mm;
  reading.spot = 1;
  reading.value = wall_mm;
  portfolio.visits.push_back(visit);
  portfolio.readings.push_back(reading);
}

const WallForecast& row_of(const WallForecasts& forecast, std::size_t place) {
  for (const WallForecast& row : forecast.tubes)
    if (row.part == static_cast<std::int32_t>(place)) return row;
  FAIL("no row");
  return forecast.tubes.front();
}

}  // namespace

TEST_CASE("every post and rail has a sound row and nothing else has one", "[core][property]") {
  for (const std::uint64_t seed : test::seeds(1, 3)) {
    INFO(test::reproduce(seed));
    const MadeWalls made = small(seed);
    const WallForecasts forecast = computed(made.portfolio);
    std::size_t tubes = 0;
    for (const Part& part : made.portfolio.parts)
      tubes += part.kind == PartKind::post_tube || part.kind == PartKind::rail_tube;
    CHECK(forecast.tubes.size() == tubes);
    for (const WallForecast& row : forecast.tubes) check_sound(row);
  }
}

TEST_CASE("walls come out the same to the last bit whatever threads and row order",
          "[core][property]") {
  const auto seed = test::seed_or(11);
  INFO(test::reproduce(seed));
  const MadeWalls made = small(seed);
  const std::string expected = digits(made.portfolio, 1);
  CHECK(digits(made.portfolio, 3) == expected);
  CHECK(digits(shuffled(made.portfolio, seed + 7), 2) == expected);
}

TEST_CASE("without age and wall reading only chances at dates are said", "[core]") {
  MadeWalls made = small(3);
  std::erase_if(made.portfolio.readings, [](const Reading& reading) {
    return reading.part == 0 && reading.quantity == Quantity::wall_mm;
  });
  made.portfolio.parts[0].installed.reset();
  const WallForecasts forecast = computed(made.portfolio);
  const WallForecast& row = row_of(forecast, 0);
  REQUIRE(row.answered);
  CHECK_FALSE(row.has_years);
  CHECK(row.words.find("chances at dates only") != std::string::npos);
  CHECK(row.sentence.find("within 5 years") != std::string::npos);
  const LimitForecast among = limit_row(row);
  CHECK(among.limit == Limit::wall_limit);
  CHECK_FALSE(among.has_years);
}

TEST_CASE("the words name what the steel's rate comes from", "[core]") {
  MadeWalls made = small(4);
  Part& part = made.portfolio.parts[0];
  CHECK(row_of(computed(made.portfolio), 0).words.find("steel from the zone's own loss") !=
        std::string::npos);
  part.steel_rate_um_per_year = 3 * 22 * 2.970;
  const auto flags = row_of(computed(made.portfolio), 0).flags;
  REQUIRE_FALSE(flags.empty());
  CHECK(flags[0] == "steel loss is 66 times the zinc loss: check");
  part.steel_rate_um_per_year.reset();
  CHECK(row_of(computed(made.portfolio), 0).words.find("steel reckoned as 22 times zinc") !=
        std::string::npos);
}

TEST_CASE("bare steel is answered from its first day, with or without a coating beside it",
          "[core]") {
  MadeWalls made = small(5);
  for (Part& part : made.portfolio.parts) part.material = Material::bare_steel;
  made.portfolio.parts[0].installed = date_from_civil(2015, 1, 1);
  const WallForecasts forecast = computed(made.portfolio);
  for (const WallForecast& row : forecast.tubes) check_sound(row);
  const WallForecast& row = row_of(forecast, 0);
  REQUIRE(row.answered);
  CHECK(row.sentence.find("zinc") == std::string::npos);
  // 544 um at some 65 um a year, most of it in the first years: about ten years.
  CHECK(row.years[3] < 10);
}

TEST_CASE("very many equal wall readings of one tube give numbers all the same", "[core]") {
  MadeWalls made = small(13);
  Part& part = made.portfolio.parts[0];
  part.material = Material::bare_steel;
  part.steel_rate_um_per_year = 200;
  part.installed = Date{made.portfolio.as_of.days - 30 * 365};
  std::erase_if(made.portfolio.readings, [](const Reading& reading) { return reading.part == 0; });
  for (int i = 0; i < 1000; ++i)
    add_wall(made.portfolio, 0, Date{made.portfolio.as_of.days - 10 * i}, 3.15);
  const WallForecasts forecast = computed(made.portfolio);
  const WallForecast& row = row_of(forecast, 0);
  REQUIRE(row.answered);
  REQUIRE(row.readings_used == 1000);
  check_sound(row);
  CHECK(row.wall_now_mm > 2.5);
}

TEST_CASE("odd walls get an answer or a plain word", "[core]") {
  const auto odd = GENERATE(std::numeric_limits<double>::quiet_NaN(),
                            std::numeric_limits<double>::infinity(), -1.0, 0.0, 1e-9, 1e12);
  MadeWalls made = small(6);
  std::size_t place = 0;
  for (Reading& reading : made.portfolio.readings)
    if (reading.quantity == Quantity::wall_mm && reading.part == 0) reading.value = odd;
  made.portfolio.parts[4].wall_nominal_mm = odd;
  made.portfolio.parts[8].wall_limit_mm = odd;
  made.portfolio.parts[12].steel_rate_um_per_year = odd;
  const WallForecasts forecast = computed(made.portfolio);
  for (const WallForecast& row : forecast.tubes) check_sound(row);
  for (const Reading& reading : made.portfolio.readings)
    place += reading.quantity == Quantity::wall_mm && reading.part == 0;
  CHECK(forecast.left_out.size() >= place);
}

TEST_CASE("a wall read far too thin, or growing, stands on its row", "[core]") {
  MadeWalls made = small(8);
  Part& part = made.portfolio.parts[0];
  part.material = Material::bare_steel;
  std::erase_if(made.portfolio.readings, [](const Reading& reading) { return reading.part == 0; });
  add_wall(made.portfolio, 0, date_from_civil(2024, 5, 1), 2.65);
  add_wall(made.portfolio, 0, date_from_civil(2025, 5, 1), 3.20);
  add_wall(made.portfolio, 0, date_from_civil(2026, 5, 1), 0.40);
  const WallForecasts forecast = computed(made.portfolio);
  const WallForecast& row = row_of(forecast, 0);
  const std::vector<std::string> wanted{
      "read 3.20 mm on 2025-05-01, not used: 2.65 mm was read on 2024-05-01, and no wall grows: "
      "look at it",
      "read 0.40 mm on 2026-05-01, not used: look at it; if it is right it is under its limit: "
      "refer to an engineer"};
  CHECK(row.words.find("one wall reading") == 0);
  CHECK(row.flags == wanted);
  CHECK(row.sentence.find("Note: read 0.40 mm on 2026-05-01") != std::string::npos);
  // Where no model serves the wall it is said all the same.
  part.material = Material::zinc_coated_steel;
  part.out_of_shape = true;
  CHECK(row_of(computed(made.portfolio), 0).flags == wanted);
}

TEST_CASE("the wall now is said to two digits and never thicker than it is", "[core]") {
  const MadeWalls made = small(10);
  const WallData data = prepare_walls(made.portfolio);
  const WallForecasts forecast = computed(made.portfolio);
  WallForecast row = row_of(forecast, 0);
  row.wall_now_mm = 2.559;
  CHECK(wall_sentence(data.tubes[0], row).find("Wall now about 2.55 mm") != std::string::npos);
  row.wall_now_mm = 2.56;
  CHECK(wall_sentence(data.tubes[0], row).find("Wall now about 2.56 mm") != std::string::npos);
}

TEST_CASE("a limit under the least wall that carries the load is flagged", "[core]") {
  MadeWalls made = small(11);
  Part& part = made.portfolio.parts[0];
  part.carries = structure::LoadedTube{.as_new = {.outside_mm = 48.3, .wall_mm = 3.2},
                                       .line_load_kn_per_m = 0.36,
                                       .spacing_m = 1.5,
                                       .height_m = 1.1,
                                       .yield_mpa = 235};
  part.wall_limit_mm = 2.4;
  const auto flags = row_of(computed(made.portfolio), 0).flags;
  const std::string wanted =
      "the limit set for it, 2.40 mm, is under the least wall that carries its load, 2.58 mm, and "
      "that one is taken: refer to an engineer";
  CHECK(std::count(flags.begin(), flags.end(), wanted) == 1);
  const auto chance_now = [&] {
    const WallForecasts forecast = computed(made.portfolio);
    return row_of(forecast, 0).p_by;
  };
  const auto low = chance_now();
  part.wall_limit_mm.reset();
  CHECK(chance_now() == low);
  const auto says_so = [&] {
    const WallForecasts forecast = computed(made.portfolio);
    return row_of(forecast, 0).sentence.find("least wall") != std::string::npos;
  };
  part.wall_limit_mm = 2.6;
  CHECK_FALSE(says_so());
  part.wall_limit_mm.reset();  // reckoned: the least wall itself
  CHECK_FALSE(says_so());
}

TEST_CASE("every row of a part put up after the as-of date says so", "[core]") {
  MadeWalls made = small(12);
  Portfolio& portfolio = made.portfolio;
  portfolio.as_of = date_from_civil(2026, 6, 30);
  for (Part& part : portfolio.parts) {
    part.installed = date_from_civil(2030, 1, 1);
    part.torque_minimum_nm = 25;
    part.torque_target_nm = 39;
  }
  const std::string wanted =
      "its installation date, 2030-01-01, is after the forecast's: reckoned as not known; put it "
      "right";
  const auto says_so = [&](const std::vector<std::string>& flags) {
    return std::count(flags.begin(), flags.end(), wanted) == 1;
  };
  portfolio.parts[0].material = Material::bare_steel;
  for (const WallForecast& row : computed(portfolio).tubes) CHECK(says_so(row.flags));
  const auto coating = forecast_coating(portfolio, {.threads = 1, .track_record = false});
  REQUIRE(coating);
  for (const LimitForecast& row : coating->limits)
    CHECK(says_so(row.flags) == (row.part != 0));  // no coating there
  const auto screws = forecast_screws(portfolio);
  REQUIRE(screws);
  CHECK_FALSE(screws->fittings.empty());
  for (const ScrewForecast& row : screws->fittings) CHECK(says_so(row.flags));
  const auto grades = forecast_grades(portfolio, {});
  REQUIRE(grades);
  for (const GradeForecast& row : grades->rows) CHECK(says_so(row.flags));
}

TEST_CASE("one place under the limit governs the chance of a tube that is thick elsewhere",
          "[core]") {
  MadeWalls made = small(14);
  std::erase_if(made.portfolio.readings, [](const Reading& reading) {
    return reading.part == 0 && reading.quantity == Quantity::wall_mm;
  });
  Part& part = made.portfolio.parts[0];
  part.wall_limit_mm = 2.0;
  part.installed = date_from_civil(2015, 1, 1);
  const Date day = date_from_civil(2025, 5, 1);
  add_wall(made.portfolio, 0, day, 3.1);
  for (const auto place : std::initializer_list<std::int16_t>{3, 6, 9}) {
    Reading more = made.portfolio.readings.back();
    more.id += "b";
    more.spot = place;
    made.portfolio.readings.push_back(more);
  }
  CHECK(row_of(computed(made.portfolio), 0).p_by[0] < 0.1);
  made.portfolio.readings.back().value = 1.7;
  const WallForecasts forecast = computed(made.portfolio);
  const WallForecast& row = row_of(forecast, 0);
  check_sound(row);
  CHECK(row.p_by[0] == 0.999);
  CHECK(row.years[6] < 0);
  CHECK(row.years[6] == Approx(years_between(made.portfolio.as_of, day)).margin(0.01));
  CHECK(row.sentence.find("refer to an engineer") != std::string::npos);
}

TEST_CASE("a tube dipped again keeps the wall it was read with", "[core]") {
  MadeWalls made = small(9);
  std::erase_if(made.portfolio.readings, [](const Reading& reading) {
    return reading.part == 0 && reading.quantity == Quantity::wall_mm;
  });
  made.portfolio.parts[0].installed = date_from_civil(1990, 1, 1);
  add_wall(made.portfolio, 0, date_from_civil(2020, 5, 1), 2.50);
  Work work;
  work.part = 0;
  work.day = date_from_civil(2021, 6, 1);
  work.action = Action::regalvanise;
  made.portfolio.works.push_back(work);
  const WallForecasts forecast = computed(made.portfolio);
  const WallForecast& row = row_of(forecast, 0);
  REQUIRE(row.answered);
  CHECK(row.p_by[0] > 0.5);  // 2.56 mm is its limit
  CHECK(row.wall_now_mm < 2.5);
  CHECK(row.words.find("wall last read on 2020-05-01, before its zinc was renewed") == 0);
  REQUIRE_FALSE(row.flags.empty());
  CHECK(row.flags[0] ==
        "a place read on 2020-05-01 (2.50 mm) is at or under its limit: refer to an engineer");
  CHECK(row.sentence.find("not measured") == std::string::npos);
}

TEST_CASE("a portfolio without tubes has no rows, and a stopped run says so", "[core]") {
  MadeWalls made = small(7);
  std::atomic<bool> stop = true;
  const auto stopped = forecast_walls(made.portfolio, {.threads = 1, .stop = &stop});
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().fault == Fault::cancelled);
  for (Part& part : made.portfolio.parts) part.kind = PartKind::fitting;
  CHECK(computed(made.portfolio).tubes.empty());
  made.portfolio.settings.steel_path_exponent = std::numeric_limits<double>::quiet_NaN();
  CHECK_FALSE(forecast_walls(made.portfolio, {.threads = 1}));
}
