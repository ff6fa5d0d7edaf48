#pragma once

// Dense matrices of the fits. Includes Eigen: only for .cpp files.

#include <Eigen/Dense>

namespace kneerail::forecast {

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
using Vector = Eigen::VectorXd;

/// The inverse of a symmetric positive matrix by Cholesky; a trace-sized nudge once when it fails.
/// False: not positive all the same.
bool invert(const Matrix& matrix, Matrix& inverse);

}  // namespace kneerail::forecast
