#pragma once

// exp(Q t) of a chain of states, with its slopes with the logarithms of the rates, at any time: by
// the eigenvectors of Q, real or complex, and where there are too few of them by scaling and
// squaring (panel_chain.h has the sources). For the sources of this folder alone.

#include <Eigen/Dense>
#include <memory>
#include <span>
#include <vector>

#include "core/statistics/panel_chain.h"

namespace kneerail::statistics::inside {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

class Passage {
 public:
  Passage(int states, std::span<const ChainStep> steps, std::span<const double> rates);
  ~Passage();
  Passage(const Passage&) = delete;
  Passage& operator=(const Passage&) = delete;

  [[nodiscard]] MatrixXd chances(double t) const;

  /// Row `from` of P and of its slopes, one slope a row of `slopes`.
  void row(Index from, double t, VectorXd& chances, MatrixXd& slopes);

  /// All of P and of its slopes.
  void whole(double t, MatrixXd& chances, std::vector<MatrixXd>& slopes);

 private:
  class Ways;
  std::unique_ptr<Ways> ways_;
};

}  // namespace kneerail::statistics::inside
