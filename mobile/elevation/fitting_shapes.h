#pragma once

// Bodies of fittings, welds and fixings, and the grades that stand in them.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

/// Where the run goes on from the post of a fitting.
enum class Neighbours { both, left_only, right_only };

struct Fitting {
  const SheetPart* part = nullptr;
  Point middle;
  float deck_y = 0;
  Neighbours neighbours = Neighbours::both;
  bool at_top = false;
};

void add_fitting(ShapeList& list, const RunPen& pen, const Fitting& fitting);

enum class Room { enough, little };

/// The grade given now, or a dashed ring with the last one in it.
void add_grade_of(ShapeList& list, const RunPen& pen, const SheetPart& part, Point middle,
                  Room room = Room::enough);

}  // namespace kneerail::elevation
