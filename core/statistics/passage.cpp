#include <cmath>
#include <complex>

#include "core/statistics/passage_inside.h"

namespace kneerail::statistics::inside {

namespace {

using Eigen::VectorXcd;
using Complex = std::complex<double>;

constexpr double worst_condition = 1e7;

MatrixXd generator(int states, std::span<const ChainStep> steps, std::span<const double> rates) {
  MatrixXd Q = MatrixXd::Zero(states, states);
  for (std::size_t m = 0; m < steps.size(); ++m) {
    Q(steps[m].from - 1, steps[m].to - 1) += rates[m];
    Q(steps[m].from - 1, steps[m].from - 1) -= rates[m];
  }
  return Q;
}

/// Slope of Q with the logarithm of one rate.
MatrixXd slope_of(int states, const ChainStep& step, double rate) {
  MatrixXd dQ = MatrixXd::Zero(states, states);
  dQ(step.from - 1, step.to - 1) = rate;
  dQ(step.from - 1, step.from - 1) = -rate;
  return dQ;
}

/// exp(Q t) and its slopes by the eigenvectors of Q, in numbers real or complex as they are.
template <class Number>
class Spectrum {
 public:
  using Matrix = Eigen::Matrix<Number, Eigen::Dynamic, Eigen::Dynamic>;
  using Vector = Eigen::Matrix<Number, Eigen::Dynamic, 1>;
  using Row = Eigen::Matrix<Number, 1, Eigen::Dynamic>;

  /// False: there are too few of them, or they lie too close to one another.
  bool build(const Matrix& vectors, const Vector& values, std::span<const MatrixXd> slopes_of_Q) {
    vectors_ = vectors;
    values_ = values;
    inverse_ = Eigen::PartialPivLU<Matrix>(vectors_).inverse();
    if (!vectors_.allFinite() || !inverse_.allFinite()) return false;
    if (vectors_.norm() * inverse_.norm() > worst_condition) return false;
    for (const MatrixXd& dQ : slopes_of_Q)
      turned_.push_back(inverse_ * dQ.template cast<Number>() * vectors_);
    mean_.resize(values_.size(), values_.size());
    return true;
  }

  [[nodiscard]] MatrixXd chances(double t) const {
    const Vector grown = (values_ * t).array().exp();
    return (vectors_ * grown.asDiagonal() * inverse_).real();
  }

  void row(Index from, double t, VectorXd& chances, MatrixXd& slopes) {
    grown_ = (values_ * t).array().exp();
    left_ = vectors_.row(from);
    out_.noalias() = left_.cwiseProduct(grown_.transpose()) * inverse_;
    chances = out_.real().transpose();
    for (Index j = 0; j < values_.size(); ++j)
      for (Index i = 0; i < values_.size(); ++i) mean_(i, j) = left_(i) * shared_growth(i, j, t);
    for (std::size_t m = 0; m < turned_.size(); ++m) {
      left_ = mean_.cwiseProduct(turned_[m]).colwise().sum();
      out_.noalias() = left_ * inverse_;
      slopes.row(static_cast<Index>(m)) = out_.real();
    }
  }

 private:
  /// Integral of exp(d_i u + d_j (t - u)) over u in 0 ... t.
  [[nodiscard]] Number shared_growth(Index i, Index j, double t) const {
    const Number apart = values_(i) - values_(j);
    if (i == j || std::abs(apart) * t < 1e-7) return (grown_(i) + grown_(j)) * (t / 2);
    return (grown_(i) - grown_(j)) / apart;
  }

  Matrix vectors_;
  Matrix inverse_;
  Vector values_;
  std::vector<Matrix> turned_;  ///< slopes of Q in the eigenvectors
  Matrix mean_;                 ///< memory used again, as what follows
  Vector grown_;
  Row left_;
  Row out_;
};

}  // namespace

class Passage::Ways {
 public:
  Ways(int states, std::span<const ChainStep> steps, std::span<const double> rates)
      : Q_(generator(states, steps, rates)) {
    for (std::size_t m = 0; m < steps.size(); ++m)
      slopes_of_Q_.push_back(slope_of(states, steps[m], rates[m]));
    const Eigen::EigenSolver<MatrixXd> solver(Q_);
    const VectorXcd values = solver.eigenvalues();
    if (values.imag().cwiseAbs().maxCoeff() > 0) {
      if (complex_.build(solver.eigenvectors(), values, slopes_of_Q_)) way_ = Way::by_complex;
    } else if (real_.build(solver.eigenvectors().real(), values.real(), slopes_of_Q_)) {
      way_ = Way::by_real;
    }
  }

  [[nodiscard]] MatrixXd chances(double t) const {
    if (way_ == Way::by_real) return real_.chances(t);
    if (way_ == Way::by_complex) return complex_.chances(t);
    return by_squaring(t, nullptr);
  }

  void row(Index from, double t, VectorXd& chances, MatrixXd& slopes) {
    slopes.resize(static_cast<Index>(slopes_of_Q_.size()), Q_.rows());
    if (way_ == Way::by_real) return real_.row(from, t, chances, slopes);
    if (way_ == Way::by_complex) return complex_.row(from, t, chances, slopes);
    std::vector<MatrixXd> all;
    chances = by_squaring(t, &all).row(from);
    for (std::size_t m = 0; m < all.size(); ++m)
      slopes.row(static_cast<Index>(m)) = all[m].row(from);
  }

  void whole(double t, MatrixXd& chances, std::vector<MatrixXd>& slopes) {
    const Index n = Q_.rows();
    if (way_ == Way::by_squaring) {
      chances = by_squaring(t, &slopes);
      return;
    }
    chances.resize(n, n);
    slopes.assign(slopes_of_Q_.size(), MatrixXd(n, n));
    VectorXd own;
    MatrixXd of_own;
    for (Index from = 0; from < n; ++from) {
      row(from, t, own, of_own);
      chances.row(from) = own.transpose();
      for (std::size_t m = 0; m < slopes.size(); ++m)
        slopes[m].row(from) = of_own.row(static_cast<Index>(m));
    }
  }

 private:
  enum class Way { by_real, by_complex, by_squaring };

  /// Taylor over t / 2^k and k squarings, the slopes by the product rule.
  [[nodiscard]] MatrixXd by_squaring(double t, std::vector<MatrixXd>* slopes) const {
    const auto n = Q_.rows();
    int halvings = 0;
    for (double norm = Q_.cwiseAbs().rowwise().sum().maxCoeff() * t; norm > 0.25; norm /= 2)
      ++halvings;
    const double h = std::ldexp(t, -halvings);
    MatrixXd P = MatrixXd::Identity(n, n);
    MatrixXd power = P;
    std::vector<MatrixXd> dP(slopes == nullptr ? 0 : slopes_of_Q_.size(), MatrixXd::Zero(n, n));
    std::vector<MatrixXd> d_power = dP;
    for (int k = 1; k <= 15; ++k) {
      for (std::size_t m = 0; m < dP.size(); ++m) {
        d_power[m] = (d_power[m] * Q_ + power * slopes_of_Q_[m]) * (h / k);
        dP[m] += d_power[m];
      }
      power = (power * Q_ * (h / k)).eval();
      P += power;
    }
    for (int k = 0; k < halvings; ++k) {
      for (MatrixXd& slope : dP) slope = (slope * P + P * slope).eval();
      P = (P * P).eval();
    }
    if (slopes != nullptr) *slopes = std::move(dP);
    return P;
  }

  MatrixXd Q_;
  std::vector<MatrixXd> slopes_of_Q_;
  Spectrum<double> real_;
  Spectrum<Complex> complex_;
  Way way_ = Way::by_squaring;
};

Passage::Passage(int states, std::span<const ChainStep> steps, std::span<const double> rates)
    : ways_(std::make_unique<Ways>(states, steps, rates)) {}

Passage::~Passage() = default;

MatrixXd Passage::chances(double t) const {
  return ways_->chances(t);
}

void Passage::row(Index from, double t, VectorXd& chances, MatrixXd& slopes) {
  ways_->row(from, t, chances, slopes);
}

void Passage::whole(double t, MatrixXd& chances, std::vector<MatrixXd>& slopes) {
  ways_->whole(t, chances, slopes);
}

}  // namespace kneerail::statistics::inside
