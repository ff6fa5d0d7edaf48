#pragma once

// Where the glass stands over the run: what is under a point of the drawing, and where a place of
// the run is drawn.

#include "mobile/elevation/picking.h"

namespace kneerail::elevation {

struct RunView {
  double width_px = 0;
  double height_px = 0;
  double pixels_per_mm = 5.88;
  double denominator = 25;
  double centre_mm = 0;  ///< chainage in the middle
  double deck_px = 0;    ///< of the deck's line, down from the top

  bool operator==(const RunView&) const = default;

  /// Pixels for a millimetre of the run.
  [[nodiscard]] double scale() const { return pixels_per_mm / denominator; }
  [[nodiscard]] double x_px(double along_mm) const {
    return width_px / 2 + (along_mm - centre_mm) * scale();
  }
  [[nodiscard]] double y_px(double up_mm) const { return deck_px - up_mm * scale(); }
  [[nodiscard]] RunPoint at(double x_px, double y_px) const {
    return {centre_mm + (x_px - width_px / 2) / scale(), (deck_px - y_px) / scale()};
  }
  [[nodiscard]] double left_mm() const { return centre_mm - width_px / 2 / scale(); }
  [[nodiscard]] double right_mm() const { return centre_mm + width_px / 2 / scale(); }
};

/// The view at another scale, with the same place of the run under (x, y).
inline RunView scaled_about(RunView view, double denominator, double x_px, double y_px) {
  const RunPoint fixed = view.at(x_px, y_px);
  view.denominator = denominator;
  view.centre_mm = fixed.along_mm - (x_px - view.width_px / 2) / view.scale();
  view.deck_px = y_px + fixed.up_mm * view.scale();
  return view;
}

}  // namespace kneerail::elevation
