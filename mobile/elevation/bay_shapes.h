#pragma once

// What stands between two posts beside the rails: toe boards, gates, infill.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

/// A bay on the drawing: its posts' x, the deck at y 0 and the top rail's y.
struct BayFrame {
  float left = 0;
  float right = 0;
  float top = 0;
};

/// A plank of true height with end grain.
void add_toe_board(ShapeList& list, const RunPen& pen, const SheetPart& part, const BayFrame& bay);

/// A frame of tube with hinge eyes on the first post, a latch on the second and its swing dashed.
void add_gate(ShapeList& list, const RunPen& pen, const SheetPart& part, const BayFrame& bay);

/// Upright bars from near the deck to the top rail.
void add_infill(ShapeList& list, const RunPen& pen, const BayFrame& bay);

}  // namespace kneerail::elevation
