#include "core/statistics/line.h"

#include <array>
#include <cmath>
#include <vector>

#include "core/statistics/least_squares.h"
#include "core/statistics/quantiles.h"

namespace kneerail::statistics {

Result<Line> fit_line(std::span<const double> t, std::span<const double> y) {
  const std::array columns{std::vector<double>(t.begin(), t.end())};
  const auto fit = least_squares(with_constant(columns), y);
  if (!fit) return fail(fit.error());
  return Line{.intercept = fit->coefficients[0],
              .slope = fit->coefficients[1],
              .intercept_variance = fit->covariance[0],
              .slope_variance = fit->covariance[3],
              .covariance = fit->covariance[1],
              .residual_sd = fit->residual_sd,
              .degrees = fit->degrees};
}

namespace {

/// Variance of the height of the line at a time.
double variance_at(const Line& line, double t) {
  return line.intercept_variance + 2 * t * line.covariance + t * t * line.slope_variance;
}

}  // namespace

Result<Crossing> crossing(const Line& line, double threshold, double confidence) {
  if (line.slope == 0) {
    return fail(Fault::not_estimable, "The line is level: it never meets the threshold.");
  }
  const double rise = threshold - line.intercept;
  Crossing result;
  result.time = rise / line.slope;
  result.standard_error = std::sqrt(variance_at(line, result.time)) / std::abs(line.slope);

  // (intercept + slope x - threshold)^2 = q^2 variance_at(x), as a x^2 - 2 b x + c = 0.
  const double q = student_t_quantile(0.5 + confidence / 2, line.degrees);
  const double a = line.slope * line.slope - q * q * line.slope_variance;
  const double b = line.slope * rise + q * q * line.covariance;
  const double c = rise * rise - q * q * line.intercept_variance;
  const double discriminant = b * b - a * c;
  if (discriminant < 0) return result;  // every time is possible
  const double root = std::sqrt(discriminant);
  if (a > 0) {
    result.low = (b - root) / a;
    result.high = (b + root) / a;
  } else if (a < 0) {
    // Everything but the gap between the roots: with the estimate above it, open above.
    const double gap_low = (b + root) / a;
    const double gap_high = (b - root) / a;
    (result.time >= gap_high ? result.low : result.high) =
        result.time >= gap_high ? gap_high : gap_low;
  }
  return result;
}

}  // namespace kneerail::statistics
