#include "core/statistics/quantiles.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

#include "core/base/result.h"
#include "core/statistics/normal.h"

namespace kneerail::statistics {

namespace {

namespace policies = boost::math::policies;
/// Nothing thrown, and double all through: the same digits where long double is another type.
using Quiet = policies::policy<
    policies::domain_error<policies::ignore_error>, policies::pole_error<policies::ignore_error>,
    policies::overflow_error<policies::ignore_error>,
    policies::evaluation_error<policies::ignore_error>, policies::promote_double<false>>;

void check_probability(double p) {
  check(p > 0 && p < 1, "a probability between 0 and 1");
}

}  // namespace

double student_t_quantile(double p, double degrees) {
  check_probability(p);
  check(degrees > 0, "degrees of freedom above 0");
  return boost::math::quantile(boost::math::students_t_distribution<double, Quiet>(degrees), p);
}

double student_t_cdf(double x, double degrees) {
  check(degrees > 0, "degrees of freedom above 0");
  return boost::math::cdf(boost::math::students_t_distribution<double, Quiet>(degrees), x);
}

double chi_square_quantile(double p, double degrees) {
  check_probability(p);
  check(degrees > 0, "degrees of freedom above 0");
  return boost::math::quantile(boost::math::chi_squared_distribution<double, Quiet>(degrees), p);
}

double one_sided_tolerance_factor(const Tolerance& wanted) {
  check_probability(wanted.coverage);
  check_probability(wanted.confidence);
  check(wanted.sample_size >= 2, "a sample of at least two");
  const double root = std::sqrt(wanted.sample_size);
  const boost::math::non_central_t_distribution<double, Quiet> t(
      wanted.sample_size - 1, normal_quantile(wanted.coverage) * root);
  return boost::math::quantile(t, wanted.confidence) / root;
}

}  // namespace kneerail::statistics
