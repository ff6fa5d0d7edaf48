#include "core/statistics/mixed_model.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "core/base/world.h"
#include "core/statistics/line.h"
#include "core/statistics/minimise.h"
#include "core/statistics/normal.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::statistics;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

double normal(SplitMix64& random) {
  return normal_quantile(random.uniform() + 0x1p-54);
}

struct Truth {
  int groups = 18;
  int times = 10;
  double intercept_sd = 6;
  double slope_sd = 0.6;
};

/// Groups with lines of their own, all read at the same times.
MixedData balanced(const Truth& truth, std::uint64_t seed) {
  SplitMix64 random(seed);
  MixedData data;
  data.groups = truth.groups;
  for (int g = 0; g < truth.groups; ++g) {
    const double intercept = 85 + truth.intercept_sd * normal(random);
    const double slope = -1.5 + truth.slope_sd * normal(random);
    for (int t = 0; t < truth.times; ++t) {
      data.y.push_back(intercept + slope * t + 2 * normal(random));
      data.fixed.insert(data.fixed.end(), {1, static_cast<double>(t)});
      data.group.push_back(g);
    }
  }
  data.random = data.fixed;
  return data;
}

/// The closed form for balanced data: with the lines of single groups b, their sample covariance S
/// and the pooled residual variance s2, REML is mean(b), S - s2 (X'X)^-1 and s2.
struct Closed {
  double fixed[2] = {0, 0};
  double sigma[3] = {0, 0, 0};  ///< variances and covariance: 00, 01, 11
  double residual_variance = 0;
};

Closed closed_form(const MixedData& data, int times) {
  std::vector<Line> lines;
  const auto m = static_cast<double>(data.groups);
  Closed result;
  for (int g = 0; g < data.groups; ++g) {
    std::vector<double> t, y;
    for (int k = 0; k < times; ++k) {
      t.push_back(k);
      y.push_back(data.y[static_cast<std::size_t>(g * times + k)]);
    }
    const auto line = fit_line(t, y);
    REQUIRE(line);
    lines.push_back(*line);
    result.fixed[0] += line->intercept / m;
    result.fixed[1] += line->slope / m;
    result.residual_variance += line->residual_sd * line->residual_sd / m;
  }
  for (const auto& line : lines) {
    const double a = line.intercept - result.fixed[0];
    const double b = line.slope - result.fixed[1];
    result.sigma[0] += a * a / (m - 1);
    result.sigma[1] += a * b / (m - 1);
    result.sigma[2] += b * b / (m - 1);
  }
  const double scale = result.residual_variance / (lines[0].residual_sd * lines[0].residual_sd);
  result.sigma[0] -= scale * lines[0].intercept_variance;
  result.sigma[1] -= scale * lines[0].covariance;
  result.sigma[2] -= scale * lines[0].slope_variance;
  return result;
}

}  // namespace

TEST_CASE("balanced groups have the optimum of the closed form", "[core][property]") {
  const auto seed = GENERATE(test::each_seed(1, 20));
  INFO(test::reproduce(seed));
  const Truth truth;
  const auto data = balanced(truth, seed);
  const auto fit = fit_mixed_model(data, Criterion::reml);
  REQUIRE(fit);
  CHECK(fit->settled);
  CHECK_FALSE(fit->singular);
  const auto closed = closed_form(data, truth.times);
  CHECK_THAT(fit->fixed[0], WithinRel(closed.fixed[0], 1e-10));
  CHECK_THAT(fit->fixed[1], WithinRel(closed.fixed[1], 1e-10));
  CHECK_THAT(fit->residual_variance, WithinRel(closed.residual_variance, 1e-6));
  CHECK_THAT(fit->random_covariance[0], WithinRel(closed.sigma[0], 1e-5));
  CHECK_THAT(fit->random_covariance[3], WithinRel(closed.sigma[2], 1e-5));
  const double width = std::sqrt(closed.sigma[0] * closed.sigma[2]);
  CHECK_THAT(fit->random_covariance[1], WithinAbs(closed.sigma[1], 1e-5 * width));
  CHECK(fit->random_covariance[1] == fit->random_covariance[2]);
}

TEST_CASE("one-way groups have the variances of the analysis of variance", "[core][property]") {
  const std::uint64_t seed = test::seed_or(7);
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  constexpr int groups = 12;
  constexpr int each = 5;
  MixedData data;
  data.groups = groups;
  double within = 0, between = 0, all = 0;
  std::vector<double> means;
  for (int g = 0; g < groups; ++g) {
    const double centre = 50 + 4 * normal(random);
    std::vector<double> values;
    for (int k = 0; k < each; ++k) values.push_back(centre + 3 * normal(random));
    double mean = 0;
    for (const double value : values) mean += value / each;
    for (const double value : values) within += (value - mean) * (value - mean);
    means.push_back(mean);
    all += mean / groups;
    data.y.insert(data.y.end(), values.begin(), values.end());
    data.group.insert(data.group.end(), each, g);
  }
  for (const double mean : means) between += each * (mean - all) * (mean - all);
  data.fixed.assign(data.y.size(), 1);
  data.random = data.fixed;
  const double msw = within / (groups * (each - 1));
  const double msb = between / (groups - 1);
  REQUIRE(msb > msw);
  const auto fit = fit_mixed_model(data, Criterion::reml);
  REQUIRE(fit);
  CHECK_THAT(fit->residual_variance, WithinRel(msw, 1e-6));
  CHECK_THAT(fit->random_covariance[0], WithinRel((msb - msw) / each, 1e-5));
  CHECK_THAT(fit->fixed[0], WithinRel(all, 1e-12));
  CHECK_THAT(fit->fixed_errors[0], WithinRel(std::sqrt(msb / (groups * each)), 1e-6));
  double sum = 0;
  for (const double deviation : fit->deviations) sum += deviation;
  CHECK_THAT(sum, WithinAbs(0, 1e-9));
}

TEST_CASE("groups that do not differ give a variance of zero, marked", "[core]") {
  // Means of the groups closer together than chance: the best variance lies on its edge.
  MixedData data;
  data.groups = 4;
  for (int g = 0; g < 4; ++g) {
    for (const double value : {-3.0, -1.0, 1.0, 3.0}) {
      data.y.push_back(60 + value);
      data.group.push_back(g);
    }
  }
  data.fixed.assign(data.y.size(), 1);
  data.random = data.fixed;
  const auto fit = fit_mixed_model(data, Criterion::reml);
  REQUIRE(fit);
  CHECK(fit->singular);
  CHECK(fit->random_covariance[0] == 0);
  CHECK_THAT(fit->residual_variance, WithinRel(80.0 / 15, 1e-12));
  CHECK(fit->deviations == std::vector<double>(4, 0.0));
}

TEST_CASE("the order of the rows changes nothing but the last digits", "[core][property]") {
  const auto data = balanced({}, 99);
  MixedData turned = data;
  const std::size_t n = data.y.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t from = n - 1 - i;
    turned.y[i] = data.y[from];
    turned.group[i] = data.group[from];
    for (std::size_t k = 0; k < 2; ++k) {
      turned.fixed[2 * i + k] = data.fixed[2 * from + k];
      turned.random[2 * i + k] = data.random[2 * from + k];
    }
  }
  const auto one = fit_mixed_model(data, Criterion::ml);
  const auto other = fit_mixed_model(turned, Criterion::ml);
  REQUIRE(one);
  REQUIRE(other);
  CHECK_THAT(other->criterion, WithinAbs(one->criterion, 1e-8));
  CHECK_THAT(other->random_covariance[0], WithinRel(one->random_covariance[0], 1e-5));
}

TEST_CASE("a model that the data cannot carry is refused in words", "[core]") {
  auto data = balanced({.groups = 1}, 3);
  CHECK(fit_mixed_model(data, Criterion::reml).error().fault == Fault::not_estimable);
  data = balanced({}, 3);
  data.group[5] = 18;
  CHECK(fit_mixed_model(data, Criterion::reml).error().fault == Fault::invalid_input);
  data = balanced({}, 3);
  for (std::size_t i = 0; i < data.y.size(); ++i) data.fixed[2 * i + 1] = 4;
  CHECK(fit_mixed_model(data, Criterion::reml).error().fault == Fault::not_estimable);
}

TEST_CASE("the lowest point of a narrow valley is found", "[core][reference]") {
  // Rosenbrock (1960), Computer Journal 3, 175-184: lowest at (1, 1).
  const auto valley = [](std::span<const double> x) {
    return 100 * std::pow(x[1] - x[0] * x[0], 2) + std::pow(1 - x[0], 2);
  };
  const auto lowest = minimise(valley, {-1.2, 1});
  CHECK(lowest.settled);
  CHECK_THAT(lowest.at[0], WithinAbs(1, 1e-5));
  CHECK_THAT(lowest.at[1], WithinAbs(1, 1e-5));
}
