#pragma once

// Signs that stand at their own size: chalk rings, barrier boards, and the tag that says when a
// site is due.

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

struct DueTag {
  Point corner;
  Point size;
  float edge_px = 2;
  bool soon = false;  ///< within 60 days: ink; else sheet
};

/// How far the pointed left end reaches into the plate, and where the words may begin, as shares of
/// the tag's height.
inline constexpr float due_tag_point = 0.22F;
inline constexpr float due_tag_words = 0.52F;

/// A plate with a pointed left end and a hole to hang it by.
void add_due_tag(ShapeList& list, const DueTag& tag, const theme::Palette& palette);

/// Over a part that was chosen to be measured: a chalk arrow head with its point at `foot`, on a
/// rim of the ground so that it is seen on a rail too.
void add_chosen_mark(ShapeList& list, Point foot, float side, const QColor& chalk,
                     const QColor& ground);

}  // namespace kneerail::elevation
