#pragma once

// Bodies of fittings and fixings, and the grades that stand in them.

#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

/// The sides of a joint that a tube comes from.
struct Joins {
  bool left = true;
  bool right = true;
  bool up = true;
  bool down = true;
};

struct Fitting {
  const SheetPart* part = nullptr;
  Point middle;
  float deck_y = 0;
  Joins joins{};
};

void add_fitting(ShapeList& list, const RunPen& pen, const Fitting& fitting);

/// Three tongues of rust that run down from a joint.
void add_weeping(ShapeList& list, const RunPen& pen, const Fitting& fitting);

enum class Room { enough, little };
enum class Ghost { shown, hollow };

/// The grade given now, or a dashed ring with the last one in it; hollow where it was passed by.
void add_grade_of(ShapeList& list, const RunPen& pen, const SheetPart& part, Point middle,
                  float radius, Ghost ghost = Ghost::shown);

/// Radius of a glyph on the drawing, px, without the ground behind it.
float glyph_radius_px(const RunPen& pen, Room room = Room::enough);

}  // namespace kneerail::elevation
