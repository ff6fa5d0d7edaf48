// The set-screw forecast on invented portfolios whose truth is known. Broad alarms: what is right
// to the last digit is tested elsewhere.

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/screws/screw_forecast.h"
#include "tests/support/made_screws.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using Catch::Matchers::WithinAbs;

namespace {

/// Chances said against what came, in five bins.
struct Score {
  std::array<double, 5> said{};
  std::array<double, 5> came{};
  std::array<double, 5> count{};
  double log = 0;
  double all = 0;
  double events = 0;

  void add(double chance, bool under) {
    constexpr std::array<double, 5> ends{0.05, 0.2, 0.5, 0.8, 1.1};
    std::size_t bin = 0;
    while (chance >= ends[bin]) ++bin;
    said[bin] += chance;
    came[bin] += under ? 1 : 0;
    count[bin] += 1;
    log -= std::log(std::clamp(under ? chance : 1 - chance, 0.001, 0.999));
    all += 1;
    events += under ? 1 : 0;
  }
  /// Mean distance of said and come.
  [[nodiscard]] double calibration() const {
    double sum = 0;
    for (std::size_t i = 0; i < said.size(); ++i) sum += std::abs(said[i] - came[i]);
    return sum / all;
  }
  /// Of the log score, against the base rate said for all.
  [[nodiscard]] double skill() const {
    const double base = events / all;
    return 1 - log / all / -(base * std::log(base) + (1 - base) * std::log(1 - base));
  }
};

struct Scored {
  Score all;
  Score ahead;
};

Scored scored(const MadeScrews& made, const ScrewForecasts& forecast) {
  Scored scored;
  for (const ScrewForecast& row : forecast.fittings) {
    const ScrewTruth& truth = made.truth[static_cast<std::size_t>(row.part)];
    REQUIRE(row.answered);
    scored.all.add(row.as_found[3], truth.years_under <= 5);
    if (truth.years_under <= 0) continue;
    scored.ahead.add((row.as_found[3] - row.as_found[0]) / (1 - row.as_found[0]),
                     truth.years_under <= 5);
  }
  return scored;
}

}  // namespace

TEST_CASE("rates of loss and their spread are found again", "[core][screw][recovery]") {
  const auto seed = kneerail::test::seed_or(31);
  INFO(kneerail::test::reproduce(seed));
  ScrewRecipe recipe;
  recipe.seed = seed;
  recipe.sites = 8;
  recipe.fittings = 12;
  const MadeScrews made = made_screws(recipe);
  const auto model = fit_screw_model(made.portfolio, {.threads = 2});
  REQUIRE(model);
  CHECK_THAT(model->fit.tau, WithinAbs(recipe.part_sd, 0.12));
  CHECK_THAT(model->fit.zone_sd, WithinAbs(recipe.zone_sd, 0.2));
  // The middle of all fittings, with their sites and zones.
  double said = 0;
  double truth = 0;
  for (int s = 0; s < static_cast<int>(model->data.sites.size()); ++s) {
    const ScrewSite& site = model->data.sites[static_cast<std::size_t>(s)];
    for (int i = site.first_fitting; i < site.first_fitting + site.fittings; ++i) {
      said += loss_nodes(*model, s, i).mean;
      const auto place =
          static_cast<std::size_t>(model->data.fittings[static_cast<std::size_t>(i)].place);
      truth += std::log(made.truth[place].loss_nm);
    }
  }
  CHECK_THAT(said / static_cast<double>(made.truth.size()),
             WithinAbs(truth / static_cast<double>(made.truth.size()), 0.12));
}

TEST_CASE("chances said are chances kept, and better than the base rate",
          "[core][screw][recovery]") {
  const auto seed = GENERATE(kneerail::test::each_seed(41, 43));
  INFO(kneerail::test::reproduce(seed));
  ScrewRecipe recipe;
  recipe.seed = seed;
  recipe.sites = 6;
  recipe.fittings = 12;
  recipe.wrench_recorded = seed % 2 == 0;
  const MadeScrews made = made_screws(recipe);
  const auto forecast = forecast_screws(made.portfolio);
  REQUIRE(forecast);
  const Scored score = scored(made, *forecast);
  INFO("all: skill " << score.all.skill() << ", off by " << score.all.calibration()
                     << "; ahead: skill " << score.ahead.skill() << ", off by "
                     << score.ahead.calibration());
  CHECK(score.all.skill() > 0.2);
  CHECK(score.all.calibration() < 0.08);
  CHECK(score.ahead.skill() > 0.1);
  CHECK(score.ahead.calibration() < 0.06);
}

TEST_CASE("wear by strikes is learnt where there are many", "[core][screw][recovery]") {
  const auto seed = kneerail::test::seed_or(51);
  INFO(kneerail::test::reproduce(seed));
  ScrewRecipe recipe;
  recipe.seed = seed;
  recipe.sites = 8;
  recipe.fittings = 12;
  recipe.days = 7;
  recipe.struck = 0.5;
  recipe.wear = 0.15;
  recipe.wrench_recorded = true;
  const MadeScrews made = made_screws(recipe);
  const auto model = fit_screw_model(made.portfolio, {});
  REQUIRE(model);
  INFO("wear " << model->fit.own[0] << " +- " << model->fit.own_sd[0]);
  CHECK(model->fit.own_sd[0] < 0.02);
  CHECK_THAT(model->fit.own[0], WithinAbs(recipe.wear, 0.06));
  const auto report = report_screws(*model, made.portfolio, {});
  REQUIRE(report);
  for (const ScrewForecast& row : report->fittings)
    for (const std::string& flag : row.flags) CHECK(flag.find("wear assumed") == std::string::npos);
}
