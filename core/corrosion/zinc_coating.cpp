#include "core/corrosion/zinc_coating.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace kneerail::corrosion {

LeastCoating least_coating(Article article, double metal_mm) {
  if (article == Article::casting) {
    return metal_mm >= 6 ? LeastCoating{70, 80} : LeastCoating{60, 70};
  }
  if (metal_mm > 6) return {70, 85};
  if (metal_mm > 3) return {55, 70};
  if (metal_mm >= 1.5) return {45, 55};
  return {35, 45};
}

bool renovation_allowed(double surface_m2, std::span<const double> spots_cm2) {
  constexpr double cm2_per_m2 = 1e4;
  constexpr double share_max = 0.005;
  constexpr double spot_cm2_max = 10;
  const double all_cm2 = std::accumulate(spots_cm2.begin(), spots_cm2.end(), 0.0);
  return all_cm2 <= share_max * surface_m2 * cm2_per_m2 &&
         std::all_of(spots_cm2.begin(), spots_cm2.end(),
                     [](double spot) { return spot <= spot_cm2_max; });
}

double areal_mass_g_per_m2(double thickness_um, double density_g_per_cm3) {
  return thickness_um * density_g_per_cm3;  // 1 um over 1 m2 is 1 cm3
}

double life_at_constant_rate_years(double thickness_um, double rate_um_per_year) {
  if (thickness_um <= 0) return 0;
  if (rate_um_per_year <= 0) return std::numeric_limits<double>::infinity();
  return thickness_um / rate_um_per_year;
}

}  // namespace kneerail::corrosion
