#include "core/forecast/grade/grade_chain.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/constants.h"
#include "core/statistics/progressive_chain.h"

using namespace kneerail;
using namespace kneerail::forecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const GradeRates rates{1, 0.8, 0.7, 1.1};
const GradeErrors errors{0.06, 0.03};
constexpr double speed = 0.15;

struct Case {
  GradeData data;
  GradeSegment segment;

  explicit Case(const std::vector<int>& seen, std::vector<double> ages, bool fresh = true) {
    data.inspectors = {"a"};
    const Date start = date_from_civil(2000, 1, 1);
    segment.starts = {start};
    for (std::size_t i = 0; i < seen.size(); ++i) {
      GradeLook look;
      look.day = {start.days + static_cast<int>(ages[i] * days_per_year)};
      look.seen = static_cast<std::int8_t>(seen[i]);
      look.fresh = fresh;
      if (i > 0) {
        const double years = years_between(data.looks.back().day, look.day);
        look.ln_years = std::log(years);
        look.unbroken = std::exp(-constant::grade_unrecorded_per_year * years);
      }
      data.looks.push_back(look);
    }
    segment.ln_ages = {ln_years(start, data.looks.front().day)};
    segment.count = static_cast<std::int32_t>(seen.size());
  }
};

double emission(int truth, int seen) {
  const auto off = [&](int said) {
    return said == truth + 1 ? errors.up : said == truth - 1 ? errors.down : 0.001;
  };
  if (seen != truth) return off(seen);
  double rest = 1;
  for (int said = 1; said <= 5; ++said)
    if (said != truth) rest -= off(said);
  return rest;
}

/// P(to | from) over a gap, with a replacement nobody recorded.
double moved(int from, int to, double years, double unbroken) {
  const auto as_it_was =
      statistics::chances_after(rates, static_cast<std::size_t>(from), speed * years);
  const auto fresh = statistics::chances_after(rates, 1, speed * years / 2);
  return unbroken * as_it_was[static_cast<std::size_t>(to - 1)] +
         (1 - unbroken) * fresh[static_cast<std::size_t>(to - 1)];
}

/// Sums over every path of true grades; `at[n][g]`: joint with grade g + 1 at look n.
struct AllPaths {
  double likelihood = 0;
  std::vector<GradeChances> at;

  explicit AllPaths(const Case& that) : at(that.data.looks.size(), GradeChances{}) {
    std::vector<int> path(that.data.looks.size(), 1);
    for (;;) {
      add(that, path);
      std::size_t n = 0;
      while (n < path.size() && path[n] == 5) path[n++] = 1;
      if (n == path.size()) return;
      ++path[n];
    }
  }
  void add(const Case& that, const std::vector<int>& path) {
    const auto& looks = that.data.looks;
    double chance = statistics::chances_after(
        rates, 1,
        speed * years_between(that.segment.starts[0],
                              looks[0].day))[static_cast<std::size_t>(path[0] - 1)];
    for (std::size_t n = 0; n < path.size(); ++n) {
      if (n > 0)
        chance *= moved(path[n - 1], path[n], std::exp(looks[n].ln_years), looks[n].unbroken);
      chance *= emission(path[n], looks[n].seen);
    }
    likelihood += chance;
    for (std::size_t n = 0; n < path.size(); ++n)
      at[n][static_cast<std::size_t>(path[n] - 1)] += chance;
  }
};

}  // namespace

TEST_CASE("the recursions sum over every path of grades", "[core][grade][property]") {
  const auto seen = GENERATE(std::vector<int>{2, 2, 3, 3}, std::vector<int>{4, 4, 1, 1},
                             std::vector<int>{1, 2, 1, 5}, std::vector<int>{5, 5, 5, 5});
  const Case that(seen, {3, 4.5, 9, 10});
  const AllPaths slow(that);
  const ChainTable table(rates);
  const GradeEmissions emissions(std::vector<GradeErrors>{errors});
  const GradeChain chain(that.data, table, emissions);
  const double x = std::log(speed);
  const GradePath path = chain.forward(that.segment, x);
  CHECK_THAT(path.ln_likelihood, WithinAbs(std::log(slow.likelihood), 1e-6));
  std::vector<GradeChances> smoothed;
  chain.smooth(that.segment, x, smoothed);
  REQUIRE(smoothed.size() == seen.size());
  for (std::size_t n = 0; n < seen.size(); ++n)
    for (std::size_t j = 0; j < grade_count; ++j)
      CHECK_THAT(smoothed[n][j], WithinAbs(slow.at[n][j] / slow.likelihood, 1e-6));
  for (std::size_t j = 0; j < grade_count; ++j)
    CHECK_THAT(path.last[j], WithinAbs(smoothed.back()[j], 1e-12));
}

TEST_CASE("a replacement nobody recorded makes 4, 4, 1, 1 possible", "[core][grade]") {
  Case that({4, 4, 1, 1}, {8, 10, 12, 14});
  const ChainTable table(rates);
  const GradeEmissions emissions(std::vector<GradeErrors>{errors});
  const GradeChain chain(that.data, table, emissions);
  const double with = chain.forward(that.segment, std::log(speed)).ln_likelihood;
  for (GradeLook& look : that.data.looks) look.unbroken = 1;
  const double without = chain.forward(that.segment, std::log(speed)).ln_likelihood;
  CHECK(with > without + 3);
}

TEST_CASE("a grade said again keeps open what lies above it", "[core][grade]") {
  const ChainTable table(rates);
  const GradeEmissions emissions(std::vector<GradeErrors>{errors});
  const double x = std::log(speed);
  const Case looked({2, 2, 2}, {2, 10, 20});
  Case copied({2, 2, 2}, {2, 10, 20});
  copied.data.looks[1].fresh = copied.data.looks[2].fresh = false;
  const Case once({2}, {2});
  const auto last = [&](const Case& that) {
    return GradeChain(that.data, table, emissions).forward(that.segment, x).last;
  };
  CHECK(last(looked)[1] > 0.8);
  CHECK(last(copied)[1] + last(copied)[2] < 0.9);
  GradeLook repeated = copied.data.looks[2];
  const GradeChances& weak = emissions.of(repeated);
  CHECK(weak == GradeChances{1, 1, 1, 0.3, 0.1});
  repeated.seen = 5;
  CHECK(emissions.of(repeated) == GradeChances{1, 1, 1, 1, 1});
}

TEST_CASE("an unknown start is the mean over its likely starts", "[core][grade]") {
  Case that({2}, {10});
  const ChainTable table(rates);
  const GradeEmissions emissions(std::vector<GradeErrors>{errors});
  const Date day = that.data.looks[0].day;
  GradeSegment unknown = that.segment;
  unknown.starts = {{day.days - 1000}, {day.days - 3000}};
  unknown.ln_ages = {ln_years(unknown.starts[0], day), ln_years(unknown.starts[1], day)};
  const GradeChain chain(that.data, table, emissions);
  const GradeChances mean = chain.unseen(unknown, std::log(speed));
  for (std::size_t j = 0; j < grade_count; ++j) {
    double slow = 0;
    for (const int days : {1000, 3000})
      slow += statistics::chances_after(rates, 1, speed * days / days_per_year)[j] / 2;
    CHECK_THAT(mean[j], WithinAbs(slow, 1e-7));
  }
}
