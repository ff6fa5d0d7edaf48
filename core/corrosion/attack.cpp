#include "core/corrosion/attack.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/base/result.h"

namespace kneerail::corrosion {

double power_growth(double exponent, double age_years) {
  return age_years <= 0 ? 0 : std::pow(age_years, exponent);
}

AttackPath::AttackPath(double exponent)
    : exponent_(exponent),
      at_break_(std::pow(linear_from_years, exponent)),
      slope_(exponent * std::pow(linear_from_years, exponent - 1)) {
  check(exponent > 0 && exponent <= 1, "exponent of an attack path between 0 and 1");
}

double AttackPath::growth(double age_years) const {
  if (age_years <= linear_from_years) return power_growth(exponent_, age_years);
  return at_break_ + slope_ * (age_years - linear_from_years);
}

double AttackPath::age_of_growth(double growth) const {
  if (growth <= 0) return 0;
  if (growth <= at_break_) return std::pow(growth, 1 / exponent_);
  return linear_from_years + (growth - at_break_) / slope_;
}

double AttackPath::slope(double age_years) const {
  if (age_years >= linear_from_years) return slope_;
  return exponent_ * std::pow(std::max(age_years, 0.0), exponent_ - 1);
}

double AttackPath::effective_age(double age_years) const {
  if (age_years <= 0 || exponent_ == 1) return age_years;
  return linear_from_years * growth(age_years) / at_break_;
}

double AttackPath::age(double effective_age_years) const {
  if (effective_age_years <= 0 || exponent_ == 1) return effective_age_years;
  return age_of_growth(effective_age_years * at_break_ / linear_from_years);
}

double AttackPath::first_year_to_mean() const {
  return at_break_ / linear_from_years;
}

double attack_um(const Exposed& exposed) {
  return exposed.first_year_rate_um * AttackPath(exposed.exponent).growth(exposed.age_years);
}

double years_to_consume(const Consumed& consumed) {
  if (consumed.thickness_um <= 0) return 0;
  if (consumed.first_year_rate_um <= 0) return std::numeric_limits<double>::infinity();
  return AttackPath(consumed.exponent)
      .age_of_growth(consumed.thickness_um / consumed.first_year_rate_um);
}

double mean_exponent(Metal metal) {
  constexpr std::array<double, 4> table{0.523, 0.813, 0.667, 0.728};
  return table.at(static_cast<std::size_t>(metal));
}

double upper_exponent(Metal metal) {
  constexpr std::array<double, 4> table{0.575, 0.873, 0.726, 0.807};
  return table.at(static_cast<std::size_t>(metal));
}

}  // namespace kneerail::corrosion
