#include "core/corrosion/atmosphere.h"

#include <cmath>

namespace kneerail::corrosion {

namespace {

/// One dose-response function: a sulphur term with a slope on each side of 10 degC, and a salt
/// term.
struct DoseResponse {
  double so2, so2_power, so2_humidity, slope_cold, slope_warm;
  double salt, salt_power, salt_humidity, salt_temperature;
};

double response(const DoseResponse& k, const Atmosphere& air) {
  const double T = air.temperature_c;
  const double RH = air.humidity_pct;
  const double f = (T <= 10 ? k.slope_cold : k.slope_warm) * (T - 10);
  return k.so2 * std::pow(air.so2_mg_per_m2_day, k.so2_power) * std::exp(k.so2_humidity * RH + f) +
         k.salt * std::pow(air.chloride_mg_per_m2_day, k.salt_power) *
             std::exp(k.salt_humidity * RH + k.salt_temperature * T);
}

constexpr DoseResponse zinc{0.0129, 0.44, 0.046, 0.038, -0.071, 0.0175, 0.57, 0.008, 0.085};
constexpr DoseResponse steel{1.77, 0.52, 0.020, 0.150, -0.054, 0.102, 0.62, 0.033, 0.040};
constexpr DoseResponse aluminium{0.0042, 0.73, 0.025, 0.009, -0.043, 0.0018, 0.60, 0.020, 0.094};

bool within(double value, double low, double high) {
  return value >= low && value <= high;
}

}  // namespace

double first_year_zinc_loss_um(const Atmosphere& air) {
  return response(zinc, air);
}

double first_year_steel_loss_um(const Atmosphere& air) {
  return response(steel, air);
}

double first_year_aluminium_loss_g_per_m2(const Atmosphere& air) {
  return response(aluminium, air);
}

bool in_fitted_range(const Atmosphere& air) {
  return within(air.temperature_c, -17.1, 28.7) && within(air.humidity_pct, 34, 93) &&
         within(air.so2_mg_per_m2_day, 0.7, 150.4) &&
         within(air.chloride_mg_per_m2_day, 0.4, 760.5);
}

}  // namespace kneerail::corrosion
