#pragma once

// The scales a drawing rests at. A pinch moves freely between them and settles on the nearest.

#include <algorithm>
#include <array>
#include <cmath>

namespace kneerail::elevation {

/// Denominators: 10 is 1:10, the largest.
inline constexpr std::array<double, 5> scale_steps = {10, 20, 25, 50, 100};

/// Rails nearer than this on the glass are hard to tell apart with a glove.
inline constexpr double rail_gap_on_glass_mm = 20;

/// The step nearest to a scale, by ratio: 35 lies nearer to 25 than to 50.
inline double nearest_step(double denominator) {
  return *std::min_element(scale_steps.begin(), scale_steps.end(), [&](double a, double b) {
    return std::abs(std::log(a / denominator)) < std::abs(std::log(b / denominator));
  });
}

/// The next step from one: direction +1 shows more of the run, -1 draws it larger. Stays at the
/// ends.
inline double next_step(double denominator, int direction) {
  const auto here = std::find(scale_steps.begin(), scale_steps.end(), nearest_step(denominator));
  if (direction > 0 && here + 1 != scale_steps.end()) return *(here + 1);
  if (direction < 0 && here != scale_steps.begin()) return *(here - 1);
  return *here;
}

struct OpeningView {
  double width_mm = 0;      ///< of the drawing, on the glass
  double rail_gap_mm = 0;   ///< least distance of two rails of the run
  double bay_mm = 0;        ///< from a post to the next
  double post_half_mm = 6;  ///< half of what a post's fitting takes on the glass
};

/// The largest of 1:20, 1:25 and 1:50 that keeps the rails 20 mm apart on the glass and shows the
/// posts on both sides of the one in the middle. Where no scale does both, the largest that shows
/// the posts: a touch between near rails is asked again (picking.h). Else 1:50.
inline double opening_scale(const OpeningView& view) {
  const auto shows_posts = [&](double scale) {
    return view.bay_mm / scale + view.post_half_mm <= view.width_mm / 2;
  };
  constexpr std::array<double, 3> choices = {20, 25, 50};
  for (const double scale : choices) {
    if (shows_posts(scale) && view.rail_gap_mm / scale >= rail_gap_on_glass_mm) return scale;
  }
  for (const double scale : choices) {
    if (shows_posts(scale)) return scale;
  }
  return choices.back();
}

}  // namespace kneerail::elevation
