#pragma once

// The grade as the cut end of a tube: the coating line outside, the steel wall inside. The worse
// the grade, the less of both; every grade has its own outline, so it reads without colour.

#include "mobile/elevation/shapes.h"

namespace kneerail::elevation {

/// Grades 1 to 5 about `middle`; `radius` is the outer radius.
void add_grade(ShapeList& list, Point middle, float radius, int grade, const QColor& color);

/// Not yet graded: a ring of whole dashes, about 4 px on and 4 off where `px` is the size of a
/// pixel of 5.88 to a millimetre.
void add_open_grade(ShapeList& list, Point middle, float radius, const QColor& color, float px = 1);

/// Last visit's grade, small enough to stand inside the ring of what is not yet graded.
void add_last_grade(ShapeList& list, Point middle, float radius, int grade, const QColor& color);

/// How far the disc of sheet behind a glyph reaches beyond it, in the pixels of 5.88 to a mm.
inline constexpr double glyph_ground_drawn = 2.5;

}  // namespace kneerail::elevation
