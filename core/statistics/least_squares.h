#pragma once

// Linear least squares by Householder QR of the design, its columns first brought to one length.
// Never by normal equations: they lose twice the digits (Longley 1967 is the classic example).

#include <span>
#include <vector>

#include "core/base/result.h"

namespace kneerail::statistics {

/// n rows by p columns, row after row. A constant is a column of ones.
struct Design {
  std::size_t rows = 0;
  std::size_t columns = 0;
  std::vector<double> values;
};

/// A column of ones, then the given columns, all of one length.
Design with_constant(std::span<const std::vector<double>> columns);

struct LeastSquares {
  std::vector<double> coefficients;     ///< p
  std::vector<double> covariance;       ///< p by p, of the coefficients
  std::vector<double> standard_errors;  ///< p
  double residual_sum_of_squares = 0;
  double residual_sd = 0;
  double degrees = 0;    ///< n - p
  double r_squared = 0;  ///< about the mean: the design must hold a constant
};

/// Errors: not_estimable when there are not more rows than columns, or columns depend on each
/// other; invalid_input when a number is not finite or the lengths do not fit.
Result<LeastSquares> least_squares(const Design& design, std::span<const double> y);

}  // namespace kneerail::statistics
