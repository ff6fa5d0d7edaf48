#include "core/corrosion/category.h"

#include <array>
#include <cmath>

namespace kneerail::corrosion {

namespace {

constexpr std::array<double, 7> zinc_bounds_um{0, 0.1, 0.7, 2.1, 4.2, 8.4, 25};
constexpr std::array<double, 7> steel_bounds_um{0, 1.3, 25, 50, 80, 200, 700};
constexpr std::array<std::string_view, 7> names{"C1", "C2", "C3", "C4", "C5", "CX", ">CX"};

const std::array<double, 7>* bounds_of(Metal metal) {
  if (metal == Metal::zinc) return &zinc_bounds_um;
  if (metal == Metal::carbon_steel) return &steel_bounds_um;
  return nullptr;
}

}  // namespace

std::string_view to_text(CorrosivityCategory category) {
  return names.at(static_cast<std::size_t>(category));
}

std::optional<RateBand> first_year_band(Metal metal, CorrosivityCategory category) {
  const auto* bounds = bounds_of(metal);
  const auto place = static_cast<std::size_t>(category);
  if (!bounds || place + 1 >= bounds->size()) return std::nullopt;
  return RateBand{.low_um = (*bounds)[place], .high_um = (*bounds)[place + 1]};
}

std::optional<CorrosivityCategory> category_of(Metal metal, double first_year_rate_um) {
  const auto* bounds = bounds_of(metal);
  if (!bounds) return std::nullopt;
  std::size_t place = 0;
  while (place + 1 < bounds->size() && first_year_rate_um > (*bounds)[place + 1]) ++place;
  return static_cast<CorrosivityCategory>(place);
}

std::optional<double> middle_first_year_um(Metal metal, CorrosivityCategory category) {
  const auto band = first_year_band(metal, category);
  if (!band) return std::nullopt;
  const double low = band->low_um > 0 ? band->low_um : band->high_um / 2;
  return std::sqrt(low * band->high_um);
}

double estimate_ln_sd(Metal metal) {
  return std::log(metal == Metal::aluminium ? 2.0 : 1.5);
}

double ln_sd_of_interval(double low_factor, double high_factor) {
  return 0.5 * (std::log(high_factor) - std::log(low_factor));
}

}  // namespace kneerail::corrosion
