#pragma once

// Signs that stand on every drawing at their own size: chalk rings and barrier boards.

#include "core/base/id.h"
#include "mobile/elevation/shapes.h"
#include "mobile/theme/palette.h"

namespace kneerail::elevation {

struct ChalkRing {
  Point middle;
  float radius = 0;
  float stroke_px = 4;
  Uuid seed;  ///< of what was found, so that its ring is the same every time
};

/// A ring drawn by hand that overlaps where it ends, and a second, dashed turn at half the width.
void add_chalk_ring(ShapeList& list, const ChalkRing& ring, QColor chalk);

struct BarrierBoard {
  Point corner;
  Point size;
  float outline_px = 1.6F;
};

/// Yellow with bars at 45 degrees, half the board's height wide.
void add_barrier_board(ShapeList& list, const BarrierBoard& board, const theme::Palette& palette);

}  // namespace kneerail::elevation
