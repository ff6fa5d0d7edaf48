#include "core/statistics/uncertainty.h"

#include <cmath>
#include <numeric>

#include "core/base/result.h"

namespace kneerail::statistics {

double rectangular_uncertainty(double half_width) {
  return half_width / std::sqrt(3.0);
}

double mean(std::span<const double> values) {
  check(!values.empty(), "a mean of at least one value");
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

std::optional<double> sample_sd(std::span<const double> values) {
  if (values.size() < 2) return std::nullopt;
  const double centre = mean(values);
  double squares = 0;
  for (const double value : values) squares += (value - centre) * (value - centre);
  return std::sqrt(squares / static_cast<double>(values.size() - 1));
}

std::optional<double> mean_uncertainty(std::span<const double> values) {
  const auto sd = sample_sd(values);
  if (!sd) return std::nullopt;
  return *sd / std::sqrt(static_cast<double>(values.size()));
}

}  // namespace kneerail::statistics
