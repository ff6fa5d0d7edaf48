#pragma once

// A straight line through readings over time, and when it meets a threshold: the time, its standard
// error by the delta method, and Fieller's interval, which is not symmetric and may have no end.

#include <optional>
#include <span>

#include "core/base/result.h"

namespace kneerail::statistics {

struct Line {
  double intercept = 0;
  double slope = 0;
  double intercept_variance = 0;
  double slope_variance = 0;
  double covariance = 0;
  double residual_sd = 0;
  double degrees = 0;  ///< n - 2
};

/// Errors: not_estimable with fewer than three readings or all at one time; invalid_input.
Result<Line> fit_line(std::span<const double> t, std::span<const double> y);

struct Crossing {
  double time = 0;
  double standard_error = 0;  ///< delta method
  /// Fieller's interval; no value: it has no end on that side.
  std::optional<double> low;
  std::optional<double> high;
};

/// When the line meets `threshold`, with a two-sided interval of the given confidence. When the
/// slope is not clear at that confidence the interval has no end on one side or both.
/// Source: Fieller (1954), J. R. Statist. Soc. B 16, 175-185.
/// Errors: not_estimable when the slope is zero.
Result<Crossing> crossing(const Line& line, double threshold, double confidence);

}  // namespace kneerail::statistics
