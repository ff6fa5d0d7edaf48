#pragma once

// The standard normal distribution.

namespace kneerail::statistics {

double normal_density(double x);
/// P(Z <= x), full precision in both tails.
double normal_cdf(double x);
/// P(Z > x) without cancellation for large x.
double normal_tail(double x);
/// The x with P(Z <= x) = p, to about 1e-15 of it; -inf at 0, inf at 1, not a number outside.
/// Method: Wichura (1988), algorithm AS 241 (PPND16).
double normal_quantile(double p);

}  // namespace kneerail::statistics
