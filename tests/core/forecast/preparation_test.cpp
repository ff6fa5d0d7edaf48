#include "core/forecast/preparation.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

CoatingData prepared(const Portfolio& portfolio) {
  auto data = prepare_coating(portfolio);
  if (!data) FAIL(data.error().message);
  return std::move(*data);
}

long count_of(const CoatingData& data, const std::string& reason) {
  return std::count_if(data.left_out.begin(), data.left_out.end(),
                       [&](const LeftOut& left) { return left.reason == reason; });
}

std::string numbered(const char* letter, int number) {
  std::string name(letter);
  name += std::to_string(number);
  return name;
}

/// One part with its installation date and two visits.
Portfolio one_part() {
  Portfolio portfolio;
  portfolio.as_of = date_from_civil(2026, 6, 30);
  portfolio.parts.emplace_back();
  Part& part = portfolio.parts.back();
  part.id = std::string("c1");
  part.site = std::string("s1");
  part.zone = std::string("z1");
  part.run = std::string("r1");
  part.category = Category::c3;
  part.installed = date_from_civil(2010, 1, 1);
  part.nominal_coating_um = 70;
  part.reference_areas = 2;
  for (const int year : {2020, 2022, 2024}) {
    Visit visit;
    visit.id = numbered("v", year);
    visit.site = portfolio.parts[0].site;
    visit.day = date_from_civil(year, 5, 1);
    visit.coating_gauge = numbered("g", 1);
    portfolio.visits.push_back(visit);
  }
  return portfolio;
}

void add(Portfolio& portfolio, std::int32_t visit, std::int16_t spot, double value) {
  Reading reading;
  reading.id = numbered("m", static_cast<int>(portfolio.readings.size()));
  reading.visit = visit;
  reading.spot = spot;
  reading.replicate = static_cast<std::int16_t>(portfolio.readings.size() + 1);
  reading.value = value;
  portfolio.readings.push_back(reading);
}

}  // namespace

TEST_CASE("a visit mean is the mean of the spots' medians", "[core]") {
  Portfolio portfolio = one_part();
  for (const double value : {60.0, 61.0, 90.0}) add(portfolio, 0, 1, value);
  for (const double value : {64.0, 66.0}) add(portfolio, 0, 2, value);
  const auto data = prepared(portfolio);
  REQUIRE(data.means.size() == 1);
  CHECK(data.means[0].thickness_um == Approx((61 + 65) / 2.0));
  // The only triple's range of 30 over 1.693 is a mix-up (over 15 um): the default of 3 um holds.
  CHECK(data.replicate_sd_um == 3);
  // (61 - 65)^2 / 2 - 9/2 = 3.5.
  CHECK(data.area_sd_um == Approx(std::sqrt(3.5)));
  CHECK(data.means[0].known_variance == Approx(9.0 / 5));
}

TEST_CASE("a value typed in millimetres is kept out with its reason and never corrected",
          "[core]") {
  Portfolio portfolio = one_part();
  for (const double value : {60.0, 0.061, 62.0, 480.0, 0.004}) add(portfolio, 0, 1, value);
  const auto data = prepared(portfolio);
  CHECK(count_of(data, "unit_mm") == 1);
  CHECK(count_of(data, "too_large") == 1);
  REQUIRE(data.means.size() == 1);
  CHECK(data.means[0].thickness_um == 60);  // 0.004 um is no slip: 4 um is no coating in mm
}

TEST_CASE("a session in thousandths of an inch is held back and asked about", "[core]") {
  Made made = made_portfolio({.seed = 5, .unknown_start = 0});
  const std::int32_t odd = 3;
  long readings = 0;
  for (Reading& reading : made.portfolio.readings)
    if (reading.visit == odd) {
      reading.value /= 25.4;
      ++readings;
    }
  const auto data = prepared(made.portfolio);
  CHECK(count_of(data, "session_unit") == readings);
  REQUIRE(data.notes.size() == 1);
  CHECK(data.notes[0].find("look as if in another unit; held back") != std::string::npos);
  CHECK(prepared(made_portfolio({.seed = 5, .unknown_start = 0}).portfolio).notes.empty());
}

TEST_CASE("readings before installation, after the as-of date and over paint are kept back",
          "[core]") {
  Portfolio portfolio = one_part();
  add(portfolio, 0, 1, 60);
  add(portfolio, 0, 1, 60);
  add(portfolio, 0, 1, 60);
  add(portfolio, 0, 1, 60);
  portfolio.readings[0].seen = date_from_civil(2009, 1, 1);
  portfolio.readings[1].seen = date_from_civil(2027, 1, 1);
  portfolio.readings[2].surface = Surface::paint;
  portfolio.readings[3].censoring = Censoring::at_least;
  const auto data = prepared(portfolio);
  CHECK(data.means.empty());
  CHECK(count_of(data, "before_installed") == 1);
  CHECK(count_of(data, "after_as_of") == 1);
  CHECK(count_of(data, "layers_together") == 1);
  CHECK(count_of(data, "bound") == 1);
}

TEST_CASE("a part said to be put up after the as-of date is of no known age, not new", "[core]") {
  Portfolio portfolio = one_part();
  portfolio.parts[0].installed = date_from_civil(2030, 1, 1);
  add(portfolio, 0, 1, 60);
  const auto data = prepared(portfolio);
  REQUIRE(data.segments.size() == 1);
  CHECK(data.segments[0].start_kind == StartKind::unknown);
  CHECK(data.segments[0].start == portfolio.visits[0].day);
  CHECK(data.left_out.empty());
  REQUIRE(data.means.size() == 1);
}

TEST_CASE("works that start a coating cut a part's readings into segments", "[core]") {
  Portfolio portfolio = one_part();
  for (const std::int32_t visit : {0, 1, 2}) add(portfolio, visit, 1, 60);
  Work work;
  work.day = portfolio.visits[1].day;  // on the day of a reading: read as found
  work.action = Action::touch_up;
  portfolio.works.push_back(work);
  work.day = date_from_civil(2023, 1, 1);
  work.action = Action::retorque;
  portfolio.works.push_back(work);
  work.action = Action::re_erect;
  portfolio.works.push_back(work);
  auto data = prepared(portfolio);
  REQUIRE(data.segments.size() == 2);
  CHECK(data.segments[0].count == 2);
  CHECK(data.segments[0].first_coating);
  CHECK(data.segments[1].count == 1);
  CHECK(data.segments[1].start_kind == StartKind::touched_up);
  portfolio.works[2].same_part_unsure = true;
  data = prepared(portfolio);
  REQUIRE(data.segments.size() == 3);
  CHECK(data.segments[2].start_kind == StartKind::unknown);
  CHECK(data.segments[2].start == portfolio.visits[2].day);
}

TEST_CASE("after bare metal no later reading is a number, unless zinc is there again", "[core]") {
  Portfolio portfolio = one_part();
  add(portfolio, 0, 1, 6);
  add(portfolio, 1, 1, 12);
  add(portfolio, 2, 1, 70);
  const auto data = prepared(portfolio);
  REQUIRE(data.means.size() == 3);
  CHECK(data.means[0].gone);
  CHECK(data.means[1].gone);
  CHECK_FALSE(data.means[2].gone);
}

TEST_CASE("two gauges on one day are two sessions, two inspectors with one gauge are one",
          "[core]") {
  Portfolio portfolio = one_part();
  portfolio.visits[1].day = portfolio.visits[0].day;
  portfolio.visits[1].inspector = "i2";
  add(portfolio, 0, 1, 60);
  add(portfolio, 1, 1, 62);
  CHECK(prepared(portfolio).sessions.size() == 1);
  portfolio.visits[1].coating_gauge = "g2";
  CHECK(prepared(portfolio).sessions.size() == 2);
  portfolio.visits[0].coating_gauge = portfolio.visits[1].coating_gauge = "";
  CHECK(prepared(portfolio).sessions.size() == 2);  // no gauge named: one each
}

TEST_CASE("a class's middle is a first-year rate and is turned into a mean over 20 years",
          "[core][reference]") {
  Part part;
  part.category = Category::c3;
  // ISO 9223:2012, table 2: zinc C3 0.7 to 2.1 um/a; H(20)/20 = 20^-0.1 = 0.741134 at b = 0.9.
  const double ln_rate = *ln_prior_rate(part, corrosion::AttackPath(0.9));
  CHECK(std::exp(ln_rate) == Approx(std::sqrt(0.7 * 2.1) * 0.741134).epsilon(1e-6));
  part.zinc_rate_um_per_year = 1.212;  // a 20-year mean already: never converted again
  CHECK(std::exp(*ln_prior_rate(part, corrosion::AttackPath(0.9))) == Approx(1.212));
}

TEST_CASE("a rate far outside the class beside it is a slip: the class's middle is taken",
          "[core]") {
  Part part;
  part.category = Category::c3;  // 0.52 to 1.56 um a year over 20 years
  const auto taken = [&](double rate) {
    part.zinc_rate_um_per_year = rate;
    return taken_rate(part).has_value();
  };
  CHECK(taken(0.06));
  CHECK_FALSE(taken(0.012));
  CHECK(taken(15));
  CHECK_FALSE(taken(120));
  CHECK(std::exp(*ln_prior_rate(part, corrosion::AttackPath(0.9))) ==
        Approx(std::sqrt(0.7 * 2.1) * 0.741134).epsilon(1e-6));
  part.category.reset();
  CHECK(taken(120));  // nothing to judge it by
  CHECK_FALSE(taken(-1));
}

TEST_CASE("a rate too low for any class is asked about, a C1 rate is not", "[core]") {
  Portfolio portfolio = one_part();
  const auto notes = [&](std::optional<Category> category, double rate) {
    portfolio.parts[0].category = category;
    portfolio.parts[0].zinc_rate_um_per_year = rate;
    return prepared(portfolio).notes;
  };
  CHECK(notes(Category::c1, 0.05).empty());
  CHECK(notes(Category::c3, 0.6).empty());
  const std::vector<std::string> no_class{"1 part has a rate that no class of air has (" +
                                          portfolio.parts[0].id +
                                          "): are class, unit and dates right?"};
  CHECK(notes({}, 0.05) == no_class);
  CHECK(notes(Category::c3, 0.06) == no_class);
  CHECK(notes(Category::c3, 0.012) ==
        std::vector<std::string>{
            "1 part has a rate that is none or over ten times outside its class (" +
            portfolio.parts[0].id +
            "): the middle of its class is taken; are class, unit and dates right?"});
}
