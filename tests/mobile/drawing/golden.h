#pragma once

// Golden pictures: what a drawing looked like when somebody last looked at it and was content. They
// lie in tests/mobile/golden. A drawing that no longer looks like its picture fails its test and
// leaves two files in the test's build folder: NAME.seen.png, what it looks like now, and
// NAME.difference.png, where it differs, in red over the old picture in grey.
//
// After a change that is meant, look at the new pictures and take them over by
//   KNEERAIL_RENEW_GOLDEN=1 build/bin/drawing_tests "[golden]"
// which writes them over the old ones. Pictures hold no letters: fonts differ between machines.

#include <QColor>
#include <QImage>
#include <QSize>
#include <string>

#include "mobile/elevation/shapes.h"

namespace kneerail::tests {

/// A list of shapes on its ground, the list's origin at `origin`. Labels are left out.
QImage drawn(const elevation::ShapeList& list, QSize size, elevation::Point origin,
             const QColor& ground);

struct Comparison {
  int differing = 0;       ///< pixels whose red, green or blue differ by more than a tenth
  double share = 1;        ///< of all pixels; 1 when the sizes differ
  double worst_share = 1;  ///< of the pixels of one tile, where most differ
  QImage difference;

  [[nodiscard]] bool alike() const;
};

Comparison compare(const QImage& golden, const QImage& seen);

/// How many pixels may differ: smooth edges fall a little otherwise under another processor. A
/// small sign that is lost on a large sheet shows in its own tile.
inline constexpr double most_differing_share = 0.002;
inline constexpr int tile_px = 40;
inline constexpr double most_differing_in_tile = 0.02;

/// Checks a drawing against its golden picture, by Catch's own macros.
void check_golden(const std::string& name, const QImage& seen);

}  // namespace kneerail::tests
