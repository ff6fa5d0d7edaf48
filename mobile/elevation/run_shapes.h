#pragma once

// A stretch of a run as shapes, to scale: tubes, fittings, welds, ground, grades, tags, marks.
// Lengths on the run shrink with the scale; line widths, glyphs, tags and letters keep their size
// on the glass. What was recorded is drawn, never a guess.

#include "mobile/elevation/shapes.h"
#include "mobile/theme/palette.h"
#include "schema/store/run_store.h"

namespace kneerail::elevation {

struct RunDrawing {
  double pixels_per_mm = 5.88;
  double denominator = 25;
  double text_scale = 1;
  theme::Theme theme = theme::Theme::light;
  bool more_contrast = false;
  int chosen_post = -1;  ///< its tag is chalk
  bool tags = true;      ///< over the posts

  bool operator==(const RunDrawing&) const = default;
};

/// Pixels from the deck's line at `origin_mm`, y down. What stands on a neighbouring stretch may be
/// overlapped by the next; marks lie above the bodies of all stretches.
struct RunPiece {
  ShapeList body;
  ShapeList marks;
};

struct Stretch {
  int first_post = 0;  ///< with the bay after each of its posts
  int posts = 0;
  double origin_mm = 0;
};

/// Of a joint's grade on that drawing, without the disc behind it.
float sign_radius_px(const RunSheet& sheet, int part, const RunDrawing& drawing);

RunPiece run_shapes(const RunSheet& sheet, const Stretch& stretch, const RunDrawing& drawing);

}  // namespace kneerail::elevation
