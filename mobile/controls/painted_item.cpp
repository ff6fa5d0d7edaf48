#include "mobile/controls/painted_item.h"

#include <QImage>
#include <QPainter>
#include <QQuickWindow>
#include <QSGImageNode>
#include <cmath>

PaintedItem::PaintedItem(QQuickItem* parent) : QQuickItem(parent) {
  setFlag(ItemHasContents);
}

void PaintedItem::itemChange(ItemChange change, const ItemChangeData& data) {
  if (change == ItemDevicePixelRatioHasChanged) update();
  QQuickItem::itemChange(change, data);
}

QSGNode* PaintedItem::updatePaintNode(QSGNode* old, UpdatePaintNodeData* /*data*/) {
  delete old;  // with its texture
  const qreal ratio = window()->effectiveDevicePixelRatio();
  const QSize pixels(static_cast<int>(std::ceil(width() * ratio)),
                     static_cast<int>(std::ceil(height() * ratio)));
  if (pixels.isEmpty()) return nullptr;
  QImage image(pixels, QImage::Format_ARGB32_Premultiplied);
  image.setDevicePixelRatio(ratio);
  image.fill(Qt::transparent);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  paint(&painter);
  painter.end();
  QSGImageNode* node = window()->createImageNode();
  node->setOwnsTexture(true);
  node->setTexture(window()->createTextureFromImage(image, QQuickWindow::TextureCanUseAtlas));
  node->setRect({{}, QSizeF(pixels) / ratio});
  node->setFiltering(QSGTexture::Linear);
  return node;
}
