#pragma once

// The grade as the cut end of a tube: the coating line outside, the steel wall inside. The worse
// the grade, the less of both; every grade has its own outline, so it reads without colour.

#include "mobile/elevation/shapes.h"

namespace kneerail::elevation {

/// Grades 1 to 5 about `middle`; `radius` is the outer radius.
void add_grade(ShapeList& list, Point middle, float radius, int grade, const QColor& color);

/// Not yet graded: a dashed ring.
void add_open_grade(ShapeList& list, Point middle, float radius, const QColor& color);

}  // namespace kneerail::elevation
