#pragma once

// Standard uncertainties of single quantities (JCGM 100, the GUM).

#include <optional>
#include <span>

namespace kneerail::statistics {

/// Of a value somewhere within +-a, all places alike: a / sqrt 3 (JCGM 100, 4.3.7).
double rectangular_uncertainty(double half_width);
double mean(std::span<const double> values);
/// Standard deviation with divisor n - 1; nothing with fewer than two values.
std::optional<double> sample_sd(std::span<const double> values);
/// Standard error of the mean, s / sqrt n; nothing with fewer than two values. Holds for what
/// differs from reading to reading, not for the gauge's own offset.
std::optional<double> mean_uncertainty(std::span<const double> values);

}  // namespace kneerail::statistics
