#pragma once

// How high water or ice stood: a dashed wave along the run, with the day beside it.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

/// What of the run is drawn now. Pixels of the list; `origin_px`: where its x 0 lies on the run, so
/// that the wave goes on in the next stretch.
struct WaterReach {
  float left = 0;
  float right = 0;
  double origin_px = 0;
};

void add_water_line(ShapeList& list, const RunPen& pen, const WaterReach& reach, float y);

/// "flood mark 9 Feb 2030" beside the line, up to `at`.
void add_water_words(ShapeList& list, const RunPen& pen, const SheetWaterMark& mark, Point at);

/// "flood mark 9 Feb 2030, 0.35 m above the deck".
QString spoken_water(const SheetWaterMark& mark);

}  // namespace kneerail::elevation
