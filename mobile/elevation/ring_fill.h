#pragma once

// Rings that fill: for a moment the grade just given grows in the ring it was given to, over the
// drawing that knows it already; a grade taken back shrinks the same way.

#include <vector>

#include "mobile/elevation/run_shapes.h"
#include "mobile/elevation/run_view.h"

namespace kneerail::elevation {

struct RingFill {
  int part = 0;  ///< of both sheets
  int grade = 0;
};

struct RingChange {
  std::vector<RingFill> rings;
  bool back = false;  ///< they empty
};

/// Between two sheets on which the same parts stand: those whose grade of this visit came, or where
/// none came, those whose grade went.
RingChange ring_change(const RunSheet& before, const RunSheet& after);

/// In the item's pixels; `share` of each ring is filled. What is out of view is left out.
ShapeList filling_rings(const RunSheet& sheet, const std::vector<RingFill>& rings,
                        const RunDrawing& drawing, const RunView& view, float share);

}  // namespace kneerail::elevation
