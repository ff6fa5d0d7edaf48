#pragma once

// Quantiles of the sampling distributions that intervals are made with.

namespace kneerail::statistics {

/// The x with P(T <= x) = p for Student's t. 0 < p < 1, degrees above 0, not necessarily whole.
double student_t_quantile(double p, double degrees);
/// P(T <= x) for Student's t.
double student_t_cdf(double x, double degrees);

/// The x with P(X <= x) = p for chi-square. 0 < p < 1, degrees above 0.
double chi_square_quantile(double p, double degrees);

struct Tolerance {
  double sample_size;  ///< at least 2
  double coverage;     ///< share of the population, 0 to 1
  double confidence;   ///< 0 to 1
};
/// k with: mean + k sd of a normal sample lies above `coverage` of its population with
/// `confidence`. k = t'(confidence; n - 1, z(coverage) sqrt n) / sqrt n, t' the noncentral t (ISO
/// 16269-6).
double one_sided_tolerance_factor(const Tolerance& wanted);

}  // namespace kneerail::statistics
