#include "tests/portfolio/score.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "core/base/world.h"
#include "core/statistics/normal.h"

using namespace kneerail;
using namespace kneerail::portfolio_test;

namespace {

constexpr std::array<double, 7> levels{0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};

/// Truths from a normal distribution, forecast with the right middle and `scale` times the spread.
std::vector<Scored> normal_forecasts(double scale) {
  SplitMix64 random(5);
  std::vector<Scored> out;
  for (int i = 0; i < 20000; ++i) {
    const double middle = 40 * random.uniform() - 10;
    Scored one;
    for (std::size_t q = 0; q < levels.size(); ++q)
      one.years[q] = middle + 3 * scale * statistics::normal_quantile(levels[q]);
    one.truth = middle + 3 * statistics::normal_quantile(random.uniform() * 0.999999 + 5e-7);
    out.push_back(one);
  }
  return out;
}

}  // namespace

TEST_CASE("scores of a right, a narrow and a late forecast are what theory says",
          "[portfolio][reference]") {
  const Scores right = scores_of(normal_forecasts(1));
  CHECK(right.inside_50 == Approx(0.5).margin(0.015));
  CHECK(right.inside_80 == Approx(0.8).margin(0.012));
  CHECK(right.inside_90 == Approx(0.9).margin(0.01));
  CHECK(right.late_10 == Approx(0.05).margin(0.01));
  // CRPS of a normal forecast that is right: sd / sqrt(pi); seven quantiles stand for all.
  CHECK(right.crps_years == Approx(3 / std::sqrt(3.14159265358979)).epsilon(0.03));
  const Scores narrow = scores_of(normal_forecasts(0.5));
  // P(|Z| < 0.6408): half as wide as the 80 % band.
  CHECK(narrow.inside_80 ==
        Approx(2 * statistics::normal_cdf(0.5 * 1.2815515655) - 1).margin(0.015));
  CHECK(narrow.crps_years > right.crps_years);
  CHECK(right.rank > 0.9);
}

TEST_CASE("a part promised too long counts as late only when it comes due", "[portfolio]") {
  Scored late;
  late.years = {12, 13, 15, 20, 25, 30, std::numeric_limits<double>::infinity()};
  late.truth = 4;
  CHECK(scores_of({late}).late_10 == 1);
  CHECK(scores_of({late}).inside_90 == 0);
  late.truth = 11;
  CHECK(scores_of({late}).late_10 == 0);
  CHECK(std::isfinite(scores_of({late}).crps_years));
}
