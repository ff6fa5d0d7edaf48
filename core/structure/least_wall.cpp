#include "core/structure/least_wall.h"

#include <array>
#include <cmath>
#include <utility>

#include "core/structure/post.h"

namespace kneerail::structure {

namespace {

constexpr double n_mm_per_kn_m = 1e6;

bool is_positive(double value) {
  return value > 0 && std::isfinite(value);
}

}  // namespace

double moment_kn_m(const LoadedTube& loaded) {
  if (loaded.member == Member::rail)
    return loaded.load_factor * loaded.line_load_kn_per_m * loaded.spacing_m * loaded.spacing_m / 8;
  return loaded.load_factor * foot_moment_kn_m({.line_load_kn_per_m = loaded.line_load_kn_per_m,
                                                .spacing_m = loaded.spacing_m,
                                                .height_m = loaded.height_m});
}

std::optional<LeastWall> least_wall(const LoadedTube& loaded) {
  const bool post = loaded.member == Member::post;
  if (!is_tube(loaded.as_new) || !is_positive(loaded.line_load_kn_per_m) ||
      !is_positive(loaded.spacing_m) || (post && !is_positive(loaded.height_m)) ||
      !is_positive(loaded.load_factor) || !is_positive(loaded.yield_mpa))
    return std::nullopt;
  LeastWall least;
  least.used =
      moment_kn_m(loaded) * n_mm_per_kn_m / (elastic_modulus_mm3(loaded.as_new) * loaded.yield_mpa);
  if (least.used > 1) return least;
  if (const auto lost = outside_loss_at_mm(loaded.as_new, Modulus::elastic, least.used))
    least.wall_mm = loaded.as_new.wall_mm - *lost;
  return least;
}

std::optional<double> yield_mpa(std::string_view steel) {
  constexpr std::array<std::pair<std::string_view, double>, 5> table{
      {{"S195T", 195}, {"S235", 235}, {"S235GT", 235}, {"S275", 275}, {"S355", 355}}};
  for (const auto& [name, mpa] : table)
    if (name == steel) return mpa;
  return std::nullopt;
}

}  // namespace kneerail::structure
