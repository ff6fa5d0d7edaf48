#pragma once

// Round tube: what it carries, new and after it has lost metal evenly. Inertias are always computed
// from diameter and wall, never taken from a list: several lists in circulation are 5 % too high.
//
// Holds for a round tube with an even wall. A tube that is dented, oval, pitted or holed does not
// follow it: judge it by eye, not by this.

#include <optional>

namespace kneerail::structure {

/// Circular hollow section.
struct Tube {
  double outside_mm;
  double wall_mm;
};

/// Whether there is a tube at all: a wall above 0, at most half the diameter.
bool is_tube(const Tube& tube);

double area_mm2(const Tube& tube);             ///< pi (D2 - d2) / 4
double second_moment_mm4(const Tube& tube);    ///< pi (D4 - d4) / 64
double elastic_modulus_mm3(const Tube& tube);  ///< 2 I / D
double plastic_modulus_mm3(const Tube& tube);  ///< (D3 - d3) / 6
inline constexpr double steel_density_kg_per_dm3 = 7.85;
double mass_kg_per_m(const Tube& tube, double density_kg_per_dm3 = steel_density_kg_per_dm3);

/// Metal lost evenly from both faces.
struct Loss {
  double outside_mm;
  double inside_mm;
};
/// What is left; nothing when no wall is.
std::optional<Tube> after_loss(const Tube& tube, const Loss& loss);

enum class Modulus { elastic, plastic };
/// Even loss outside, mm, at which a modulus has fallen to `fraction` of the new one; to 1e-12 of
/// the wall. Nothing unless 0 < fraction <= 1.
std::optional<double> outside_loss_at_mm(const Tube& tube, Modulus modulus, double fraction);

}  // namespace kneerail::structure
