#include "core/statistics/least_squares.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>

#include "core/statistics/line.h"

using namespace kneerail;
using namespace kneerail::statistics;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// The columns of a reference data set (NIST StRD), the first of them the response.
std::vector<std::vector<double>> columns_of(const std::string& name) {
  std::ifstream file(std::string(KNEERAIL_SOURCE_DIR) + "/tests/reference/data/" + name);
  REQUIRE(file);
  std::vector<std::vector<double>> columns;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    std::string cell;
    for (std::size_t i = 0; std::getline(cells, cell, ','); ++i) {
      if (columns.size() <= i) columns.emplace_back();
      columns[i].push_back(std::stod(cell));
    }
  }
  return columns;
}

}  // namespace

TEST_CASE("Norris has its certified digits", "[core][reference]") {
  // NIST StRD, linear regression, Norris: certified values.
  const auto columns = columns_of("norris.csv");
  const auto fit = least_squares(with_constant(std::span(columns).subspan(1)), columns[0]);
  REQUIRE(fit);
  CHECK_THAT(fit->coefficients[0], WithinRel(-0.262323073774029, 1e-12));
  CHECK_THAT(fit->coefficients[1], WithinRel(1.00211681802045, 1e-14));
  CHECK_THAT(fit->standard_errors[0], WithinRel(0.232818234301152, 1e-12));
  CHECK_THAT(fit->standard_errors[1], WithinRel(0.429796848199937e-3, 1e-12));
  CHECK_THAT(fit->residual_sd, WithinRel(0.884796396144373, 1e-12));
  CHECK_THAT(fit->residual_sum_of_squares, WithinRel(26.6173985294224, 1e-12));
  CHECK_THAT(fit->r_squared, WithinAbs(0.999993745883712, 1e-14));
}

TEST_CASE("Longley, ill-conditioned, has its certified digits", "[core][reference]") {
  // NIST StRD, linear regression, Longley: certified values.
  const auto columns = columns_of("longley.csv");
  const auto fit = least_squares(with_constant(std::span(columns).subspan(1)), columns[0]);
  REQUIRE(fit);
  const std::vector<double> coefficients{-3482258.63459582, 15.0618722713733,  -0.0358191792925910,
                                         -2.02022980381683, -1.03322686717359, -0.0511041056535807,
                                         1829.15146461355};
  const std::vector<double> errors{890420.383607373,  84.9149257747669,  0.0334910077722432,
                                   0.488399681651699, 0.214274163161675, 0.226073200069370,
                                   455.478499142212};
  for (std::size_t i = 0; i < coefficients.size(); ++i) {
    INFO("column " << i);
    CHECK_THAT(fit->coefficients[i], WithinRel(coefficients[i], 1e-9));
    CHECK_THAT(fit->standard_errors[i], WithinRel(errors[i], 1e-9));
  }
  CHECK_THAT(fit->residual_sd, WithinRel(304.854073561965, 1e-11));
  CHECK_THAT(fit->r_squared, WithinAbs(0.995479004577296, 1e-13));
}

TEST_CASE("what cannot be fitted is said, not guessed", "[core]") {
  const std::vector<std::vector<double>> twice{{1, 2, 3, 4}, {2, 4, 6, 8}};
  const std::vector<double> y{1, 2, 2, 3};
  CHECK(least_squares(with_constant(twice), y).error().fault == Fault::not_estimable);
  const std::vector<std::vector<double>> short_one{{1, 2}};
  CHECK(least_squares(with_constant(short_one), std::vector<double>{1, 2}).error().fault ==
        Fault::not_estimable);
  const std::vector<std::vector<double>> infinite{
      {1, 2, std::numeric_limits<double>::infinity(), 4}};
  CHECK(least_squares(with_constant(infinite), y).error().fault == Fault::invalid_input);
  CHECK(least_squares(Design{.rows = 4, .columns = 2, .values = {1}}, y).error().fault ==
        Fault::invalid_input);
}

namespace {

const std::vector<double> visit_years{0, 2, 4, 6, 8, 10};
const std::vector<double> coating_um{88.2, 85.9, 82.1, 79.6, 76.8, 73.1};

}  // namespace

TEST_CASE("a line meets a threshold with Fieller's interval", "[core][reference]") {
  const auto line = fit_line(visit_years, coating_um);
  REQUIRE(line);
  const auto zero = crossing(*line, 0, 0.90);
  REQUIRE(zero);
  // R 4.2.2; the interval reaches further to the right.
  CHECK_THAT(zero->time, WithinAbs(58.812915479582, 1e-9));
  CHECK_THAT(zero->standard_error, WithinAbs(1.73198546982878, 1e-9));
  REQUIRE(zero->low);
  REQUIRE(zero->high);
  CHECK_THAT(*zero->low, WithinAbs(55.3567458981323, 1e-9));
  CHECK_THAT(*zero->high, WithinAbs(62.7761212750254, 1e-9));
}

TEST_CASE("a slope that is not clear has no upper bound", "[core]") {
  const auto line = fit_line(visit_years, std::vector<double>{88, 80, 90, 83, 85, 84});
  REQUIRE(line);
  const auto zero = crossing(*line, 0, 0.95);
  REQUIRE(zero);
  CHECK_FALSE(zero->high);
}

TEST_CASE("an end of Fieller's interval lies where the line's band meets the threshold",
          "[core][property]") {
  const double confidence = GENERATE(0.5, 0.8, 0.9, 0.99);
  const double threshold = GENERATE(-20.0, 0.0, 40.0, 80.0, 95.0);
  const auto line = fit_line(visit_years, coating_um);
  REQUIRE(line);
  const auto found = crossing(*line, threshold, confidence);
  REQUIRE(found);
  REQUIRE(found->low);
  REQUIRE(found->high);
  CHECK(*found->low < found->time);
  CHECK(found->time < *found->high);
  const auto distance = [&](double t) {
    const double variance =
        line->intercept_variance + 2 * t * line->covariance + t * t * line->slope_variance;
    return std::abs(line->intercept + line->slope * t - threshold) / std::sqrt(variance);
  };
  CHECK_THAT(distance(*found->low), WithinRel(distance(*found->high), 1e-8));
}

TEST_CASE("two readings make no line to judge by", "[core]") {
  const auto line = fit_line(std::vector<double>{0, 5}, std::vector<double>{80, 70});
  REQUIRE_FALSE(line);
  CHECK(line.error().fault == Fault::not_estimable);
  CHECK_FALSE(fit_line(std::vector<double>{3, 3, 3}, std::vector<double>{80, 70, 75}));
}
