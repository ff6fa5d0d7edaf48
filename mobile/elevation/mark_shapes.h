#pragma once

// What is not rail: the ground, post tags, chalk rings, barrier boards, dimensions.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

/// Deck line and hatched ground from `left` to `right`, deck at y 0.
void add_ground(ShapeList& list, const RunPen& pen, float left, float right);

/// A post's tag over its top: ink when seen, sheet when open, dashed when skipped or struck, chalk
/// when chosen.
void add_tag(ShapeList& list, const RunPen& pen, const SheetPost& post, Point top, bool chosen);

/// A finding's chalk ring with its number and what was found; `place_in_stack` counts the rings
/// about the same place that are drawn before it.
void add_ring(ShapeList& list, const RunPen& pen, const SheetFinding& finding, Point middle,
              int place_in_stack = 0);

/// A board across a bay that is closed off; `left` at half its height.
void add_board(ShapeList& list, const RunPen& pen, Point left, float right_x);

/// The distance of two posts, under the ground. `last`: no other one follows at its right end.
void add_dimension(ShapeList& list, const RunPen& pen, float left, float right, double length_mm,
                   bool last);

}  // namespace kneerail::elevation
