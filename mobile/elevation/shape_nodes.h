#pragma once

// A list of shapes in the scene graph: one geometry node with coloured vertices for all of it, one
// texture for each label. The software renderer draws no geometry of ours; there a render node
// paints the same list.

#include <QQuickWindow>
#include <QRectF>
#include <QSGGeometryNode>
#include <QSGRenderNode>
#include <QString>
#include <functional>

#include "mobile/elevation/shapes.h"

namespace kneerail::elevation {

/// Whether this window draws by QPainter.
bool is_painted(const QQuickWindow& window);

/// Node of the shapes and labels of a list. Its letters are made for the window's pixels.
std::unique_ptr<QSGNode> shape_node(const ShapeList& list, QQuickWindow& window,
                                    const QString& family);
/// The shapes alone.
std::unique_ptr<QSGGeometryNode> geometry_node(const ShapeList& list);

/// Draws by QPainter what is handed to it, under the item's own matrix, clip and opacity.
class PaintedNode : public QSGRenderNode {
 public:
  using Draw = std::function<void(QPainter&)>;

  explicit PaintedNode(QQuickWindow& window) : window_(window) {}
  void show(const QRectF& rect, Draw draw);

  void render(const RenderState* state) override;
  [[nodiscard]] RenderingFlags flags() const override { return BoundedRectRendering; }
  [[nodiscard]] QRectF rect() const override { return rect_; }
  [[nodiscard]] StateFlags changedStates() const override { return {}; }

 private:
  QQuickWindow& window_;
  QRectF rect_;
  Draw draw_;
};

}  // namespace kneerail::elevation
