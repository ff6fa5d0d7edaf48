#include "core/structure/post.h"

#include <cmath>

namespace kneerail::structure {

double foot_moment_kn_m(const Span& span) {
  return span.line_load_kn_per_m * span.spacing_m * span.height_m;
}

double plastic_moment_kn_m(const Tube& tube, double yield_mpa) {
  constexpr double n_mm_per_kn_m = 1e6;
  return plastic_modulus_mm3(tube) * yield_mpa / n_mm_per_kn_m;
}

double widest_spacing_m(const SpacingQuestion& question) {
  return plastic_moment_kn_m(question.tube, question.yield_mpa) /
         (question.load_factor * question.line_load_kn_per_m * question.height_m);
}

double tip_deflection_mm(const TipPush& push) {
  const double force_n = push.force_kn * 1e3;
  const double height_mm = push.height_m * 1e3;
  const double modulus_mpa = push.modulus_gpa * 1e3;
  return force_n * std::pow(height_mm, 3) / (3 * modulus_mpa * second_moment_mm4(push.tube));
}

}  // namespace kneerail::structure
