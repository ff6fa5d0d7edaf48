// Where a run with corners and slopes goes. Its chainage is measured along the rail, so a sloping
// bay is shorter on the plan.

#include <cmath>
#include <numbers>

#include "core/layout/laid_run.h"

namespace kneerail::layout {
namespace {

struct Heading {
  int degrees = 0;
  std::int64_t rise_mm = 0;
  std::int64_t length_mm = 0;
};

/// Whether one straight line goes on from a bay into the next.
bool goes_on(const Heading& before, const Heading& after) {
  return before.degrees == after.degrees &&
         before.rise_mm * after.length_mm == after.rise_mm * before.length_mm;
}

}  // namespace

std::vector<std::array<std::int64_t, 3>> line_of(const RunRule& rule) {
  std::vector<Heading> bays;
  Heading now;
  for (int bay = 0; bay + 1 < rule.posts; ++bay) {
    if (const auto at = rule.post_changes.find(bay); at != rule.post_changes.end() && bay > 0)
      now.degrees += at->second.turn_degrees;
    const auto change = rule.bay_changes.find(bay);
    const bool changed = change != rule.bay_changes.end();
    now.rise_mm = changed ? change->second.rise_mm : 0;
    now.length_mm = changed ? change->second.length_mm.value_or(rule.spacing_mm) : rule.spacing_mm;
    bays.push_back(now);
  }
  double x = 0;
  double y = 0;
  std::int64_t z = 0;
  std::vector<std::array<std::int64_t, 3>> line{{0, 0, 0}};
  for (std::size_t i = 0; i < bays.size(); ++i) {
    const auto length = static_cast<double>(bays[i].length_mm);
    const auto rise = static_cast<double>(bays[i].rise_mm);
    const double plan = std::sqrt(length * length - rise * rise);
    const double angle = bays[i].degrees * std::numbers::pi / 180;
    x += plan * std::cos(angle);
    y += plan * std::sin(angle);
    z += bays[i].rise_mm;
    if (i + 1 < bays.size() && goes_on(bays[i], bays[i + 1])) continue;
    line.push_back({std::llround(x), std::llround(y), z});
  }
  const bool plain = line.size() == 2 && line[1][1] == 0 && line[1][2] == 0;
  if (plain) line.clear();
  return line;
}

}  // namespace kneerail::layout
