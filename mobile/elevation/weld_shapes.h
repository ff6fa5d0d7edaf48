#pragma once

// Where tubes are welded: no body, only the ripple of the weld along each line of the joint.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

struct WeldPlace {
  const SheetPart* part = nullptr;
  Point middle;
  float deck_y = 0;
};

/// Ripples either side of the grade that stands on the joint.
void add_weld(ShapeList& list, const RunPen& pen, const WeldPlace& at);

/// A plate welded to a post's foot.
void add_weld_foot(ShapeList& list, const RunPen& pen, const WeldPlace& at);

/// Where a welded section may be cut out of the run: dashes and dots across the post.
void add_cut_edge(ShapeList& list, const RunPen& pen, const WeldPlace& at);

/// The ripple of a weld from one point to another, its arcs standing out to the left of the way.
void add_ripple(ShapeList& list, const RunPen& pen, Point from, Point to);

}  // namespace kneerail::elevation
