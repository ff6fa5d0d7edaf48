#pragma once

// A post as a cantilever with a line load along its top rail: a screening check. A slip-on base is
// not rigid, so a measured deflection also holds its turn and slip.

#include "core/structure/section.h"

namespace kneerail::structure {

struct Span {
  double line_load_kn_per_m;
  double spacing_m;  ///< of posts
  double height_m;   ///< of the load
};
/// Moment at the foot of a post, kN m: M = q s h.
double foot_moment_kn_m(const Span& span);

/// Plastic moment of a tube, kN m: Wpl fy, partial factor 1.0 (EN 1993-1-1, 6.2.5). For a corroded
/// tube use the elastic modulus: thin spots make this one unsafe.
double plastic_moment_kn_m(const Tube& tube, double yield_mpa);

struct SpacingQuestion {
  Tube tube;
  double yield_mpa;
  double line_load_kn_per_m;
  double height_m;
  double load_factor;  ///< gamma Q
};
/// Widest spacing of posts, m, whose foot moment under the factored load is the plastic moment.
double widest_spacing_m(const SpacingQuestion& question);

struct TipPush {
  double force_kn;
  double height_m;
  Tube tube;
  double modulus_gpa;  ///< of elasticity
};
/// Deflection at the load of a post held rigidly, mm: F h3 / (3 E I).
double tip_deflection_mm(const TipPush& push);

}  // namespace kneerail::structure
