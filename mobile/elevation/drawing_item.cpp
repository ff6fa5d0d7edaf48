#include "mobile/elevation/drawing_item.h"

#include <QPainter>
#include <QSGTransformNode>
#include <utility>

#include "mobile/elevation/shape_nodes.h"
#include "mobile/elevation/shape_painter.h"

namespace elevation = kneerail::elevation;

DrawingItem::DrawingItem(QQuickItem* parent)
    : QQuickItem(parent), own_tokens_(std::make_unique<Tokens>()) {
  setFlag(ItemHasContents);
}

DrawingItem::~DrawingItem() = default;

const Tokens& DrawingItem::tokens() const {
  return tokens_ != nullptr ? *tokens_ : *own_tokens_;
}

double DrawingItem::drawn_px(double pixels) const {
  return tokens().drawn(pixels);
}

void DrawingItem::componentComplete() {
  QQuickItem::componentComplete();
  Tokens* tokens = Tokens::of(*this);
  if (tokens_ == nullptr && tokens != nullptr) use_tokens(tokens);
}

void DrawingItem::use_tokens(Tokens* tokens) {
  if (tokens_ != nullptr) tokens_->disconnect(this);
  tokens_ = tokens;
  connect(tokens, &Tokens::themeChanged, this, [this] { tokens_changed(false); });
  connect(tokens, &Tokens::sizesChanged, this, [this] { tokens_changed(true); });
  tokens_changed(true);
}

void DrawingItem::tokens_changed(bool /*sizes*/) {
  redraw();
}

void DrawingItem::geometryChange(const QRectF& now, const QRectF& before) {
  QQuickItem::geometryChange(now, before);
  if (now.size() != before.size()) redraw();
}

void DrawingItem::redraw() {
  dirty_ = true;
  update();
}

QSGNode* DrawingItem::updatePaintNode(QSGNode* old, UpdatePaintNodeData* /*data*/) {
  ++paints_;
  const QString family = tokens().text_family();
  if (elevation::is_painted(*window())) {
    auto* node = old == nullptr ? new elevation::PaintedNode(*window())
                                : static_cast<elevation::PaintedNode*>(old);
    if (std::exchange(dirty_, false)) painted_ = shapes();
    node->show(boundingRect(), [this, family, by = offset()](QPainter& painter) {
      painter.translate(by);
      elevation::paint(painter, painted_, family);
    });
    return node;
  }
  auto* node = old == nullptr ? new QSGTransformNode : static_cast<QSGTransformNode*>(old);
  if (std::exchange(dirty_, false) || old == nullptr) {
    while (QSGNode* child = node->firstChild()) {
      node->removeChildNode(child);
      delete child;
    }
    node->appendChildNode(elevation::shape_node(shapes(), *window(), family).release());
  }
  QMatrix4x4 matrix;
  matrix.translate(static_cast<float>(offset().x()), static_cast<float>(offset().y()));
  node->setMatrix(matrix);
  return node;
}
