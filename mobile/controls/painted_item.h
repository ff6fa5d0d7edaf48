#pragma once

// What keys, signs and scales have in common: painted with smooth edges, the same under every
// renderer. Their pictures share one texture, so that a pad of keys is drawn at a stroke.

#include <QQuickItem>

class QPainter;

class PaintedItem : public QQuickItem {
  Q_OBJECT

 public:
  explicit PaintedItem(QQuickItem* parent = nullptr);

  /// Paints the item anew, from its corner, in its own pixels: when it is updated or resized.
  virtual void paint(QPainter* painter) = 0;

 protected:
  void itemChange(ItemChange change, const ItemChangeData& data) override;
  QSGNode* updatePaintNode(QSGNode* old, UpdatePaintNodeData* data) override;
};
