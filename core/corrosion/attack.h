#pragma once

// How the attack of the air grows over the years. A patina slows it: with H(t) = t^b up to 20 years
// and a straight line of the slope reached there after, a metal that loses r in its first year has
// lost r H(t) after t years (ISO 9224:2012, clause 6).
//
// Three rates are easily mixed up. The first-year rate r is what coupons and dose-response
// functions give. The 20-year mean is r H(20)/20, smaller as b < 1. A constant rate is neither:
// thickness / r is the life only when b = 1. Every rate in this program says which it is.
//
// A function for the whole path is in AttackPath; effective age h(t) = 20 H(t)/H(20) makes loss =
// (20-year mean) h(t), with h(0) = 0 and h(20) = 20.

#include "core/corrosion/metal.h"

namespace kneerail::corrosion {

inline constexpr double linear_from_years = 20;

/// t^b, the bare power law that the standard's own table goes on with past 20 years (ISO 9224:2012,
/// Table 3). It says less than the straight line does; the program uses AttackPath. 0 before t = 0.
double power_growth(double exponent, double age_years);

class AttackPath {
 public:
  /// Exponent b, above 0 and at most 1; at 1 effective age is age.
  explicit AttackPath(double exponent);

  /// H(t): attack per unit of first-year rate, in years' worth of it. 0 at and before t = 0.
  [[nodiscard]] double growth(double age_years) const;
  /// The age, years, at which growth() reaches `growth`; 0 for what is not above 0.
  [[nodiscard]] double age_of_growth(double growth) const;
  /// H'(t): the rate at that age over the first-year rate; inf at 0 when b < 1.
  [[nodiscard]] double slope(double age_years) const;

  /// h(t) = 20 H(t)/H(20), years; ages below 0 count one to one.
  [[nodiscard]] double effective_age(double age_years) const;
  /// The age of an effective age, years: the inverse of effective_age().
  [[nodiscard]] double age(double effective_age_years) const;
  /// H(20)/20: turns a first-year rate into a mean over the first 20 years.
  [[nodiscard]] double first_year_to_mean() const;

  [[nodiscard]] double exponent() const { return exponent_; }

 private:
  double exponent_;
  double at_break_;  ///< H(20)
  double slope_;     ///< H' from 20 years on
};

struct Exposed {
  double first_year_rate_um;  ///< lost in the first year
  double exponent;
  double age_years;
};
/// Metal lost by then, um.
double attack_um(const Exposed& exposed);

struct Consumed {
  double thickness_um;
  double first_year_rate_um;
  double exponent;
};
/// Years until a thickness is consumed; inf when nothing is lost, 0 when nothing is there.
double years_to_consume(const Consumed& consumed);

/// Mean exponent B1 of a metal (ISO 9224:2012, Table 2): steel 0.523, zinc 0.813, copper 0.667,
/// aluminium 0.728.
double mean_exponent(Metal metal);
/// Upper exponent B2, for a conservative limit (Table 3): steel 0.575, zinc 0.873, copper 0.726,
/// aluminium 0.807.
double upper_exponent(Metal metal);

}  // namespace kneerail::corrosion
