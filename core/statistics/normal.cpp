#include "core/statistics/normal.h"

#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace kneerail::statistics {

namespace {

using Coefficients = std::array<double, 8>;

double polynomial(const Coefficients& c, double x) {
  double sum = 0;
  for (auto i = c.size(); i-- > 0;) sum = sum * x + c[i];
  return sum;
}

// Wichura (1988), Applied Statistics 37, 477-484: PPND16, numerators and denominators for the
// centre, the near tail and the far tail.
constexpr Coefficients centre_over{3.3871328727963666080e0, 1.3314166789178437745e2,
                                   1.9715909503065514427e3, 1.3731693765509461125e4,
                                   4.5921953931549871457e4, 6.7265770927008700853e4,
                                   3.3430575583588128105e4, 2.5090809287301226727e3};
constexpr Coefficients centre_under{1.0,
                                    4.2313330701600911252e1,
                                    6.8718700749205790830e2,
                                    5.3941960214247511077e3,
                                    2.1213794301586595867e4,
                                    3.9307895800092710610e4,
                                    2.8729085735721942674e4,
                                    5.2264952788528545610e3};
constexpr Coefficients near_over{1.42343711074968357734e0,  4.63033784615654529590e0,
                                 5.76949722146069140550e0,  3.64784832476320460504e0,
                                 1.27045825245236838258e0,  2.41780725177450611770e-1,
                                 2.27238449892691845833e-2, 7.74545014278341407640e-4};
constexpr Coefficients near_under{1.0,
                                  2.05319162663775882187e0,
                                  1.67638483018380384940e0,
                                  6.89767334985100004550e-1,
                                  1.48103976427480074590e-1,
                                  1.51986665636164571966e-2,
                                  5.47593808499534494600e-4,
                                  1.05075007164441684324e-9};
constexpr Coefficients far_over{6.65790464350110377720e0,  5.46378491116411436990e0,
                                1.78482653991729133580e0,  2.96560571828504891230e-1,
                                2.65321895265761230930e-2, 1.24266094738807843860e-3,
                                2.71155556874348757815e-5, 2.01033439929228813265e-7};
constexpr Coefficients far_under{1.0,
                                 5.99832206555887937690e-1,
                                 1.36929880922735805310e-1,
                                 1.48753612908506148525e-2,
                                 7.86869131145613259100e-4,
                                 1.84631831751005468180e-5,
                                 1.42151175831644588870e-7,
                                 2.04426310338993978564e-15};

double quantile_of_tail(double tail) {
  const double r = std::sqrt(-std::log(tail));
  return r <= 5 ? polynomial(near_over, r - 1.6) / polynomial(near_under, r - 1.6)
                : polynomial(far_over, r - 5) / polynomial(far_under, r - 5);
}

}  // namespace

double normal_density(double x) {
  return std::exp(-0.5 * x * x) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
}

double normal_cdf(double x) {
  return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

double normal_tail(double x) {
  return normal_cdf(-x);
}

double normal_quantile(double p) {
  if (!(p >= 0 && p <= 1)) return std::numeric_limits<double>::quiet_NaN();
  if (p == 0) return -std::numeric_limits<double>::infinity();
  if (p == 1) return std::numeric_limits<double>::infinity();
  const double q = p - 0.5;
  if (std::abs(q) <= 0.425) {
    const double r = 0.180625 - q * q;
    return q * polynomial(centre_over, r) / polynomial(centre_under, r);
  }
  return q < 0 ? -quantile_of_tail(p) : quantile_of_tail(1 - p);
}

}  // namespace kneerail::statistics
