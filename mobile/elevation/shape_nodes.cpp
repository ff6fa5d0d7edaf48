#include "mobile/elevation/shape_nodes.h"

#include <QPainter>
#include <QSGImageNode>
#include <QSGRendererInterface>
#include <QSGVertexColorMaterial>
#include <cmath>
#include <cstring>
#include <memory>

#include "mobile/elevation/shape_painter.h"
#include "mobile/elevation/triangles.h"

namespace kneerail::elevation {

namespace {

static_assert(sizeof(Vertex) == sizeof(QSGGeometry::ColoredPoint2D));

void add_label(QSGNode& parent, const Label& label, QQuickWindow& window, const QString& family) {
  constexpr double around_px = 4;
  const double ratio = window.effectiveDevicePixelRatio();
  QRectF rect = label_rect(label, family).adjusted(-around_px, 0, around_px, 0);
  rect = {std::floor(rect.x()), std::floor(rect.y()), std::ceil(rect.width()) + 1,
          std::ceil(rect.height()) + 1};
  if (rect.width() <= 0 || rect.height() <= 0) return;
  QImage image((rect.size() * ratio).toSize(), QImage::Format_ARGB32_Premultiplied);
  image.setDevicePixelRatio(ratio);
  image.fill(Qt::transparent);
  QPainter painter(&image);
  painter.translate(-rect.topLeft());
  paint_label(painter, label, family);
  painter.end();
  QSGImageNode* node = window.createImageNode();
  node->setTexture(window.createTextureFromImage(image, QQuickWindow::TextureCanUseAtlas));
  node->setOwnsTexture(true);
  node->setRect(rect);
  node->setFiltering(QSGTexture::Linear);
  parent.appendChildNode(node);
}

}  // namespace

bool is_painted(const QQuickWindow& window) {
  return window.rendererInterface()->graphicsApi() == QSGRendererInterface::Software;
}

std::unique_ptr<QSGGeometryNode> geometry_node(const ShapeList& list) {
  const std::vector<Vertex> vertices = triangles(list);
  auto node = std::make_unique<QSGGeometryNode>();
  auto* geometry = new QSGGeometry(QSGGeometry::defaultAttributes_ColoredPoint2D(),
                                   static_cast<int>(vertices.size()));
  geometry->setDrawingMode(QSGGeometry::DrawTriangles);
  if (!vertices.empty()) {
    std::memcpy(geometry->vertexData(), vertices.data(), vertices.size() * sizeof(Vertex));
  }
  node->setGeometry(geometry);
  node->setFlag(QSGNode::OwnsGeometry);
  auto* material = new QSGVertexColorMaterial;
  material->setFlag(QSGMaterial::Blending);
  node->setMaterial(material);
  node->setFlag(QSGNode::OwnsMaterial);
  return node;
}

std::unique_ptr<QSGNode> shape_node(const ShapeList& list, QQuickWindow& window,
                                    const QString& family) {
  auto node = std::make_unique<QSGNode>();
  if (!list.shapes.empty()) node->appendChildNode(geometry_node(list).release());
  for (const Label& label : list.labels) add_label(*node, label, window, family);
  return node;
}

void PaintedNode::show(const QRectF& rect, Draw draw) {
  rect_ = rect;
  draw_ = std::move(draw);
  markDirty(QSGNode::DirtyMaterial);
}

void PaintedNode::render(const RenderState* state) {
  auto* painter = static_cast<QPainter*>(
      window_.rendererInterface()->getResource(&window_, QSGRendererInterface::PainterResource));
  if (painter == nullptr || !draw_) return;
  // The region is what of the node has to be painted now: nothing of it, when a list clips it away.
  const QRegion* clip = state->clipRegion();
  if (clip != nullptr && clip->isEmpty()) return;
  painter->save();
  if (clip != nullptr) painter->setClipRegion(*clip, Qt::ReplaceClip);
  painter->setTransform(matrix()->toTransform());
  painter->setOpacity(inheritedOpacity());
  draw_(*painter);
  painter->restore();
}

}  // namespace kneerail::elevation
