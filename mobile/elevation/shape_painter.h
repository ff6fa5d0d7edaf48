#pragma once

// The list of shapes by QPainter: under the software renderer, in pictures and in the report.

#include <QPainter>
#include <QString>

#include "mobile/elevation/shapes.h"

namespace kneerail::elevation {

/// Shapes, then labels, in `family`. The painter's matrix, clip and opacity hold; its pen, brush
/// and font are left as they were.
void paint(QPainter& painter, const ShapeList& list, const QString& family);

/// Where a label's letters stand, in the list's pixels.
QRectF label_rect(const Label& label, const QString& family);

/// Draws one label with its halo.
void paint_label(QPainter& painter, const Label& label, const QString& family);

}  // namespace kneerail::elevation
