#pragma once

// Tubes with their coating as it was last seen. Dots and patches stand where the part's identity
// puts them, so a part looks the same every time and on every tablet.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

struct Tube {
  const SheetPart* part = nullptr;
  Point from;  ///< on the middle line; a post's foot
  Point to;
  float od_px = 0;
};

void add_tube(ShapeList& list, const RunPen& pen, const Tube& tube);

}  // namespace kneerail::elevation
