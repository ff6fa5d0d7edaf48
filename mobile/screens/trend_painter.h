#pragma once

// Paints a TrendPicture, the same on the screen and on paper; trend_view.h says what is on it.

#include <QFont>
#include <QRectF>

#include "mobile/models/trend_picture.h"
#include "mobile/theme/palette.h"

class QPainter;

namespace kneerail {

struct TrendLook {
  theme::Palette palette;
  QFont text;       ///< tick labels and notes
  QFont bold;       ///< limits, works
  double unit = 1;  ///< pixels of one drawn pixel
  bool stale = false;
};

/// Paints into `area` of the painter's coordinates.
void paint_trend(QPainter& painter, const QRectF& area, const TrendPicture& picture,
                 const TrendLook& look);

}  // namespace kneerail
