#pragma once

// A normal prior laid on equal nodes in +-3.5 of its sds; z = (x - mean)/sd.

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "core/base/result.h"

namespace kneerail::forecast {

class NodeGrid {
 public:
  NodeGrid(int nodes, double mean, double sd) : mean_(mean), sd_(sd) {
    check(nodes > 1, "a grid of nodes has more than one");
    for (int k = 0; k < nodes; ++k) {
      z_.push_back(reach_sds * (2.0 * k / (nodes - 1) - 1));
      prior_.push_back(std::exp(-z_.back() * z_.back() / 2));
      x_.push_back(mean + sd * z_.back());
    }
    double sum = 0;
    for (const double p : prior_) sum += p;
    for (double& p : prior_) p /= sum;
  }

  void move(double mean) {
    mean_ = mean;
    for (std::size_t k = 0; k < x_.size(); ++k) x_[k] = mean_ + sd_ * z_[k];
  }

  /// Prior times likelihood, normalised, into `weight`; returns ln of the sum.
  double weigh(const std::vector<double>& ln_likelihood, std::vector<double>& weight) const {
    const double top = *std::max_element(ln_likelihood.begin(), ln_likelihood.end());
    double sum = 0;
    for (std::size_t k = 0; k < x_.size(); ++k) {
      weight[k] = prior_[k] * std::exp(ln_likelihood[k] - top);
      sum += weight[k];
    }
    for (double& w : weight) w /= sum;
    return top + std::log(sum);
  }

  /// Mean of z and of z^2 under weights.
  [[nodiscard]] std::pair<double, double> moments(const std::vector<double>& weight) const {
    double first = 0;
    double second = 0;
    for (std::size_t k = 0; k < z_.size(); ++k) {
      first += weight[k] * z_[k];
      second += weight[k] * z_[k] * z_[k];
    }
    return {first, second};
  }

  [[nodiscard]] const std::vector<double>& x() const { return x_; }
  [[nodiscard]] const std::vector<double>& prior() const { return prior_; }
  [[nodiscard]] double mean() const { return mean_; }
  [[nodiscard]] double sd() const { return sd_; }

  /// Variance in z of a posterior that lies between two nodes: no smaller one can be told.
  [[nodiscard]] double least_variance() const {
    const double step = z_[1] - z_[0];
    return step * step / 12;
  }

 private:
  static constexpr double reach_sds = 3.5;

  double mean_;
  double sd_;
  std::vector<double> z_;
  std::vector<double> prior_;
  std::vector<double> x_;
};

}  // namespace kneerail::forecast
