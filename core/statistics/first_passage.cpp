#include "core/statistics/first_passage.h"

#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

#include "core/base/result.h"
#include "core/statistics/normal.h"

namespace kneerail::statistics {

namespace {

/// exp(k) N(-x) where k may be large and N(-x) tiny: from 25 on by the tail's continued fraction,
/// whose exponent is joined with k before anything overflows.
double scaled_tail(double k, double x) {
  if (x < 25) return std::exp(k) * normal_tail(x);
  double fraction = x;
  for (int i = 20; i > 0; --i) fraction = x + i / fraction;
  return std::exp(k - 0.5 * x * x) * normal_density(0) / fraction;
}

}  // namespace

double drift_reaches_by(const Drift& process, double t) {
  check(process.barrier > 0 && process.sigma > 0, "a barrier and a sigma above 0");
  if (t <= 0) return 0;
  const double spread = process.sigma * std::sqrt(t);
  const double k = 2 * process.barrier * process.drift / (process.sigma * process.sigma);
  return normal_cdf((process.drift * t - process.barrier) / spread) +
         scaled_tail(k, (process.drift * t + process.barrier) / spread);
}

double gamma_loss_reaches_by(const GammaLoss& process, double t) {
  check(process.barrier > 0 && process.shape_per_year > 0 && process.scale > 0,
        "a gamma process with all parameters above 0");
  if (t <= 0) return 0;
  using Plain = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
  return boost::math::gamma_q(process.shape_per_year * t, process.barrier / process.scale, Plain());
}

double life_quantile(const RateSpread& spread, double p) {
  check(spread.rate_median > 0, "a rate above 0");
  if (spread.thickness <= 0) return 0;
  return spread.thickness / spread.rate_median * std::exp(spread.rate_ln_sd * normal_quantile(p));
}

double path_gone_by(const NormalPath& path, double t) {
  const double variance = path.start_sd * path.start_sd + path.slope_sd * path.slope_sd * t * t -
                          2 * path.correlation * path.start_sd * path.slope_sd * t;
  const double left = path.start - path.slope * t;
  if (variance <= 0) return left <= 0 ? 1 : 0;
  return normal_cdf(-left / std::sqrt(variance));
}

}  // namespace kneerail::statistics
