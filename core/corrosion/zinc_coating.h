#pragma once

// Zinc coatings put on by dipping: how thick they must be when new, what may be mended, and what a
// thickness weighs and lasts.

#include <span>

namespace kneerail::corrosion {

inline constexpr double zinc_density_g_per_cm3 = 7.14;
/// What the tables of ISO 1461:2009 print g/m2 with; never compare one with the other.
inline constexpr double iso1461_density_g_per_cm3 = 7.2;

/// Least thickness of a new coating: of a reference area (local) and of all of them (mean), um.
struct LeastCoating {
  double local_um;
  double mean_um;
};
enum class Article { steel, casting };
/// Articles not centrifuged, by the thickness of their metal (ISO 1461:2009, Table 3): steel > 6 mm
/// 70/85, > 3 to 6 mm 55/70, 1.5 to 3 mm 45/55, under 1.5 mm 35/45; castings from 6 mm 70/80, under
/// 60/70. Not for sheet, wire or tube from automatic plants.
LeastCoating least_coating(Article article, double metal_mm);

/// Whether bare spots of a new component may be mended: 0.5 % of its surface in all, each spot at
/// most 10 cm2 (ISO 1461:2009, 6.3).
bool renovation_allowed(double surface_m2, std::span<const double> spots_cm2);
/// A mended spot must have so much in all; not on top of the rest (ISO 1461:2009, 6.3).
inline constexpr double renovation_least_um = 100;

/// g/m2 of a thickness at a density.
double areal_mass_g_per_m2(double thickness_um, double density_g_per_cm3 = zinc_density_g_per_cm3);

/// thickness / rate, years; inf when the rate is 0. The rate must be a long-term mean: for a
/// first-year rate use years_to_consume() of attack.h.
double life_at_constant_rate_years(double thickness_um, double rate_um_per_year);

}  // namespace kneerail::corrosion
