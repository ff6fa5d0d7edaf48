#include "mobile/theme/glass.h"

#include <algorithm>

namespace kneerail::theme {

double pixels_per_mm(double said_pixels_per_mm, QSizeF screen_pixels) {
  constexpr QSizeF sheet(1280, 800);
  const double longer = std::max(screen_pixels.width(), screen_pixels.height());
  const double shorter = std::min(screen_pixels.width(), screen_pixels.height());
  const double room = std::min(longer / sheet.width(), shorter / sheet.height());
  return std::clamp(said_pixels_per_mm, drawn_pixels_per_mm,
                    std::max(drawn_pixels_per_mm, drawn_pixels_per_mm * room));
}

}  // namespace kneerail::theme
