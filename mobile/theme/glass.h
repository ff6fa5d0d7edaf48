#pragma once

#include <QSizeF>

namespace kneerail::theme {

/// The sheets were drawn for this glass: 1280 x 800 pixels on 10.1 inch.
constexpr double drawn_pixels_per_mm = 5.88;

/// Pixels in a millimetre to draw with on a screen of that size which says that of itself. A tablet
/// is believed, so that a key is as large on its glass as it was meant, but no more than the sheets
/// have room for. What says less than a tablet, a desk's monitor or no screen at all, is drawn as
/// if it were one: keys come out larger than asked, never smaller.
double pixels_per_mm(double said_pixels_per_mm, QSizeF screen_pixels);

/// Width of a card as in every purse, ISO/IEC 7810:2019, ID-1: what a person lays on the glass to
/// tell how large it is.
constexpr double card_width_mm = 85.60;
constexpr double card_height_mm = 53.98;

}  // namespace kneerail::theme
