#include "core/statistics/counts.h"

#include <algorithm>
#include <cmath>

#include "core/statistics/normal.h"

namespace kneerail::statistics {

double poisson_chance(int k, double mean) {
  if (k < 0) return 0;
  if (mean <= 0) return k == 0 ? 1 : 0;
  return std::exp(k * std::log(mean) - mean - std::lgamma(k + 1.0));
}

double poisson_cdf(int k, double mean) {
  double sum = 0;
  for (int i = 0; i <= k; ++i) sum += poisson_chance(i, mean);
  return std::min(1.0, sum);
}

void PoissonBinomial::add(double chance) {
  constexpr double nothing_left = 1e-14;
  if (chance <= 0) return;
  const double stays = 1 - chance;
  mean_ += chance;
  variance_ += chance * stays;
  third_ += chance * stays * (1 - 2 * chance);
  if (exactly_.empty()) return;
  if (exactly_.size() <= static_cast<std::size_t>(exact_most)) exactly_.push_back(0);
  double sum = 0;
  for (std::size_t k = exactly_.size() - 1; k > 0; --k) {
    exactly_[k] = exactly_[k] * stays + exactly_[k - 1] * chance;
    sum += exactly_[k];
  }
  exactly_[0] *= stays;
  if (sum + exactly_[0] < nothing_left) exactly_.clear();
}

double PoissonBinomial::cdf(int k) const {
  k -= sure_;
  if (k < 0) return 0;
  if (k <= exact_most && !exactly_.empty()) {
    double sum = 0;
    for (std::size_t i = 0; i < std::min(exactly_.size(), static_cast<std::size_t>(k) + 1); ++i)
      sum += exactly_[i];
    return std::min(1.0, sum);
  }
  if (k <= exact_most) return 0;
  const double sd = std::sqrt(variance_);
  if (sd < 1e-9) return k + 0.5 >= mean_ ? 1 : 0;
  const double x = (k + 0.5 - mean_) / sd;
  const double skewness = third_ / (variance_ * sd);
  return std::clamp(normal_cdf(x) + skewness * (1 - x * x) * normal_density(x) / 6, 0.0, 1.0);
}

}  // namespace kneerail::statistics
