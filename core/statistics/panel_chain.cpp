#include "core/statistics/panel_chain.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>
#include <optional>
#include <string>

namespace kneerail::statistics {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXcd;
using Eigen::VectorXd;
using Complex = std::complex<double>;

constexpr double worst_condition = 1e7;
constexpr int most_passes = 400;
constexpr int most_halvings = 40;
constexpr double longest_step = 1;
constexpr double settled_move = 1e-9;
constexpr double told_least = 1e-16;  ///< squared slopes with ln rate: less is rounding alone

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

/// exp(Q t) and its slopes with ln rates, at any t.
class Passage {
 public:
  Passage(int states, std::span<const ChainStep> steps, std::span<const double> rates)
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

  /// Row `from` of P and of its slopes, one slope a row of `slopes`.
  void row(Index from, double t, VectorXd& chances, MatrixXd& slopes) {
    slopes.resize(static_cast<Index>(slopes_of_Q_.size()), Q_.rows());
    if (way_ == Way::by_real) return real_.row(from, t, chances, slopes);
    if (way_ == Way::by_complex) return complex_.row(from, t, chances, slopes);
    std::vector<MatrixXd> all;
    chances = by_squaring(t, &all).row(from);
    for (std::size_t m = 0; m < all.size(); ++m)
      slopes.row(static_cast<Index>(m)) = all[m].row(from);
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

struct Likelihood {
  double ln = 0;
  VectorXd score;
  MatrixXd outer;  ///< sum over subjects
};

/// The likelihood of one pair and its slopes.
class PairLikelihood {
 public:
  PairLikelihood(const PanelData& data, std::span<const double> rates)
      : data_(data), rates_(rates), passage_(data.states, data.steps, rates) {}

  double of(const PanelPair& pair, VectorXd& slope) {
    passage_.row(pair.from - 1, pair.years, chances_, slopes_);
    if (pair.arrival == Arrival::some_time_before) {
      slope = slopes_.col(pair.to - 1);
      return chances_(pair.to - 1);
    }
    double density = 0;
    slope.setZero(slopes_.rows());
    for (std::size_t m = 0; m < data_.steps.size(); ++m) {
      if (data_.steps[m].to != pair.to) continue;
      const Index before = data_.steps[m].from - 1;
      const double part = chances_(before) * rates_[m];
      density += part;
      slope += slopes_.col(before) * rates_[m];
      slope(static_cast<Index>(m)) += part;
    }
    return density;
  }

 private:
  const PanelData& data_;
  std::span<const double> rates_;
  Passage passage_;
  VectorXd chances_;
  MatrixXd slopes_;
};

using Ways = Eigen::Matrix<bool, Eigen::Dynamic, Eigen::Dynamic>;

/// Which states can be reached from which by steps with a rate, each from itself.
Ways ways_of(const PanelData& data, std::span<const double> rates) {
  Ways ways = Ways::Identity(data.states, data.states);
  for (int round = 0; round < data.states; ++round)
    for (std::size_t m = 0; m < data.steps.size(); ++m)
      if (rates[m] > 0)
        for (Index from = 0; from < data.states; ++from)
          if (ways(from, data.steps[m].from - 1)) ways(from, data.steps[m].to - 1) = true;
  return ways;
}

/// By the ways there are, since a chance that is none comes out as a very small number of either
/// sign.
bool can_happen(const PanelData& data, std::span<const double> rates) {
  const Ways ways = ways_of(data, rates);
  return std::ranges::all_of(data.pairs, [&](const PanelPair& pair) {
    if (pair.arrival == Arrival::some_time_before)
      return pair.from == pair.to || (pair.years > 0 && ways(pair.from - 1, pair.to - 1));
    for (std::size_t m = 0; m < data.steps.size(); ++m) {
      const int before = data.steps[m].from;
      if (data.steps[m].to == pair.to && rates[m] > 0 &&
          (before == pair.from || (pair.years > 0 && ways(pair.from - 1, before - 1))))
        return true;
    }
    return false;
  });
}

/// Nothing where a pair cannot happen at these rates.
std::optional<Likelihood> likelihood_of(const PanelData& data, std::span<const double> rates) {
  if (!can_happen(data, rates)) return std::nullopt;
  const auto n = static_cast<Index>(data.steps.size());
  Likelihood all{0, VectorXd::Zero(n), MatrixXd::Zero(n, n)};
  PairLikelihood pairs(data, rates);
  VectorXd slope(n);
  VectorXd own = VectorXd::Zero(n);
  for (std::size_t i = 0; i < data.pairs.size(); ++i) {
    const double chance = pairs.of(data.pairs[i], slope);
    if (!(chance > 0)) return std::nullopt;
    all.ln += std::log(chance);
    own += slope / chance;
    if (i + 1 < data.pairs.size() && data.pairs[i + 1].subject == data.pairs[i].subject) continue;
    all.score += own;
    all.outer += own * own.transpose();
    own.setZero();
  }
  if (!std::isfinite(all.ln) || !all.score.allFinite()) return std::nullopt;
  return all;
}

Result<> check_data(const PanelData& data) {
  const auto state = [&](int number) { return number >= 1 && number <= data.states; };
  for (std::size_t m = 0; m < data.steps.size(); ++m) {
    const ChainStep& step = data.steps[m];
    if (!state(step.from) || !state(step.to) || step.from == step.to)
      return fail(Fault::invalid_input, "Chain: a step from or to a state that there is not.");
    for (std::size_t k = 0; k < m; ++k)
      if (data.steps[k].from == step.from && data.steps[k].to == step.to)
        return fail(Fault::invalid_input, "Chain: a step is named twice.");
  }
  for (const PanelPair& pair : data.pairs) {
    if (!state(pair.from) || !state(pair.to))
      return fail(Fault::invalid_input, "Chain: a look at a state that there is not.");
    if (!(pair.years >= 0) || !std::isfinite(pair.years))
      return fail(Fault::invalid_input, "Chain: a time between looks that is no number from 0 up.");
  }
  if (data.steps.empty() || data.pairs.empty())
    return fail(Fault::not_estimable, "Chain: there is no step or no pair of looks.");
  return Done{};
}

/// Seen changes over time spent, half a change where there was none.
std::vector<double> crude_rates(const PanelData& data) {
  std::vector<double> spent(static_cast<std::size_t>(data.states), 0.0);
  for (const PanelPair& pair : data.pairs)
    spent[static_cast<std::size_t>(pair.from - 1)] += pair.years;
  std::vector<double> rates;
  for (const ChainStep& step : data.steps) {
    const auto changes = std::ranges::count_if(data.pairs, [&](const PanelPair& pair) {
      return pair.from == step.from && pair.to == step.to;
    });
    const double years = spent[static_cast<std::size_t>(step.from - 1)];
    rates.push_back(std::max(0.5, static_cast<double>(changes)) / (years > 0 ? years : 1));
  }
  return rates;
}

std::vector<double> exponentials(const VectorXd& ln_rates) {
  std::vector<double> rates;
  for (Index m = 0; m < ln_rates.size(); ++m) rates.push_back(std::exp(ln_rates(m)));
  return rates;
}

/// One step uphill; false: none was found.
bool climb(const PanelData& data, VectorXd& ln_rates, Likelihood& now) {
  const Eigen::LDLT<MatrixXd> factor(now.outer);
  VectorXd step = factor.solve(now.score);
  if (!step.allFinite()) return false;
  if (const double most = step.cwiseAbs().maxCoeff(); most > longest_step)
    step *= longest_step / most;
  for (int k = 0; k < most_halvings; ++k, step /= 2) {
    const VectorXd next = ln_rates + step;
    auto there = likelihood_of(data, exponentials(next));
    if (!there || there->ln < now.ln) continue;
    ln_rates = next;
    now = std::move(*there);
    return true;
  }
  return false;
}

}  // namespace

Result<PanelFit> fit_panel_chain(const PanelData& data) {
  if (auto ok = check_data(data); !ok) return fail(ok.error());
  PanelFit fit;
  fit.rates = crude_rates(data);
  VectorXd ln_rates(static_cast<Index>(fit.rates.size()));
  for (std::size_t m = 0; m < fit.rates.size(); ++m)
    ln_rates(static_cast<Index>(m)) = std::log(fit.rates[m]);
  auto now = likelihood_of(data, fit.rates);
  if (!now)
    return fail(Fault::not_estimable,
                "Chain: two looks lie in states that no way leads between. Nothing was fitted.");
  for (Index m = 0; m < now->outer.rows(); ++m) {
    const ChainStep& step = data.steps[static_cast<std::size_t>(m)];
    if (now->outer(m, m) < told_least)
      return fail(Fault::not_estimable, "Chain: no two looks tell of the step from " +
                                            std::to_string(step.from) + " to " +
                                            std::to_string(step.to) + ". Nothing was fitted.");
  }
  while (fit.passes < most_passes && !fit.settled) {
    const double before = now->ln;
    const bool rose = climb(data, ln_rates, *now);
    ++fit.passes;
    fit.settled = !rose || 2 * (now->ln - before) < settled_move * 1e-3;
  }
  fit.rates = exponentials(ln_rates);
  fit.minus_two_ln_likelihood = -2 * now->ln;
  const MatrixXd covariance =
      now->outer.ldlt().solve(MatrixXd::Identity(now->outer.rows(), now->outer.cols()));
  for (Index m = 0; m < covariance.rows(); ++m)
    fit.ln_rate_errors.push_back(now->outer(m, m) < told_least
                                     ? std::numeric_limits<double>::infinity()
                                     : std::sqrt(std::max(0.0, covariance(m, m))));
  return fit;
}

double panel_criterion(const PanelData& data, std::span<const double> rates) {
  const auto at = likelihood_of(data, rates);
  return at ? -2 * at->ln : std::numeric_limits<double>::infinity();
}

std::vector<double> panel_chances(int states, std::span<const ChainStep> steps,
                                  std::span<const double> rates, double t) {
  check(states > 0 && steps.size() == rates.size() && t >= 0, "a chain with a rate for each step");
  const MatrixXd P = Passage(states, steps, rates).chances(t);
  std::vector<double> all;
  for (Index i = 0; i < P.rows(); ++i)
    for (Index j = 0; j < P.cols(); ++j) all.push_back(std::clamp(P(i, j), 0.0, 1.0));
  return all;
}

}  // namespace kneerail::statistics
