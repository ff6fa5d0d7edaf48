#include <catch2/catch.hpp>

#include "mobile/theme/glass.h"

using kneerail::theme::drawn_pixels_per_mm;
using kneerail::theme::pixels_per_mm;

TEST_CASE("a tablet is believed as far as its sheets have room", "[mobile][theme]") {
  // 1920 x 1200 on 10.1 inch: 224.2 pixels an inch.
  const double fine = 224.2 / 25.4;
  CHECK(pixels_per_mm(fine, {1920, 1200}) == Approx(8.82).margin(0.005));
  CHECK(pixels_per_mm(fine, {1200, 1920}) == pixels_per_mm(fine, {1920, 1200}));
  // 1280 x 800 on 7 inch: true millimetres would not fit on it.
  CHECK(pixels_per_mm(8.5, {1280, 800}) == drawn_pixels_per_mm);
  CHECK(pixels_per_mm(8.5, {1536, 960}) == Approx(drawn_pixels_per_mm * 1.2));
}

TEST_CASE("a desk's monitor, or none, is drawn as a tablet", "[mobile][theme]") {
  CHECK(pixels_per_mm(96 / 25.4, {1920, 1080}) == drawn_pixels_per_mm);
  CHECK(pixels_per_mm(0, {1280, 800}) == drawn_pixels_per_mm);
  CHECK(pixels_per_mm(4, {800, 600}) == drawn_pixels_per_mm);
}
