#pragma once

// What stands between two posts beside the rails: toe boards, gates, infill.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

/// A bay on the drawing: its posts' x, the deck at y 0 and the top rail's y.
struct BayFrame {
  float left = 0;
  float right = 0;
  float top = 0;
  float foot = 0;         ///< of the infill
  bool has_foot = false;  ///< a rail runs there
};

/// A plank of true height with end grain.
void add_toe_board(ShapeList& list, const RunPen& pen, const SheetPart& part, const BayFrame& bay);

/// A frame of tube with hinge eyes on the first post, a latch on the second and its swing dashed.
void add_gate(ShapeList& list, const RunPen& pen, const SheetPart& part, const BayFrame& bay);

/// Upright bars from the top rail to a rail at their feet, or to a bar of their own.
void add_infill(ShapeList& list, const RunPen& pen, const BayFrame& bay);

/// A bar of the infill that is bent, at its foot and head in line.
void add_bent_bar(ShapeList& list, const RunPen& pen, const BayFrame& bay, float x);

}  // namespace kneerail::elevation
