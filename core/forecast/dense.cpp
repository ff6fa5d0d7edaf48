#include "core/forecast/dense_inside.h"

namespace kneerail::forecast {

bool invert(const Matrix& matrix, Matrix& inverse) {
  const Matrix unit = Matrix::Identity(matrix.rows(), matrix.cols());
  Eigen::LLT<Matrix> factor(matrix);
  if (factor.info() != Eigen::Success) {
    const double nudge = 1e-9 * matrix.trace() / static_cast<double>(matrix.rows());
    factor.compute(matrix + nudge * unit);
    if (factor.info() != Eigen::Success) return false;
  }
  inverse = factor.solve(unit);
  return true;
}

}  // namespace kneerail::forecast
