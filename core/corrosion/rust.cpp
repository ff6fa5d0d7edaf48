#include "core/corrosion/rust.h"

#include <algorithm>
#include <array>

namespace kneerail::corrosion {

std::optional<AreaPct> ri_picture_area(int ri) {
  constexpr std::array<AreaPct, 6> table{
      {{0, 0}, {0.05, 0.05}, {0.5, 0.5}, {1, 1}, {8, 8}, {40, 50}}};
  if (ri < 0 || ri > 5) return std::nullopt;
  return table.at(static_cast<std::size_t>(ri));
}

std::optional<int> d610_grade(double area_pct) {
  constexpr std::array<double, 10> upper_pct{0.01, 0.03, 0.1, 0.3, 1, 3, 10, 16, 33, 50};
  if (!(area_pct >= 0 && area_pct <= 100)) return std::nullopt;
  const auto* band = std::lower_bound(upper_pct.begin(), upper_pct.end(), area_pct);
  return 10 - static_cast<int>(band - upper_pct.begin());
}

}  // namespace kneerail::corrosion
