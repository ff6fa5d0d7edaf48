#pragma once

// Cholesky for the few visits of one part, in memory that is used again: faster here than a general
// library and the same on every machine.

#include <cmath>
#include <cstddef>
#include <vector>

namespace kneerail::forecast {

class SmallCholesky {
 public:
  /// Factors the symmetric matrix whose lower triangle at(i, j), i >= j, was filled. A pivot that
  /// is not positive is taken as a tiny one.
  void resize(std::size_t n) {
    n_ = n;
    values_.assign(n * n, 0.0);
  }
  [[nodiscard]] double& at(std::size_t i, std::size_t j) { return values_[i * n_ + j]; }
  [[nodiscard]] double at(std::size_t i, std::size_t j) const { return values_[i * n_ + j]; }

  void factor() {
    ln_determinant_ = 0;
    for (std::size_t i = 0; i < n_; ++i) {
      for (std::size_t j = 0; j <= i; ++j) {
        double sum = at(i, j);
        for (std::size_t k = 0; k < j; ++k) sum -= at(i, k) * at(j, k);
        if (i == j)
          at(i, i) = std::sqrt(sum > 1e-12 ? sum : 1e-12);
        else
          at(i, j) = sum / at(j, j);
      }
      ln_determinant_ += 2 * std::log(at(i, i));
    }
  }

  /// Solves L x = v in place.
  void whiten(std::vector<double>& v) const {
    for (std::size_t i = 0; i < n_; ++i) {
      double sum = v[i];
      for (std::size_t k = 0; k < i; ++k) sum -= at(i, k) * v[k];
      v[i] = sum / at(i, i);
    }
  }

  [[nodiscard]] double ln_determinant() const { return ln_determinant_; }

 private:
  std::size_t n_ = 0;
  std::vector<double> values_;
  double ln_determinant_ = 0;
};

inline double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

}  // namespace kneerail::forecast
