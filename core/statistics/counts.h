#pragma once

// How many events there will be: of a known rate (Poisson), or among trials of unequal chances
// (Poisson-binomial).

#include <vector>

namespace kneerail::statistics {

/// P(N = k) of a Poisson number of that mean (0 or more); 0 for k < 0.
double poisson_chance(int k, double mean);

/// P(N <= k) of a Poisson number of that mean (0 or more); 0 for k < 0. By the sum of its terms, in
/// ln where the mean is large; to about 1e-12.
double poisson_cdf(int k, double mean);

/// The number of successes among independent trials, each with a chance of its own.
///   P(N = k) by convolution, trial by trial: exact up to `exact_most`
///   P(N <= k) beyond that: G(x) = Phi(x) + s (1 - x^2) phi(x)/6, x = (k + 0.5 - mean)/sd, s the
///   skewness; its error is of order 1/variance. Source: Volkova 1996, Theory Probab. Appl. 40.
class PoissonBinomial {
 public:
  static constexpr int exact_most = 63;

  /// One more trial; chance 0 to 1.
  void add(double chance);
  /// Trials that are sure, or events that have happened.
  void add_sure(int count) { sure_ += count; }

  [[nodiscard]] double mean() const { return mean_ + sure_; }
  [[nodiscard]] double variance() const { return variance_; }
  /// P(N <= k), 0 to 1, never falling in k up to exact_most and beyond it.
  [[nodiscard]] double cdf(int k) const;

 private:
  int sure_ = 0;
  double mean_ = 0;
  double variance_ = 0;
  double third_ = 0;                  ///< central moment
  std::vector<double> exactly_{1.0};  ///< P(N = k); empty once none of it is left
};

}  // namespace kneerail::statistics
