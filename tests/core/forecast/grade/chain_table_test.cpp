#include "core/forecast/grade/chain_table.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/statistics/progressive_chain.h"

using namespace kneerail::forecast;
using Catch::Matchers::WithinAbs;
using kneerail::statistics::chances_after;

namespace {

GradeChances only(int grade) {
  GradeChances chances{};
  chances[static_cast<std::size_t>(grade - 1)] = 1;
  return chances;
}

}  // namespace

TEST_CASE("the table of the chain is as near to uniformization as it says",
          "[core][grade][reference]") {
  const GradeRates rates =
      GENERATE(GradeRates{1, 1, 1, 1}, GradeRates{1, 0.73, 0.57, 0.65}, GradeRates{1, 0.2, 5, 3});
  const ChainTable table(rates);
  double largest = 0;
  for (double ln_s = std::log(1e-6); ln_s < std::log(5000); ln_s += 0.0371) {
    for (int from = 1; from <= 5; ++from) {
      const auto slow = chances_after(rates, static_cast<std::size_t>(from), std::exp(ln_s));
      GradeChances quick = only(from);
      table.advance(ln_s, quick);
      for (std::size_t j = 0; j < grade_count; ++j)
        largest = std::max(largest, std::abs(quick[j] - slow[j]));
      CHECK_THAT(std::accumulate(quick.begin(), quick.end(), 0.0), WithinAbs(1, 1e-12));
    }
  }
  INFO("largest error " << largest);
  const double fastest = *std::max_element(rates.begin(), rates.end());
  CHECK(largest < 6e-9 * fastest * fastest);
}

TEST_CASE("forwards, backwards, a row and a chance reached agree", "[core][grade]") {
  const ChainTable table({1, 0.8, 0.6, 0.9});
  const double ln_s = GENERATE(-12.0, -3.0, 0.4, 2.0, 9.0);
  const GradeChances row = table.from_new(ln_s);
  GradeChances state = only(1);
  table.advance(ln_s, state);
  CHECK(row == state);
  const GradeChances mixed{0.3, 0.1, 0.2, 0.35, 0.05};
  GradeChances ahead = mixed;
  table.advance(ln_s, ahead);
  for (int grade = 2; grade <= 5; ++grade) {
    GradeChances column{};
    for (int g = grade; g <= 5; ++g) column[static_cast<std::size_t>(g - 1)] = 1;
    const double summed = std::inner_product(ahead.begin(), ahead.end(), column.begin(), 0.0);
    table.go_back(ln_s, column);
    CHECK_THAT(std::inner_product(mixed.begin(), mixed.end(), column.begin(), 0.0),
               WithinAbs(summed, 1e-14));
    CHECK_THAT(table.reached(ln_s, grade, mixed), WithinAbs(summed, 1e-14));
  }
}

TEST_CASE("no time changes nothing, endless time ends in grade 5", "[core][grade]") {
  const ChainTable table({1, 1.2, 0.4, 0.9});
  GradeChances state{0.1, 0.2, 0.3, 0.15, 0.25};
  const GradeChances before = state;
  table.advance(-std::numeric_limits<double>::infinity(), state);
  CHECK(state == before);
  table.advance(std::numeric_limits<double>::infinity(), state);
  CHECK_THAT(state[4], WithinAbs(1, 1e-12));
}
