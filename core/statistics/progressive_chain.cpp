#include "core/statistics/progressive_chain.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/base/result.h"

namespace kneerail::statistics {

namespace {

/// exp(Q t) for fastest * t <= 1: sum of Poisson weights times powers of I + Q / fastest.
Eigen::MatrixXd short_step(std::span<const double> rates, double fastest, double t) {
  const auto n = static_cast<Eigen::Index>(rates.size()) + 1;
  Eigen::MatrixXd jump = Eigen::MatrixXd::Identity(n, n);
  for (Eigen::Index i = 0; i + 1 < n; ++i) {
    const double share = rates[static_cast<std::size_t>(i)] / fastest;
    jump(i, i) = 1 - share;
    jump(i, i + 1) = share;
  }
  double weight = std::exp(-fastest * t);
  Eigen::MatrixXd power = Eigen::MatrixXd::Identity(n, n);
  Eigen::MatrixXd sum = weight * power;
  for (int k = 1; k <= 30; ++k) {  // 1/30! is far below a double's last digit
    power *= jump;
    weight *= fastest * t / k;
    sum += weight * power;
  }
  return sum;
}

}  // namespace

std::vector<double> chances_after(std::span<const double> rates, std::size_t from, double t) {
  check(from >= 1 && from <= rates.size() + 1, "a state of the chain");
  check(t >= 0, "a time that is not negative");
  check(std::ranges::all_of(rates, [](double rate) { return rate >= 0; }),
        "rates that are not negative");
  const double fastest = rates.empty() ? 0 : std::ranges::max(rates);
  std::vector<double> chances(rates.size() + 1, 0.0);
  if (fastest * t == 0) {
    chances[from - 1] = 1;
    return chances;
  }
  const int halvings = std::max(0, static_cast<int>(std::ceil(std::log2(fastest * t))));
  Eigen::MatrixXd P = short_step(rates, fastest, std::ldexp(t, -halvings));
  for (int k = 0; k < halvings; ++k) P = (P * P).eval();
  for (std::size_t j = 0; j < chances.size(); ++j) {
    chances[j] = P(static_cast<Eigen::Index>(from) - 1, static_cast<Eigen::Index>(j));
  }
  return chances;
}

double mean_passage_years(std::span<const double> rates) {
  double years = 0;
  for (const double rate : rates) years += 1 / rate;
  return years;
}

double yearly_stay_probability(double median_years) {
  check(median_years > 0, "a median time above 0");
  return std::pow(0.5, 1 / median_years);
}

std::optional<std::vector<double>> step_probabilities(std::span<const double> counts) {
  const double all = std::accumulate(counts.begin(), counts.end(), 0.0);
  if (!(all > 0)) return std::nullopt;
  std::vector<double> shares;
  for (const double count : counts) shares.push_back(count / all);
  return shares;
}

}  // namespace kneerail::statistics
