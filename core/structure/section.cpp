#include "core/structure/section.h"

#include <cmath>
#include <numbers>

namespace kneerail::structure {

namespace {

double inside_mm(const Tube& tube) {
  return tube.outside_mm - 2 * tube.wall_mm;
}

double modulus_mm3(const Tube& tube, Modulus modulus) {
  return modulus == Modulus::elastic ? elastic_modulus_mm3(tube) : plastic_modulus_mm3(tube);
}

}  // namespace

bool is_tube(const Tube& tube) {
  return tube.wall_mm > 0 && 2 * tube.wall_mm <= tube.outside_mm && std::isfinite(tube.outside_mm);
}

double area_mm2(const Tube& tube) {
  const double D = tube.outside_mm;
  const double d = inside_mm(tube);
  return std::numbers::pi * (D * D - d * d) / 4;
}

double second_moment_mm4(const Tube& tube) {
  return std::numbers::pi * (std::pow(tube.outside_mm, 4) - std::pow(inside_mm(tube), 4)) / 64;
}

double elastic_modulus_mm3(const Tube& tube) {
  return 2 * second_moment_mm4(tube) / tube.outside_mm;
}

double plastic_modulus_mm3(const Tube& tube) {
  return (std::pow(tube.outside_mm, 3) - std::pow(inside_mm(tube), 3)) / 6;
}

double mass_kg_per_m(const Tube& tube, double density_kg_per_dm3) {
  return density_kg_per_dm3 * 1e-3 * area_mm2(tube);
}

std::optional<Tube> after_loss(const Tube& tube, const Loss& loss) {
  const Tube left{.outside_mm = tube.outside_mm - 2 * loss.outside_mm,
                  .wall_mm = tube.wall_mm - loss.outside_mm - loss.inside_mm};
  if (!is_tube(left)) return std::nullopt;
  return left;
}

std::optional<double> outside_loss_at_mm(const Tube& tube, Modulus modulus, double fraction) {
  if (!is_tube(tube) || !(fraction > 0 && fraction <= 1)) return std::nullopt;
  const double wanted = fraction * modulus_mm3(tube, modulus);
  double low = 0;              // modulus at or above the wanted one
  double high = tube.wall_mm;  // no wall, no modulus
  while (high - low > 1e-12 * tube.wall_mm) {
    const double middle = 0.5 * (low + high);
    const auto left = after_loss(tube, {.outside_mm = middle, .inside_mm = 0});
    (left && modulus_mm3(*left, modulus) >= wanted ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace kneerail::structure
