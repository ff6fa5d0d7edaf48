#pragma once

// What every shape of a run's drawing is sized and coloured by.

#include <algorithm>

#include "mobile/elevation/run_shapes.h"
#include "mobile/theme/palette.h"

namespace kneerail::elevation {

class RunPen {
 public:
  explicit RunPen(const RunDrawing& drawing)
      : drawing_(drawing), palette_(theme::palette(drawing.theme)) {}

  /// Pixels for a millimetre of the run.
  [[nodiscard]] double scale() const { return drawing_.pixels_per_mm / drawing_.denominator; }
  /// A size that does not shrink with the scale, in the pixels of 5.88 to a millimetre.
  [[nodiscard]] float px(double drawn) const {
    return static_cast<float>(drawn / 5.88 * drawing_.pixels_per_mm);
  }
  [[nodiscard]] float text_px(double drawn) const {
    return px(drawn) * static_cast<float>(drawing_.text_scale);
  }
  /// Outside diameter on the glass, never under 3 px.
  [[nodiscard]] float od_px(const SheetPart& part) const {
    const double od = static_cast<double>(part.diameter_tenth_mm) / 10 * scale();
    return static_cast<float>(std::max(od, 3.0));
  }
  [[nodiscard]] float edge_px() const { return px(1.6); }

  [[nodiscard]] const theme::Palette& color() const { return palette_; }
  [[nodiscard]] QColor ink2() const {
    return drawing_.more_contrast ? palette_.ink : palette_.ink2;
  }
  [[nodiscard]] QColor ghost() const {
    return drawing_.more_contrast ? palette_.ink2 : palette_.ghost;
  }
  [[nodiscard]] bool textures() const { return !drawing_.more_contrast; }
  /// Small enough that glyphs and screws would run into each other.
  [[nodiscard]] bool far() const { return drawing_.denominator > 60; }
  /// Small enough that words would run over the next post.
  [[nodiscard]] bool crowded() const { return drawing_.denominator > 35; }

 private:
  RunDrawing drawing_;
  const theme::Palette& palette_;
};

}  // namespace kneerail::elevation
