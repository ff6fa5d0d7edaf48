#include "tests/portfolio/gauges.h"

#include <algorithm>
#include <utility>

namespace kneerail::portfolio_test {

Gauge gauge(Draw& draw, std::string name, double drifting, Date from, Date to) {
  Gauge out;
  out.name = std::move(name);
  out.zero_um = draw.normal(1.0);
  out.gain = draw.normal(0.01);
  out.on_tubes_um = draw.normal(0.8);
  if (draw.happens(drifting)) {
    out.drifts_from = Date{static_cast<std::int32_t>(draw.whole(from.days, to.days))};
    out.drift_um_per_year = draw.normal(0.5) + (draw.happens(0.7) ? 1.5 : -1.5);
  }
  return out;
}

Inspector inspector(Draw& draw, std::string name) {
  return {std::move(name), draw.normal(0.9), draw.normal(0.5)};
}

double day_um(Draw& draw) {
  return draw.normal(0.8);
}

double shown_um(Draw& draw, const Shown& shown) {
  constexpr double brushed_off = 0.15;
  if (shown.patch_um > 0)
    return shown.patch_um * (1 + shown.gain) + shown.offset_um + draw.normal(1.5);
  if (draw.happens(brushed_off)) return std::abs(draw.normal(2));
  // Rust is thicker than the steel it was, loose, and no two grains alike.
  const double years = -shown.patch_um / std::max(shown.rate_um_per_year, 0.05);
  const double rust = (4 + 9 * std::sqrt(std::min(years, 25.0))) * draw.factor(0.5);
  return std::min(rust, 140.0) + shown.offset_um;
}

double typed_um(Draw& draw, double shown_um) {
  const double value = std::max(0.0, std::round(shown_um));
  if (!draw.happens(0.002)) return value;
  return draw.happens(0.5) ? value / 1000 : 10 * value;
}

int grade_seen(Draw& draw, const Inspector& by, double rusted, double zinc_gone_share) {
  const double share = std::clamp(rusted, 1e-6, 1 - 1e-6);
  const double seen = std::log(share / (1 - share)) + by.eye + draw.normal(0.5);
  constexpr std::array<double, 3> from{0.003, 0.05, grade_5_rusted};
  int grade = 2;
  for (const double bound : from)
    if (seen > std::log(bound / (1 - bound))) ++grade;
  if (grade == 2 && zinc_gone_share + 0.1 * by.eye + draw.normal(0.08) < 0.3) grade = 1;
  return grade;
}

}  // namespace kneerail::portfolio_test
