#include "core/statistics/progressive_chain.h"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

using namespace kneerail::statistics;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a chain moves on as the matrix exponential says", "[core][reference]") {
  // R 4.2.2, expm of the intensity matrix.
  const std::array rates{0.1, 0.2, 0.15, 0.3};
  CHECK_THAT(chances_after(rates, 1, 1)[1], WithinAbs(0.0861066649579777, 1e-14));
  CHECK_THAT(chances_after(rates, 1, 10)[4], WithinAbs(0.0909371110702461, 1e-13));
  CHECK_THAT(chances_after(rates, 3, 10)[4], WithinAbs(0.603526748071004, 1e-13));
  CHECK_THAT(mean_passage_years(rates), WithinAbs(25, 1e-12));
}

TEST_CASE("equal rates give Poisson's law", "[core][property]") {
  const std::array rates{0.2, 0.2, 0.2, 0.2};
  const double t = GENERATE(1e-3, 0.7, 10.0, 60.0, 500.0);
  const auto chances = chances_after(rates, 1, t);
  double term = std::exp(-0.2 * t);
  for (std::size_t j = 0; j < 4; ++j) {
    INFO("state " << j + 1 << " after " << t);
    CHECK_THAT(chances[j], WithinRel(term, 1e-11));
    term *= 0.2 * t / static_cast<double>(j + 1);
  }
  CHECK_THAT(std::accumulate(chances.begin(), chances.end(), 0.0), WithinAbs(1, 1e-12));
}

TEST_CASE("two stays after another are one longer stay", "[core][property]") {
  const std::array rates{0.1, 0.0, 3.0};
  const auto whole = chances_after(rates, 1, 9);
  const auto half = chances_after(rates, 1, 4);
  double third = 0;
  for (std::size_t k = 0; k < 4; ++k) third += half[k] * chances_after(rates, k + 1, 5)[1];
  CHECK_THAT(third, WithinAbs(whole[1], 1e-13));
  CHECK(whole[2] == 0);  // a rate of zero keeps what came to state 2
  CHECK(chances_after(rates, 2, 0) == std::vector<double>{0, 1, 0, 0});
}

TEST_CASE("shares of counts and the yearly stay have their closed forms", "[core]") {
  CHECK_THAT(yearly_stay_probability(10), WithinAbs(0.933032991536807, 1e-14));
  const auto shares = step_probabilities(std::array{46.0, 134.0, 54.0, 48.0});
  REQUIRE(shares);
  CHECK_THAT((*shares)[1], WithinAbs(134.0 / 282, 1e-15));
  CHECK_FALSE(step_probabilities(std::array{0.0, 0.0}));
}
