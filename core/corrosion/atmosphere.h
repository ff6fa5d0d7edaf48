#pragma once

// What a year of open air takes from a metal, reckoned from temperature, humidity, sulphur dioxide
// and salt (the dose-response functions of ISO 9223:2012, 8.3).
//
// None of them holds under shelter (salt is not washed off), in a crevice such as the mouth of a
// slip-on fitting, or where unlike metals touch.

namespace kneerail::corrosion {

/// Yearly means of the air at a place.
struct Atmosphere {
  double temperature_c;
  double humidity_pct;            ///< relative
  double so2_mg_per_m2_day;       ///< deposition, Pd
  double chloride_mg_per_m2_day;  ///< deposition, Sd
};

/// Zinc lost in its first year in open air, um (the standard's corrosion rate, um/a).
///   r = 0.0129 Pd^0.44 exp(0.046 RH + f) + 0.0175 Sd^0.57 exp(0.008 RH + 0.085 T)
///   f = 0.038 (T - 10) when T <= 10, else -0.071 (T - 10)
/// Source: ISO 9223:2012, 8.3.
double first_year_zinc_loss_um(const Atmosphere& air);

/// Carbon steel lost in its first year in open air, um.
///   r = 1.77 Pd^0.52 exp(0.020 RH + f) + 0.102 Sd^0.62 exp(0.033 RH + 0.040 T)
///   f = 0.150 (T - 10) when T <= 10, else -0.054 (T - 10)
/// Source: ISO 9223:2012, 8.3.
double first_year_steel_loss_um(const Atmosphere& air);

/// Aluminium lost in its first year in open air, g/m2; its attack is local, so it has no um.
///   r = 0.0042 Pd^0.73 exp(0.025 RH + f) + 0.0018 Sd^0.60 exp(0.020 RH + 0.094 T)
///   f = 0.009 (T - 10) when T <= 10, else -0.043 (T - 10)
/// Source: ISO 9223:2012, 8.3; coefficients from memory, to be confirmed against the standard.
double first_year_aluminium_loss_g_per_m2(const Atmosphere& air);

/// Whether the functions were fitted to such air: T -17.1..28.7 degC, RH 34..93 %, Pd 0.7..150.4
/// and Sd 0.4..760.5 mg/(m2 d) (ISO 9223:2012, Table 3). Outside it they extrapolate.
bool in_fitted_range(const Atmosphere& air);

}  // namespace kneerail::corrosion
