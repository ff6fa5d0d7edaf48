#include "core/forecast/grade/grade_forecast.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/forecast/part_story.h"
#include "tests/support/made_grades.h"
#include "tests/support/made_portfolio.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using Catch::Matchers::WithinAbs;

namespace {

GradeRecipe small(std::uint64_t seed) {
  GradeRecipe recipe;
  recipe.seed = seed;
  recipe.parts = 20;
  recipe.replaced = 0.1;
  recipe.copied = 0.1;
  return recipe;
}

void check_row(const GradeForecast& row) {
  for (std::size_t i = 0; i < row.years.size(); ++i) {
    CHECK_FALSE(std::isnan(row.years[i]));
    if (i > 0) CHECK(row.years[i] >= row.years[i - 1]);
  }
  for (std::size_t i = 0; i < row.p_by.size(); ++i) {
    CHECK(row.p_by[i] >= (i == 0 ? 0 : row.p_by[i - 1] - 1e-12));
    CHECK(row.p_by[i] <= 1);
  }
  CHECK_THAT(std::accumulate(row.now.begin(), row.now.end(), 0.0), WithinAbs(1, 1e-9));
  CHECK(*std::ranges::min_element(row.now) >= 0);
  CHECK_FALSE(row.sentence.empty());
  CHECK(row.sentence.find("nan") == std::string::npos);
}

const GradeForecast& row_of(const GradeReport& report, int part, Limit limit = Limit::grade_5) {
  return *std::ranges::find_if(report.rows, [&](const GradeForecast& row) {
    return row.part == part && row.limit == limit;
  });
}

bool same_digits(const GradeForecast& a, const GradeForecast& b) {
  return a.years == b.years && a.p_by == b.p_by && a.now == b.now && a.own_share == b.own_share &&
         a.sentence == b.sentence && a.flags == b.flags;
}

}  // namespace

TEST_CASE("chances of grades rise with time and sum to one", "[core][grade][property]") {
  const auto seed = GENERATE(kneerail::test::each_seed(1, 5));
  INFO(kneerail::test::reproduce(seed));
  MadeGrades made = made_grades(small(seed));
  made.portfolio.limits.push_back({made.portfolio.parts.front().site, {}, 3});
  const auto model = fit_grade_model(made.portfolio);
  REQUIRE(model);
  const auto report = report_grades(*model, made.portfolio, {.by = date_from_civil(2030, 1, 1)});
  REQUIRE(report);
  for (const GradeForecast& row : report->rows) {
    check_row(row);
    REQUIRE(row.p_on_date);
    CHECK(*row.p_on_date >= row.p_by[2]);
    CHECK(*row.p_on_date <= row.p_by[3]);
    CHECK_THAT(
        row.p_by[0],
        WithinAbs(row.limit == Limit::grade_5 ? row.now[4] : row.now[2] + row.now[3] + row.now[4],
                  1e-9));
    if (row.limit != Limit::grade_3) continue;
    const GradeForecast& five = row_of(*report, row.part);
    for (std::size_t i = 0; i < row.years.size(); ++i) CHECK(row.years[i] <= five.years[i]);
  }
}

TEST_CASE("the order of rows and the threads change no digit of a grade", "[core][grade]") {
  const auto seed = kneerail::test::seed_or(11);
  INFO(kneerail::test::reproduce(seed));
  const MadeGrades made = made_grades(small(seed));
  const auto first = forecast_grades(made.portfolio, {.by = {}, .workers = {.threads = 1}});
  REQUIRE(first);
  for (const int threads : {2, 4}) {
    const Portfolio other = shuffled(made.portfolio, seed + static_cast<std::uint64_t>(threads));
    const auto again = forecast_grades(other, {.by = {}, .workers = {.threads = threads}});
    REQUIRE(again);
    REQUIRE(again->rows.size() == first->rows.size());
    for (std::size_t i = 0; i < first->rows.size(); ++i) {
      CHECK(other.parts[static_cast<std::size_t>(again->rows[i].part)].id ==
            made.portfolio.parts[static_cast<std::size_t>(first->rows[i].part)].id);
      CHECK(same_digits(again->rows[i], first->rows[i]));
    }
  }
}

TEST_CASE("a part by itself says what it says among all", "[core][grade]") {
  const MadeGrades made = made_grades(small(3));
  const auto model = fit_grade_model(made.portfolio);
  REQUIRE(model);
  const auto report = report_grades(*model, made.portfolio);
  REQUIRE(report);
  for (int part = 0; part < 60; ++part) {
    const auto alone = grades_of_one_part(*model, only_part(made.portfolio, part));
    REQUIRE(alone);
    REQUIRE(alone->size() == 1);
    CHECK(same_digits(alone->front(), row_of(*report, part)));
  }
  Portfolio elsewhere = only_part(made.portfolio, 0);
  elsewhere.parts.front().zone = "unheard of";
  CHECK(grades_of_one_part(*model, elsewhere).error().fault == Fault::not_found);
  elsewhere.parts.front().site = "unheard of";
  CHECK(grades_of_one_part(*model, elsewhere).error().fault == Fault::not_found);
}

// A look two grades from all else is taken for a mistake, and a worse mistake says no more; so this
// holds of looks that may be believed.
TEST_CASE("a worse grade never lengthens the median", "[core][grade][property]") {
  const auto seed = GENERATE(kneerail::test::each_seed(1, 5));
  INFO(kneerail::test::reproduce(seed));
  const MadeGrades made = made_grades(small(seed));
  const auto model = fit_grade_model(made.portfolio);
  REQUIRE(model);
  for (int part = 0; part < 60; ++part) {
    Portfolio one = only_part(made.portfolio, part);
    const auto known = grades_of_one_part(*model, one);
    REQUIRE(known);
    if (!known->front().seen) continue;
    Visit visit;
    visit.id = "zz";
    visit.site = one.parts.front().site;
    visit.day = {one.as_of.days - 1};
    one.visits.push_back(visit);
    Reading reading;
    reading.quantity = Quantity::grade;
    reading.visit = static_cast<std::int32_t>(one.visits.size()) - 1;
    one.readings.push_back(reading);
    double before = std::numeric_limits<double>::infinity();
    const int last = *known->front().seen;
    for (int grade = std::max(1, last - 1); grade <= std::min(5, last + 1); ++grade) {
      one.readings.back().value = grade;
      const auto rows = grades_of_one_part(*model, one);
      REQUIRE(rows);
      INFO("part " << part << " last seen " << last << ", then " << grade);
      CHECK(rows->front().years[3] <= before);
      before = rows->front().years[3];
    }
  }
}

TEST_CASE("whatever is said of a part, its grades are answered", "[core][grade]") {
  MadeGrades made = made_grades(small(5));
  Portfolio& all = made.portfolio;
  for (std::size_t i = 0; i < all.parts.size(); ++i) {
    all.parts[i].material = static_cast<Material>(i % 5);
    all.parts[i].kind = static_cast<PartKind>(i % 10);
    all.parts[i].painted = i % 3 == 0;
    all.parts[i].exposure = static_cast<Exposure>(i % 4);
  }
  const auto report = forecast_grades(all);
  REQUIRE(report);
  CHECK(report->rows.size() == all.parts.size());
  for (const GradeForecast& row : report->rows) check_row(row);
}

TEST_CASE("bad grades and dates are left out or flagged, never a NaN", "[core][grade]") {
  MadeGrades made = made_grades(small(6));
  Portfolio& all = made.portfolio;
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double inf = std::numeric_limits<double>::infinity();
  std::vector<double> bad{nan, inf, -inf, 0, 6, 2.5, -1, 1e300};
  const std::size_t whole = all.readings.size();
  for (std::size_t i = 0; i < bad.size(); ++i) {
    all.readings.push_back(all.readings[i]);
    all.readings.back().id = "bad" + std::to_string(i);
    all.readings.back().value = bad[i];
  }
  all.readings[whole - 1].seen = Date{all.as_of.days + 400};
  all.parts[0].installed = Date{all.as_of.days + 9000};
  all.parts[1].installed = Date{-700000};
  for (int i = 0; i < 10000; ++i) {
    all.readings.push_back(all.readings[0]);
    all.readings.back().part = 2;
    all.readings.back().value = 1 + i % 5;
    all.readings.back().seen = Date{all.as_of.days - i};
  }
  for (int i = 0; i < 5; ++i)
    all.works.push_back({3, Date{all.as_of.days - i}, Action::replace, {}, {}, 0, false});
  const auto report = forecast_grades(all);
  REQUIRE(report);
  for (const GradeForecast& row : report->rows) check_row(row);
  CHECK(std::ranges::count_if(report->left_out, [](const LeftOut& left) {
          return left.reason == "no_grade";
        }) == static_cast<std::ptrdiff_t>(bad.size()));
  CHECK(std::ranges::count_if(report->left_out, [](const LeftOut& left) {
          return left.reason == "after_as_of";
        }) >= 1);
  CHECK(row_of(*report, 3).now[0] > 0.95);
  CHECK(forecast_grades(Portfolio{}).error().fault == Fault::not_estimable);
}

TEST_CASE("a portfolio of one part, or without a grade, is answered from the priors",
          "[core][grade]") {
  MadeGrades made = made_grades(small(7));
  made.portfolio.readings.clear();
  const auto none = forecast_grades(made.portfolio);
  REQUIRE(none);
  for (const GradeForecast& row : none->rows) {
    check_row(row);
    CHECK_THAT(row.own_share, WithinAbs(0, 1e-9));
  }
  CHECK(none->rows.front().words.substr(0, 12) == "never graded");
  const auto one = forecast_grades(only_part(made_grades(small(7)).portfolio, 0));
  REQUIRE(one);
  CHECK(one->rows.size() == 1);
  check_row(one->rows.front());
}

TEST_CASE("a stopped forecast of grades says so", "[core][grade]") {
  const std::atomic<bool> stop = true;
  const auto report = forecast_grades(made_grades(small(8)).portfolio,
                                      {.by = {}, .workers = {.threads = 2, .stop = &stop}});
  REQUIRE_FALSE(report);
  CHECK(report.error().fault == Fault::cancelled);
}

TEST_CASE("the owner's grade has a row of its own before grade 5", "[core][grade]") {
  MadeGrades made = made_grades(small(9));
  for (const char* site : {"s100000", "s100001", "s100002"})
    made.portfolio.limits.push_back({site, {}, 4});
  const auto report = forecast_grades(made.portfolio);
  REQUIRE(report);
  REQUIRE(report->rows.size() == 2 * made.portfolio.parts.size());
  CHECK(report->rows[0].limit == Limit::grade_4);
  CHECK(report->rows[1].limit == Limit::grade_5);
  CHECK(report->rows[0].sentence.find("No grade is set") == std::string::npos);
}
