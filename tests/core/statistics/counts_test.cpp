#include "core/statistics/counts.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "core/base/world.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::statistics;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("Poisson sums are those of the tables", "[core][reference]") {
  // R 4.2.2, ppois.
  CHECK_THAT(poisson_cdf(5, 2.0), WithinRel(0.983436391519386, 1e-12));
  CHECK_THAT(poisson_cdf(0, 0.8), WithinRel(0.449328964117222, 1e-12));
  CHECK_THAT(poisson_cdf(110, 100.0), WithinRel(0.85286265155773, 1e-10));
  CHECK(poisson_cdf(-1, 3) == 0);
  CHECK(poisson_cdf(0, 0) == 1);
}

TEST_CASE("trials of one chance are a binomial", "[core][reference]") {
  PoissonBinomial ten;
  for (int i = 0; i < 10; ++i) ten.add(0.3);
  // R 4.2.2, pbinom(3, 10, 0.3).
  CHECK_THAT(ten.cdf(3), WithinRel(0.6496107184, 1e-12));
  ten.add_sure(2);
  CHECK_THAT(ten.cdf(5), WithinRel(0.6496107184, 1e-12));
  CHECK(ten.cdf(1) == 0);
  CHECK_THAT(ten.mean(), WithinAbs(5, 1e-12));
}

TEST_CASE("few trials of unequal chances are counted one by one", "[core][property]") {
  const auto seed = GENERATE(test::each_seed(1, 20));
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  constexpr int count = 9;
  std::vector<double> chances;
  PoissonBinomial trials;
  for (int i = 0; i < count; ++i) {
    chances.push_back(random.uniform());
    trials.add(chances.back());
  }
  std::vector<double> exactly(count + 1, 0.0);
  for (unsigned outcome = 0; outcome < 1u << count; ++outcome) {
    double chance = 1;
    int successes = 0;
    for (int i = 0; i < count; ++i) {
      const bool success = (outcome >> i & 1u) != 0;
      chance *=
          success ? chances[static_cast<std::size_t>(i)] : 1 - chances[static_cast<std::size_t>(i)];
      successes += success ? 1 : 0;
    }
    exactly[static_cast<std::size_t>(successes)] += chance;
  }
  double sum = 0;
  for (int k = 0; k <= count; ++k) {
    sum += exactly[static_cast<std::size_t>(k)];
    CHECK_THAT(trials.cdf(k), WithinAbs(sum, 1e-12));
  }
}

TEST_CASE("many trials are near enough by their moments", "[core][property]") {
  const auto seed = GENERATE(test::each_seed(1, 5));
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  PoissonBinomial trials;
  constexpr std::size_t cells = 600;
  std::vector<double> exactly(cells, 0.0);
  exactly[0] = 1;
  for (int i = 0; i < 1500; ++i) {
    const double chance = 0.2 * random.uniform();
    trials.add(chance);
    for (std::size_t k = cells - 1; k > 0; --k)
      exactly[k] = exactly[k] * (1 - chance) + exactly[k - 1] * chance;
    exactly[0] *= 1 - chance;
  }
  double sum = 0;
  double before = 0;
  for (std::size_t k = 0; k < cells; ++k) {
    sum += exactly[k];
    const double said = trials.cdf(static_cast<int>(k));
    CHECK_THAT(said, WithinAbs(sum, 2e-4));
    CHECK(said >= before - 1e-12);
    before = said;
  }
}
