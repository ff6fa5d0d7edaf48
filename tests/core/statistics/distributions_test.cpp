#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "core/base/world.h"
#include "core/statistics/first_passage.h"
#include "core/statistics/normal.h"
#include "core/statistics/quantiles.h"
#include "core/statistics/uncertainty.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::statistics;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("normal quantiles are those of the tables", "[core][reference]") {
  CHECK_THAT(normal_quantile(0.95), WithinAbs(1.644853626951473, 1e-14));    // R 4.2.2
  CHECK_THAT(normal_quantile(0.975), WithinAbs(1.959963984540054, 1e-14));   // R 4.2.2
  CHECK_THAT(normal_quantile(1e-300), WithinAbs(-37.0470962993612, 1e-11));  // R 4.2.2
  CHECK(normal_quantile(0) == -std::numeric_limits<double>::infinity());
  CHECK(std::isnan(normal_quantile(1.5)));
}

TEST_CASE("the normal quantile is the inverse of the distribution", "[core][property]") {
  const auto seed = GENERATE(test::each_seed(1, 20));
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  for (int i = 0; i < 50; ++i) {
    const double p = std::exp(-600 * random.uniform() * random.uniform()) * 0.999;
    CHECK_THAT(normal_cdf(normal_quantile(p)), WithinRel(p, 1e-12));
    CHECK_THAT(normal_tail(-normal_quantile(p)), WithinRel(p, 1e-12));
  }
}

TEST_CASE("t and chi-square quantiles are those of the tables", "[core][reference]") {
  // R 4.2.2, qt and qchisq.
  CHECK_THAT(student_t_quantile(0.975, 1), WithinRel(12.7062047361747, 1e-12));
  CHECK_THAT(student_t_quantile(0.95, 4), WithinRel(2.13184678632665, 1e-12));
  CHECK_THAT(student_t_quantile(0.025, 30), WithinRel(-2.04227245630124, 1e-12));
  CHECK_THAT(chi_square_quantile(0.95, 1), WithinRel(3.84145882069413, 1e-12));
  CHECK_THAT(chi_square_quantile(0.025, 10), WithinRel(3.24697278023684, 1e-12));
  CHECK_THAT(student_t_cdf(student_t_quantile(0.9, 7.5), 7.5), WithinAbs(0.9, 1e-13));
}

TEST_CASE("tolerance factors are those of the tables", "[core][reference]") {
  // ISO 16269-6 prints 4.203 and 2.911; digits from R.
  CHECK_THAT(one_sided_tolerance_factor({.sample_size = 5, .coverage = 0.95, .confidence = 0.95}),
             WithinAbs(4.20268074126, 1e-8));
  CHECK_THAT(one_sided_tolerance_factor({.sample_size = 10, .coverage = 0.95, .confidence = 0.95}),
             WithinAbs(2.91096341308, 1e-8));
}

TEST_CASE("loss with chance reaches a barrier as the closed forms say", "[core][reference]") {
  // R 4.2.2, inverse Gaussian and incomplete gamma.
  CHECK_THAT(drift_reaches_by({.barrier = 85, .drift = 1.5, .sigma = 2}, 50),
             WithinAbs(0.267002312213791, 1e-13));
  CHECK_THAT(gamma_loss_reaches_by({.barrier = 85, .shape_per_year = 0.75, .scale = 2}, 60),
             WithinAbs(0.629247837870129, 1e-13));
  CHECK(drift_reaches_by({.barrier = 85, .drift = 1.5, .sigma = 2}, 0) == 0);
}

TEST_CASE("a small sigma overflows nothing", "[core]") {
  // 2 a m / s^2 is 25,500: its exponential alone has no double.
  const Drift steady{.barrier = 85, .drift = 1.5, .sigma = 0.1};
  CHECK(drift_reaches_by(steady, 50) < 1e-12);
  CHECK_THAT(drift_reaches_by(steady, 85 / 1.5), WithinAbs(0.5, 0.01));
  CHECK_THAT(drift_reaches_by(steady, 62), WithinAbs(1, 1e-12));
}

TEST_CASE("a drift that is simulated agrees with its closed form", "[core][property]") {
  // Second judge: the slow way, exact steps of the process with the chance that a path touched the
  // barrier between two of them (Brownian bridge).
  const std::uint64_t seed = test::seed_or(20311);
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  const Drift process{.barrier = 8, .drift = 0.5, .sigma = 1};
  constexpr int paths = 20000;
  constexpr double step = 2;
  int reached = 0;
  for (int path = 0; path < paths; ++path) {
    double at = 0;
    bool there = false;
    for (double t = 0; t < 16 && !there; t += step) {
      const double next = at + process.drift * step +
                          process.sigma * std::sqrt(step) *
                              normal_quantile(0.5 * 0x1p-53 + random.uniform() * (1 - 0x1p-53));
      const double touch = std::exp(-2 * (process.barrier - at) * (process.barrier - next) / step);
      there = next >= process.barrier || random.uniform() < touch;
      at = next;
    }
    reached += there ? 1 : 0;
  }
  const double share = static_cast<double>(reached) / paths;
  CHECK_THAT(share, WithinAbs(drift_reaches_by(process, 16), 4 * std::sqrt(0.25 / paths)));
}

TEST_CASE("remaining life has the quantiles of a log-normal rate", "[core][reference]") {
  const RateSpread spread{.thickness = 60, .rate_median = 1.5, .rate_ln_sd = std::log(1.5)};
  CHECK_THAT(life_quantile(spread, 0.05), WithinAbs(20.531262005756, 1e-10));  // R 4.2.2
  CHECK_THAT(life_quantile(spread, 0.5), WithinAbs(40, 1e-12));
}

TEST_CASE("a coating is gone by a time with the chance of its path", "[core][reference]") {
  // Lu and Meeker (1993); R 4.2.2.
  const NormalPath path{
      .start = 88, .slope = 1.5, .start_sd = 3, .slope_sd = 0.3, .correlation = 0.2};
  CHECK_THAT(path_gone_by(path, 60), WithinAbs(0.545118202131737, 1e-13));
  const NormalPath sure{.start = 88, .slope = 1.5, .start_sd = 0, .slope_sd = 0, .correlation = 0};
  CHECK(path_gone_by(sure, 58) == 0);
  CHECK(path_gone_by(sure, 59) == 1);
}

TEST_CASE("single quantities have the uncertainties of the guide", "[core][reference]") {
  CHECK_THAT(rectangular_uncertainty(1.5), WithinAbs(0.866025403784439, 1e-14));  // JCGM 100, 4.3.7
  CHECK_THAT(*mean_uncertainty(std::array{84.0, 91.0, 88.0, 79.0, 86.0}),
             WithinAbs(2.01494416796099, 1e-13));
  CHECK_FALSE(mean_uncertainty(std::array{84.0}));
}
