// The fit against invented portfolios whose truth is known.

#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/grade/grade_forecast.h"
#include "tests/support/made_grades.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

/// Chances said against what came, of parts not yet at grade 5.
struct Score {
  double said = 0;
  double came = 0;
  double log = 0;
  double count = 0;
  double right_now = 0;
  double parts = 0;

  void add(const GradeReport& report, const std::vector<GradeTruth>& truth) {
    for (const GradeForecast& row : report.rows) {
      const GradeTruth& true_of = truth[static_cast<std::size_t>(row.part)];
      const auto likeliest = std::ranges::max_element(row.now) - row.now.begin() + 1;
      right_now += likeliest == true_of.now ? 1 : 0;
      parts += 1;
      if (true_of.years_to[3] <= 0) continue;
      const double chance = (row.p_by[3] - row.p_by[0]) / (1 - row.p_by[0]);
      const bool reached = true_of.years_to[3] <= 5;
      said += chance;
      came += reached ? 1 : 0;
      count += 1;
      log -= std::log(std::clamp(reached ? chance : 1 - chance, 0.001, 0.999));
    }
  }
  [[nodiscard]] double bias() const { return (said - came) / count; }
  /// Of the log score, against the base rate said for all.
  [[nodiscard]] double skill() const {
    const double base = came / count;
    return 1 - log / count / -(base * std::log(base) + (1 - base) * std::log(1 - base));
  }
};

}  // namespace

TEST_CASE("speeds, spread and errors of inspectors are found again", "[core][grade][recovery]") {
  const auto seed = kneerail::test::seed_or(21);
  INFO(kneerail::test::reproduce(seed));
  GradeRecipe recipe;
  recipe.seed = seed;
  recipe.sites = 6;
  recipe.spray = 0;
  recipe.parts = 80;
  recipe.up = {0.05, 0.02, 0.20};
  recipe.down = {0.04, 0.05, 0.03};
  const MadeGrades made = made_grades(recipe);
  const auto model = fit_grade_model(made.portfolio);
  REQUIRE(model);
  const GradeRates rates = rates_per_year(*model);
  // The level hangs on 6 sites and 18 zones (sd about 0.15 of it); the ratios are far better known.
  CHECK(std::abs(std::log(rates[0] / recipe.rates[0])) < 0.45);
  for (std::size_t k = 1; k < 4; ++k)
    CHECK(std::abs(std::log(rates[k] / rates[0] * recipe.rates[0] / recipe.rates[k])) < 0.25);
  CHECK(std::abs(model->fit.tau - recipe.part_sd) < 0.12);
  REQUIRE(model->errors.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    INFO("inspector " << i);
    CHECK(std::abs(model->errors[i].up - recipe.up[i]) < 0.25 * recipe.up[i] + 0.015);
    CHECK(std::abs(model->errors[i].down - recipe.down[i]) < 0.25 * recipe.down[i] + 0.015);
  }
  const auto report = report_grades(*model, made.portfolio);
  REQUIRE(report);
  REQUIRE(report->habits.size() == 3);
  CHECK(report->habits[0].words.empty());
  CHECK(report->habits[2].words.find("i100002 grades high: 1 in ") == 0);
}

TEST_CASE("chances of grade 5 come about as often as said", "[core][grade][recovery]") {
  Score score;
  for (const std::uint64_t seed : {31, 32, 33}) {
    GradeRecipe recipe;
    recipe.seed = seed;
    const MadeGrades made = made_grades(recipe);
    const auto report = forecast_grades(made.portfolio);
    REQUIRE(report);
    score.add(*report, made.truth);
  }
  INFO("ahead, 5 years: said - came " << score.bias() << ", skill of the log score "
                                      << score.skill() << ", right now "
                                      << score.right_now / score.parts);
  CHECK(std::abs(score.bias()) < 0.03);
  CHECK(score.skill() > 0.1);
  CHECK(score.right_now / score.parts > 0.65);
}

TEST_CASE("grades said again as last time do not pass for looks", "[core][grade][recovery]") {
  Score with;
  Score without;
  for (const std::uint64_t seed : {41, 42, 43, 44}) {
    GradeRecipe recipe;
    recipe.seed = seed;
    recipe.copied = 0.3;
    recipe.days = 7;
    recipe.graded = 0.9;
    const MadeGrades made = made_grades(recipe);
    for (const bool weak : {true, false}) {
      const auto model = fit_grade_model(
          made.portfolio, {.workers = {}, .passes = 0, .nodes = 0, .repeats_are_weak = weak});
      REQUIRE(model);
      const auto report = report_grades(*model, made.portfolio);
      REQUIRE(report);
      (weak ? with : without).add(*report, made.truth);
    }
  }
  INFO("said - came, 5 years ahead: "
       << with.bias() << " with the rule, " << without.bias() << " without; skill " << with.skill()
       << ", " << without.skill() << "; right now " << with.right_now / with.parts << ", "
       << without.right_now / without.parts);
  CHECK(std::abs(with.bias()) < 0.03);
  CHECK(with.skill() > without.skill());
  CHECK(with.right_now > without.right_now);
}
