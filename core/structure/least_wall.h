#pragma once

// The least wall with which a round steel post or rail still carries the load along the top of its
// barrier: worked out from tube, spacing, height, load and steel, since no one percentage of loss
// serves all of them.
//
//   post  M = gamma q s h      cantilever with the load at its top
//   rail  M = gamma q s^2 / 8  one span, held at both ends only
//   passes while  Wel(D - 2 o, t - o) fy >= M     o: metal lost, all of it counted from outside
//
// Elastic, not plastic, since thin spots of a corroded tube make the plastic moment unsafe (common
// practice, no source); from outside, since a millimetre lost there costs more than one inside.
// Partial factor of resistance 1.0 (EN 1993-1-1, 6.2.5). A tube that fails the elastic check when
// new has no reserve to lose, whatever its plastic moment: an engineer must look.
// Not checked: deflection, the grip of fittings and their screws, the base, welds, shear, holes,
// dents. They may govern before bending does.

#include <optional>
#include <string_view>

#include "core/structure/section.h"

namespace kneerail::structure {

enum class Member { post, rail };

struct LoadedTube {
  Tube as_new;
  Member member = Member::post;
  double line_load_kn_per_m = 0;  ///< unfactored
  double spacing_m = 0;           ///< of posts
  double height_m = 0;            ///< of the load; not used for a rail
  double load_factor = 1.5;       ///< gamma Q (EN 1990, Table A1.2(B), recommended value)
  double yield_mpa = 0;
};

/// Factored moment, kN m.
double moment_kn_m(const LoadedTube& loaded);

struct LeastWall {
  double used = 0;  ///< moment over what the new tube carries elastically
  /// Nothing where the new tube does not pass: no reserve; refer to an engineer.
  std::optional<double> wall_mm;
};
/// To 1e-9 mm. Nothing where there is no tube, or load, spacing, height, factor or strength is not
/// above 0.
std::optional<LeastWall> least_wall(const LoadedTube& loaded);

/// Yield strength, MPa, of a steel by its name: S195T 195 (EN 10255), S235 and S235GT 235 (EN
/// 10219-1, EN 39), S275 275, S355 355 (walls to 16 mm); the last two from memory. Nothing for
/// other names.
std::optional<double> yield_mpa(std::string_view steel);
/// What to take for tube of the threaded series whose steel nobody knows, and to say so: S195T.
inline constexpr double assumed_yield_mpa = 195;

}  // namespace kneerail::structure
