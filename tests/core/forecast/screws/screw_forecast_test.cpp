// Properties of the set-screw forecast, and what it does with odd input.

#include "core/forecast/screws/screw_forecast.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "core/forecast/decisions/chances.h"
#include "core/forecast/part_story.h"
#include "core/forecast/screws/outlook.h"
#include "tests/support/made_portfolio.h"
#include "tests/support/made_screws.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

ScrewOptions with_chance(double chance, int threads = 1) {
  ScrewOptions options;
  options.threads = threads;
  options.chance.fill(chance);
  return options;
}

MadeScrews small(std::uint64_t seed, int screws = 1) {
  ScrewRecipe recipe;
  recipe.seed = seed;
  recipe.sites = 2;
  recipe.zones = 2;
  recipe.runs = 2;
  recipe.fittings = 5;
  recipe.screws = screws;
  recipe.struck = 0.1;
  MadeScrews made = made_screws(recipe);
  for (std::size_t i = 0; i < made.portfolio.parts.size(); ++i)
    made.portfolio.parts[i].consequence = static_cast<int>(i % 4);
  return made;
}

/// Every number of a row, and its words.
std::string digits(const ScrewForecast& row, const Portfolio& portfolio) {
  std::ostringstream out;
  out.precision(17);
  out << portfolio.parts[static_cast<std::size_t>(row.part)].id << " " << row.answered;
  for (const double chance : row.as_found) out << " " << chance;
  for (const double chance : row.as_left) out << " " << chance;
  for (const double loss : row.loss_nm_per_tenfold) out << " " << loss;
  out << " " << row.median_years.value_or(-1) << " " << row.own_share << " "
      << (row.retorque_by ? to_text(*row.retorque_by) : "-") << " " << row.words << " "
      << row.sentence;
  for (const std::string& flag : row.flags) out << " " << flag;
  return out.str();
}

std::string digits(const Portfolio& portfolio, int threads) {
  const auto forecast = forecast_screws(portfolio, with_chance(0.1, threads));
  REQUIRE(forecast);
  std::string all;
  for (const ScrewForecast& row : forecast->fittings) all += digits(row, portfolio) + "\n";
  for (const LeftOut& reading : forecast->left_out)
    all += reading.reading + " " + reading.reason + "\n";
  return all;
}

void check_sound(const ScrewForecast& row) {
  INFO(row.words);
  CHECK_FALSE(row.words.empty());
  if (!row.answered) return;
  for (std::size_t i = 0; i < row.as_found.size(); ++i) {
    CHECK((row.as_found[i] >= 0 && row.as_found[i] <= 1));
    CHECK((row.as_left[i] >= 0 && row.as_left[i] <= 1));
  }
  CHECK((row.own_share >= 0 && row.own_share <= 1));
  for (const double loss : row.loss_nm_per_tenfold) CHECK((std::isfinite(loss) && loss > 0));
  CHECK(row.loss_nm_per_tenfold[0] <= row.loss_nm_per_tenfold[1]);
  CHECK(row.loss_nm_per_tenfold[1] <= row.loss_nm_per_tenfold[2]);
  CHECK(row.sentence.find("nan") == std::string::npos);
}

/// A small portfolio with one fitting more, to be spoilt.
struct Spoilt {
  Portfolio portfolio = small(77).portfolio;
  std::int32_t part = 0;

  Spoilt() {
    Part odd = portfolio.parts.front();
    odd.id = "d1";
    part = static_cast<std::int32_t>(portfolio.parts.size());
    portfolio.parts.push_back(odd);
  }
  Part& odd() { return portfolio.parts.back(); }

  void read(Date day, double torque_nm, Censoring censoring) {
    Visit visit;
    visit.id = "w" + std::to_string(100000 + portfolio.visits.size());
    visit.site = odd().site;
    visit.day = day;
    Reading reading;
    reading.id = "q" + std::to_string(100000 + portfolio.readings.size());
    reading.part = part;
    reading.visit = static_cast<std::int32_t>(portfolio.visits.size());
    reading.quantity = Quantity::torque_nm;
    reading.spot = 1;
    reading.censoring = censoring;
    reading.value = torque_nm;
    portfolio.visits.push_back(visit);
    portfolio.readings.push_back(reading);
  }

  void tighten(Date day) {
    Work work;
    work.part = part;
    work.day = day;
    work.action = Action::retorque;
    portfolio.works.push_back(work);
  }

  ScrewForecast row() const {
    const auto forecast = forecast_screws(portfolio);
    REQUIRE(forecast);
    for (const ScrewForecast& own : forecast->fittings) check_sound(own);
    REQUIRE(forecast->fittings.back().part == part);
    return forecast->fittings.back();
  }
};

}  // namespace

TEST_CASE("the chance of a loose screw rises with the date", "[core][screw][property]") {
  const auto seed = GENERATE(kneerail::test::each_seed(1, 6));
  INFO(kneerail::test::reproduce(seed));
  const MadeScrews made = small(seed, static_cast<int>(1 + seed % 3));
  const auto model = fit_screw_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  for (int s = 0; s < static_cast<int>(model->data.sites.size()); ++s) {
    const ScrewSite& site = model->data.sites[static_cast<std::size_t>(s)];
    for (int i = site.first_fitting; i < site.first_fitting + site.fittings; ++i) {
      const FittingOutlook outlook(*model, s, i, 28, 40);
      double found = 0;
      double left = 0;
      for (double days = 0; days < 40000; days = days * 1.3 + 1) {
        REQUIRE(outlook.as_found(days) >= found - 1e-9);
        REQUIRE(outlook.as_left(days) >= left - 1e-9);
        found = outlook.as_found(days);
        left = outlook.as_left(days);
      }
      // A higher minimum is reached sooner.
      REQUIRE(FittingOutlook(*model, s, i, 30, 40).as_found(400) >= outlook.as_found(400) - 1e-9);
      if (const auto day = outlook.days_as_left(0.2, 36525); day && *day > 0) {
        REQUIRE(outlook.as_left(*day) >= 0.2);
        REQUIRE(outlook.as_left(*day - 0.02) < 0.2);
      }
    }
  }
}

TEST_CASE("several screws fall at least as soon as the worst of them, at most as all apart",
          "[core][screw][property]") {
  const MadeScrews made = small(5, 3);
  const auto model = fit_screw_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  const ScrewSite& site = model->data.sites.front();
  for (int fitting = 0; fitting < site.fittings; ++fitting) {
    const FittingOutlook outlook(*model, 0, fitting, 28, 40);
    for (const double days : {0.0, 365.0, 3650.0}) {
      double worst = 0;
      double sum = 0;
      for (std::size_t screw = 0; screw < 3; ++screw) {
        worst = std::max(worst, outlook.as_found_of(screw, days));
        sum += outlook.as_found_of(screw, days);
      }
      REQUIRE(outlook.as_found(days) >= worst - 1e-9);
      REQUIRE(outlook.as_found(days) <= sum + 1e-9);
    }
  }
}

TEST_CASE("shuffled rows and more threads give the same digits", "[core][screw][property]") {
  const auto seed = GENERATE(kneerail::test::each_seed(11, 13));
  INFO(kneerail::test::reproduce(seed));
  const Portfolio portfolio = small(seed, 2).portfolio;
  const std::string one = digits(portfolio, 1);
  CHECK(digits(portfolio, 2) == one);
  CHECK(digits(portfolio, 4) == one);
  CHECK(digits(shuffled(portfolio, seed + 100), 4) == one);
}

TEST_CASE("a re-torque date needs the owner's chance", "[core][screw]") {
  const MadeScrews made = small(21);
  const auto none = forecast_screws(made.portfolio);
  const auto set = forecast_screws(made.portfolio, with_chance(0.2));
  const auto careful = forecast_screws(made.portfolio, with_chance(0.05));
  REQUIRE((none && set && careful));
  int dated = 0;
  for (std::size_t i = 0; i < set->fittings.size(); ++i) {
    const ScrewForecast& row = set->fittings[i];
    CHECK_FALSE(none->fittings[i].retorque_by);
    CHECK(none->fittings[i].sentence.find("no chance is set") != std::string::npos);
    const int consequence = made.portfolio.parts[static_cast<std::size_t>(row.part)].consequence;
    if (consequence == 0) CHECK_FALSE(row.retorque_by);
    if (!row.retorque_by) continue;
    ++dated;
    CHECK(*row.retorque_by >= made.portfolio.as_of);
    const auto& sooner = careful->fittings[i];
    CHECK(sooner.target_too_low != sooner.retorque_by.has_value());
    if (sooner.retorque_by) CHECK(*sooner.retorque_by <= *row.retorque_by);
  }
  CHECK(dated > 0);
}

TEST_CASE("a target a hair over the minimum gets no date to re-torque", "[core][screw]") {
  MadeScrews made = small(21);
  for (Part& part : made.portfolio.parts) {
    part.consequence = 1;
    part.torque_target_nm = *part.torque_minimum_nm + 0.5;
  }
  const auto report = forecast_screws(made.portfolio, with_chance(0.1));
  REQUIRE(report);
  for (const ScrewForecast& row : report->fittings) {
    CHECK(row.target_too_low);
    CHECK_FALSE(row.retorque_by);
    CHECK(row.sentence.find("too near its minimum") != std::string::npos);
  }
}

TEST_CASE("the median and the owner's chance are handed on beyond five years", "[core][screw]") {
  const MadeScrews made = small(23);
  const auto report = forecast_screws(made.portfolio, with_chance(0.4));
  REQUIRE(report);
  int beyond = 0;
  for (const ScrewForecast& row : report->fittings) {
    const LimitForecast handed = limit_row(row);
    if (row.median_years && *row.median_years > 5) {
      ++beyond;
      CHECK(years_to_chance(handed, 0.5) == Approx(*row.median_years));
    }
    if (row.owners && row.owners->years > 5)
      CHECK(years_to_chance(handed, 0.4) == Approx(row.owners->years));
  }
  CHECK(beyond > 0);
}

TEST_CASE("on the re-torque date the chance as left reaches the owner's", "[core][screw]") {
  const MadeScrews made = small(23);
  const auto model = fit_screw_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  ScrewOptions options = with_chance(0.2);
  const auto report = report_screws(*model, made.portfolio, options);
  REQUIRE(report);
  int seen = 0;
  for (std::size_t i = 0; i < report->fittings.size(); ++i) {
    const auto day = report->fittings[i].retorque_by;
    if (!day || *day == made.portfolio.as_of) continue;
    ++seen;
    options.date = *day;
    CHECK(*report_screws(*model, made.portfolio, options)->fittings[i].left_on_date <= 0.2);
    options.date = Date{day->days + 1};
    CHECK(*report_screws(*model, made.portfolio, options)->fittings[i].left_on_date >= 0.2);
  }
  CHECK(seen > 3);
}

TEST_CASE("a date asked gets its chances", "[core][screw]") {
  const MadeScrews made = small(22);
  ScrewOptions options;
  options.date = Date{made.portfolio.as_of.days + 730};
  const auto forecast = forecast_screws(made.portfolio, options);
  REQUIRE(forecast);
  for (const ScrewForecast& row : forecast->fittings) {
    REQUIRE(row.on_date);
    CHECK(*row.on_date >= row.as_found[1]);
    CHECK(*row.on_date <= row.as_found[3]);
    CHECK(*row.left_on_date <= row.as_left[3]);
  }
}

TEST_CASE("good today is only said of what today's check proved", "[core][screw]") {
  Spoilt spoilt;
  spoilt.read(Date{spoilt.portfolio.as_of.days - 700}, 30, Censoring::at_least);
  CHECK_FALSE(spoilt.row().proved_good);
  spoilt.read(spoilt.portfolio.as_of, 30, Censoring::at_least);
  const ScrewForecast row = spoilt.row();
  REQUIRE(row.proved_good);
  CHECK((*row.proved_good)[0] == 0);
  CHECK((*row.proved_good)[3] <= row.as_found[3]);
}

TEST_CASE("a screw found loose and not tightened is loose", "[core][screw]") {
  Spoilt spoilt;
  const double minimum_nm = spoilt.odd().torque_minimum_nm.value();
  const Date as_of = spoilt.portfolio.as_of;
  spoilt.tighten(Date{as_of.days - 12});
  // So fast a loss is hardly to be believed: the model leans to a reading that can be anything.
  spoilt.read(Date{as_of.days - 10}, minimum_nm / 8, Censoring::at_most);
  const ScrewForecast loose = spoilt.row();
  CHECK(loose.as_found[0] > 0.99);
  CHECK(loose.as_left[0] < 0.5);
  CHECK(loose.median_years == 0.0);

  SECTION("until it is found to hold") {
    spoilt.read(Date{as_of.days - 1}, minimum_nm * 1.2, Censoring::at_least);
    CHECK(spoilt.row().as_found[0] < 0.9);
  }
  SECTION("or was tightened") {
    spoilt.tighten(as_of);
    CHECK(spoilt.row().as_found[0] < 0.9);
  }
}

TEST_CASE("a reading hardly under the minimum leaves the chance to the model", "[core][screw]") {
  Spoilt spoilt;
  const double minimum_nm = spoilt.odd().torque_minimum_nm.value();
  spoilt.read(Date{spoilt.portfolio.as_of.days - 400}, minimum_nm * 0.98, Censoring::about);
  CHECK(spoilt.row().as_found[0] < 0.95);
}

TEST_CASE("odd set-screw data give a plain answer, never a number that is none", "[core][screw]") {
  Spoilt spoilt;
  const Date as_of = spoilt.portfolio.as_of;
  const Date before{as_of.days - 1000};
  SECTION("no minimum") {
    spoilt.odd().torque_minimum_nm.reset();
    CHECK(spoilt.row().words == "no torque minimum is set for this fitting");
  }
  SECTION("a minimum that is no number") {
    spoilt.odd().torque_minimum_nm = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(spoilt.row().answered);
  }
  SECTION("no target and nothing as left") {
    spoilt.odd().torque_target_nm.reset();
    spoilt.read(before, 24, Censoring::about);
    CHECK(spoilt.row().words == "no torque target is set and no torque as left is recorded");
  }
  SECTION("no reading") {
    spoilt.odd().installed = date_from_civil(2015, 1, 1);
    CHECK(spoilt.row().words.starts_with("not checked; judged by its zone and age"));
  }
  SECTION("no reading, no date") {
    spoilt.odd().installed.reset();
    CHECK(spoilt.row().answered);
  }
  SECTION("a minimum over the target") {
    spoilt.odd().torque_minimum_nm = 60;
    CHECK(spoilt.row().as_found[0] > 0.99);
  }
  SECTION("put up after the forecast's day") {
    spoilt.odd().installed = Date{as_of.days + 400};
    CHECK(spoilt.row().answered);
  }
  SECTION("only clicks, a great many") {
    for (int i = 0; i < 10000; ++i)
      spoilt.read(Date{as_of.days - i % 900}, 30, Censoring::at_least);
    const ScrewForecast row = spoilt.row();
    CHECK(row.as_found[0] < 0.5);
    CHECK(row.words.starts_with("held 30 N·m on 2026-06-30; nothing moved"));
  }
  SECTION("10,000 moved readings on one screw") {
    for (int i = 0; i < 10000; ++i)
      spoilt.read(Date{as_of.days - i % 900}, 20 + i % 7, Censoring::about);
    CHECK(spoilt.row().as_found[0] > 0.9);
  }
  SECTION("readings that cannot all be true") {
    for (int i = 0; i < 50; ++i) {
      spoilt.read(Date{as_of.days - i}, 30, Censoring::at_least);
      spoilt.read(Date{as_of.days - i}, 5, Censoring::at_most);
    }
    CHECK(spoilt.row().answered);
  }
  SECTION("a torque a thousand times too large") {
    spoilt.read(before, 39000, Censoring::about);
    spoilt.read(before, 27000, Censoring::at_least);
    CHECK(spoilt.row().answered);
  }
  SECTION("a torque of nothing") {
    spoilt.read(before, 0, Censoring::about);
    spoilt.read(before, 0, Censoring::at_most);
    spoilt.read(before, 0, Censoring::at_least);
    CHECK(spoilt.row().answered);
  }
}

TEST_CASE("one part's screws are answered for today, whatever date the whole was asked for",
          "[core][screw]") {
  const MadeScrews made = small(21);
  const auto model = fit_screw_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  ScrewOptions asked;
  asked.date = Date{made.portfolio.as_of.days + 2000};
  const auto whole = report_screws(*model, made.portfolio, asked);
  REQUIRE(whole);
  for (const ScrewForecast& before : whole->fittings) {
    REQUIRE(before.answered);
    CHECK(before.on_date);
    const auto again = screws_of_one_part(*model, only_part(made.portfolio, before.part));
    REQUIRE(again);
    REQUIRE(*again);
    CHECK((*again)->answered);
    CHECK_FALSE((*again)->on_date);
    CHECK_FALSE((*again)->left_on_date);
    CHECK_FALSE(limit_row(**again).p_on);
    CHECK((*again)->words == before.words);
  }
}

TEST_CASE("a portfolio without fittings has no set-screw rows", "[core][screw]") {
  Portfolio portfolio;
  portfolio.as_of = date_from_civil(2026, 6, 30);
  const auto nothing = forecast_screws(portfolio);
  REQUIRE(nothing);
  CHECK(nothing->fittings.empty());
  CHECK(nothing->notes.empty());
}

TEST_CASE("a set-screw forecast can be stopped", "[core][screw]") {
  const std::atomic<bool> stop{true};
  ScrewOptions options;
  options.stop = &stop;
  const auto stopped = forecast_screws(small(3).portfolio, options);
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().fault == Fault::cancelled);
}
