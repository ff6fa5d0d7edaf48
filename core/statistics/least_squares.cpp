#include "core/statistics/least_squares.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace kneerail::statistics {

namespace {

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
using Vector = Eigen::VectorXd;

Result<> check_sizes(const Design& design, std::span<const double> y) {
  if (design.columns == 0 || design.values.size() != design.rows * design.columns ||
      y.size() != design.rows) {
    return fail(Fault::invalid_input, "The rows of the design and of the values do not fit.");
  }
  const auto finite = [](double value) { return std::isfinite(value); };
  if (!std::ranges::all_of(design.values, finite) || !std::ranges::all_of(y, finite)) {
    return fail(Fault::invalid_input, "A value to be fitted is not a finite number.");
  }
  if (design.rows <= design.columns) {
    return fail(Fault::not_estimable, "Too few values: " + std::to_string(design.rows) + " for " +
                                          std::to_string(design.columns) +
                                          " coefficients leave no spread to judge by.");
  }
  return Done{};
}

double r_squared(const Vector& y, double residual_sum_of_squares) {
  const double total = (y.array() - y.mean()).square().sum();
  return total > 0 ? 1 - residual_sum_of_squares / total : 1;
}

std::vector<double> to_vector(const Vector& values) {
  return {values.data(), values.data() + values.size()};
}

}  // namespace

Design with_constant(std::span<const std::vector<double>> columns) {
  Design design{
      .rows = columns.empty() ? 0 : columns[0].size(), .columns = columns.size() + 1, .values = {}};
  design.values.reserve(design.rows * design.columns);
  for (std::size_t row = 0; row < design.rows; ++row) {
    design.values.push_back(1);
    for (const auto& column : columns) design.values.push_back(column.at(row));
  }
  return design;
}

Result<LeastSquares> least_squares(const Design& design, std::span<const double> y) {
  if (auto fits = check_sizes(design, y); !fits) return fail(fits.error());
  const auto n = static_cast<Eigen::Index>(design.rows);
  const auto p = static_cast<Eigen::Index>(design.columns);
  const Matrix X = Eigen::Map<const Matrix>(design.values.data(), n, p);
  const Vector Y = Eigen::Map<const Vector>(y.data(), n);
  const Vector length = X.colwise().norm().transpose();
  if (length.minCoeff() == 0) {
    return fail(Fault::not_estimable, "A column of the design is zero throughout.");
  }
  const Matrix scaled = X * length.cwiseInverse().asDiagonal();
  const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(scaled);
  if (qr.rank() < p) {
    return fail(Fault::not_estimable, "Columns of the design depend on each other.");
  }
  Vector beta = qr.solve(Y);
  beta += qr.solve(Y - scaled * beta);  // one refinement takes back what rounding took
  const Vector residual = Y - scaled * beta;

  LeastSquares fit;
  fit.degrees = static_cast<double>(n - p);
  fit.residual_sum_of_squares = residual.squaredNorm();
  const double variance = fit.residual_sum_of_squares / fit.degrees;
  fit.residual_sd = std::sqrt(variance);
  fit.r_squared = r_squared(Y, fit.residual_sum_of_squares);

  const Eigen::MatrixXd R = qr.matrixR().topLeftCorner(p, p).triangularView<Eigen::Upper>();
  const Eigen::MatrixXd root =  // of (X'X)^-1 in the order of the columns, unscaled
      length.cwiseInverse().asDiagonal() *
      (qr.colsPermutation() *
       R.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(p, p)));
  const Matrix covariance = variance * root * root.transpose();
  fit.coefficients = to_vector(beta.cwiseQuotient(length));
  fit.covariance.assign(covariance.data(), covariance.data() + p * p);
  fit.standard_errors = to_vector(covariance.diagonal().cwiseSqrt());
  return fit;
}

}  // namespace kneerail::statistics
