#include "mobile/theme/tokens.h"

void Tokens::set_dark(bool dark) {
  if (dark == this->dark()) return;
  theme_ = dark ? kneerail::theme::Theme::dark : kneerail::theme::Theme::light;
  emit themeChanged();
}

void Tokens::set_pixels_per_mm(qreal pixels) {
  if (pixels <= 0 || qFuzzyCompare(pixels, pixels_per_mm_)) return;
  pixels_per_mm_ = pixels;
  emit sizesChanged();
}
