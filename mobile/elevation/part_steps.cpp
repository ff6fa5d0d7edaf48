#include "mobile/elevation/part_steps.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace kneerail::elevation {

namespace {

/// How far a part lies in a direction, what lies aside counted three times; nothing in the other
/// direction counts at all.
double way(const SheetPart& from, const SheetPart& to, Step step) {
  const auto along = static_cast<double>(to.along_mm - from.along_mm);
  const auto up = static_cast<double>(to.up_mm - from.up_mm);
  const bool sideways = step == Step::left || step == Step::right;
  const bool forward = step == Step::right || step == Step::up;
  const double ahead = (sideways ? along : up) * (forward ? 1 : -1);
  if (ahead <= 0) return std::numeric_limits<double>::infinity();
  return ahead + 3 * std::abs(sideways ? up : along);
}

}  // namespace

int part_beside(const RunSheet& sheet, int part, Step step) {
  const SheetPart& from = sheet.parts.at(static_cast<std::size_t>(part));
  constexpr int posts_to_either_side = 2;
  const int last_post = static_cast<int>(sheet.posts.size()) - 1;
  int nearest = part;
  double nearest_way = std::numeric_limits<double>::infinity();
  for (int post = std::max(from.post - posts_to_either_side, 0);
       post <= std::min(from.post + posts_to_either_side, last_post); ++post) {
    const SheetPost& at = sheet.posts[static_cast<std::size_t>(post)];
    const int end = std::min(at.first_part + at.parts, static_cast<int>(sheet.parts.size()));
    for (int i = std::max(at.first_part, 0); i < end; ++i) {
      const double there = way(from, sheet.parts[static_cast<std::size_t>(i)], step);
      if (there >= nearest_way) continue;
      nearest_way = there;
      nearest = i;
    }
  }
  return nearest;
}

}  // namespace kneerail::elevation
