#pragma once

// Steps uphill by the outer product of the subjects' scores (Berndt, Hall, Hall and Hausman 1974,
// Ann. Econ. Soc. Meas. 3, 653-665), halved until the likelihood rises. For the sources of this
// folder alone.

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <optional>

namespace kneerail::statistics::inside {

struct Likelihood {
  double ln = 0;
  Eigen::VectorXd score;
  Eigen::MatrixXd outer;  ///< sum over subjects

  explicit Likelihood(Eigen::Index parameters)
      : score(Eigen::VectorXd::Zero(parameters)),
        outer(Eigen::MatrixXd::Zero(parameters, parameters)) {}

  void add(const Eigen::VectorXd& own) {
    score += own;
    outer += own * own.transpose();
  }
};

struct Climb {
  int passes = 0;
  bool settled = false;  ///< nothing to speak of was left to gain
};

inline constexpr double settled_move = 1e-12;

/// One step; false: none was found. `at(parameters)` answers the likelihood there, or nothing.
template <class At>
bool step_uphill(const At& at, Eigen::VectorXd& parameters, Likelihood& now) {
  constexpr int most_halvings = 40;
  constexpr double longest = 1;
  const Eigen::LDLT<Eigen::MatrixXd> factor(now.outer);
  Eigen::VectorXd step = factor.solve(now.score);
  if (!step.allFinite()) return false;
  if (const double most = step.cwiseAbs().maxCoeff(); most > longest) step *= longest / most;
  for (int k = 0; k < most_halvings; ++k, step /= 2) {
    const Eigen::VectorXd next = parameters + step;
    std::optional<Likelihood> there = at(next);
    if (!there || there->ln < now.ln) continue;
    parameters = next;
    now = std::move(*there);
    return true;
  }
  return false;
}

template <class At>
Climb climb(const At& at, Eigen::VectorXd& parameters, Likelihood& now) {
  constexpr int most_passes = 400;
  Climb done;
  while (done.passes < most_passes && !done.settled) {
    const double before = now.ln;
    const bool rose = step_uphill(at, parameters, now);
    ++done.passes;
    done.settled = !rose || 2 * (now.ln - before) < settled_move;
  }
  return done;
}

/// The step in a box of `longest` either way: what would leave it is put on its edge, and the
/// others are solved for again. A damping, as Levenberg's (1944, Q. Appl. Math. 2, 164-168), far
/// under what the data tell of a parameter, keeps the equations solvable where they tell nothing.
inline Eigen::VectorXd step_in_box(const Likelihood& now, double longest) {
  constexpr double damping = 1e-6;  // of ln likelihood, per square of a parameter
  const Eigen::Index n = now.score.size();
  Eigen::MatrixXd equations = now.outer;
  equations.diagonal().array() += damping;
  Eigen::VectorXd right = now.score;
  for (Eigen::Index round = 0; round <= n; ++round) {
    const Eigen::VectorXd step = equations.ldlt().solve(right);
    bool inside = true;
    for (Eigen::Index k = 0; k < n; ++k) {
      if (!(std::abs(step(k)) > longest * (1 + 1e-9))) continue;
      inside = false;
      const double edge = std::copysign(longest, step(k));
      right -= equations.col(k) * edge;
      equations.row(k).setZero();
      equations.col(k).setZero();
      equations(k, k) = 1;
      right(k) = edge;
    }
    if (inside) return step;
  }
  return Eigen::VectorXd::Zero(n);
}

/// climb() in a box: for likelihoods with parameters that the data hardly tell of, whose own steps
/// would be so long that, all cut alike, the others had none. Settled: by its slope a further step
/// would gain less than 1e-9.
template <class At>
Climb climb_in_box(const At& at, Eigen::VectorXd& parameters, Likelihood& now) {
  constexpr int most_passes = 400;
  constexpr int most_halvings = 40;
  constexpr double longest = 1;
  constexpr double nothing_to_gain = 1e-9;  // in ln likelihood
  Climb done;
  while (done.passes < most_passes && !done.settled) {
    Eigen::VectorXd step = step_in_box(now, longest);
    done.settled = std::abs(now.score.dot(step)) < nothing_to_gain;
    bool rose = false;
    for (int k = 0; k < most_halvings && !rose && !done.settled; ++k, step /= 2) {
      const Eigen::VectorXd next = parameters + step;
      std::optional<Likelihood> there = at(next);
      rose = there && there->ln > now.ln;
      if (!rose) continue;
      parameters = next;
      now = std::move(*there);
    }
    done.settled = done.settled || !rose;
    ++done.passes;
  }
  return done;
}

}  // namespace kneerail::statistics::inside
