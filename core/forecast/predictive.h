#pragma once

// When a coating reaches a limit L: a mixture of normals in closed form.
//
//   P(T <= t) = sum_k w_k Phi((r_k h + (a_k - 1) r_k (h - h_now)+ - c_k + L) / sd_k(h)),  h = h(t)
//   sd_k(h)^2 = v_k + 0.15^2 (a_k r_k)^2 (h - h_now)+^2 + 0.27^2 w_k(h)
//               + x (0.7^2 + 2^2 (r_k h)^2 / 2500)
//
// The second term is the future differing from the past for long: the shape of the path, the air.
// The third is the weather of single years since the last reading, w_k = r_k^2 for each effective
// year up to now, (a_k r_k)^2 for each after. In the last, x is how much more visit means scatter
// (um^2) than where spots stand for their part: then the part's mean thickness is not what its
// spots showed. a_k is 1, or 3 where paint gives way.

#include "core/forecast/coating_forecast.h"
#include "core/forecast/posterior.h"

namespace kneerail::forecast {

/// Where a segment stands in time.
struct Clock {
  const corrosion::AttackPath* path = nullptr;
  double age_now = 0;       ///< years since the segment's start
  bool start_known = true;  ///< else age counts from the first visit and is its own effective age

  [[nodiscard]] double effective(double age_years) const {
    return start_known ? path->effective_age(age_years) : age_years;
  }
  [[nodiscard]] double age(double effective_age) const {
    return start_known ? path->age(effective_age) : effective_age;
  }
};

Clock clock_of(const CoatingData& data, const Segment& segment);

/// Chance that the limit is reached so many years after the as-of date or before.
double chance_by(const Posterior& posterior, const Clock& clock, double limit_um, double years);

/// The same at an effective age.
double chance_at(const Posterior& posterior, const Clock& clock, double limit_um,
                 double effective_age);

/// The seven quantiles 5, 10, 25, 50, 75, 90, 95 % of the years from the as-of date to the limit;
/// inf where the chance within 300 years stays below. By Newton in a bracket, to a relative
/// `tolerance` in effective age.
std::array<double, 7> limit_quantiles(const Posterior& posterior, const Clock& clock,
                                      double limit_um,
                                      double tolerance = constant::quantile_tolerance);

/// Median thickness on the as-of date, um: the limit that is as likely reached as not; at least 0.
double median_now_um(const Posterior& posterior, const Clock& clock);

/// Quantiles 10, 50 and 90 % of the thickness so many years after the as-of date (before it where
/// negative), um, at least 0: the limit that is reached by then with that chance. To 0.005 um.
std::array<double, 3> thickness_quantiles_um(const Posterior& posterior, const Clock& clock,
                                             double years);

}  // namespace kneerail::forecast
