#pragma once

// The leader from a note to the part it speaks of: straight down from the note, then slanting to
// the point, which it marks. Set `from` and `to` in the parent's coordinates; the item lays itself
// round them.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QPointF>

#include "mobile/controls/painted_item.h"

class Leader : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QPointF from MEMBER from_ NOTIFY placeChanged)
  Q_PROPERTY(QPointF to MEMBER to_ NOTIFY placeChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(qreal stroke MEMBER stroke_ NOTIFY lookChanged)

 public:
  explicit Leader(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void placeChanged();
  void lookChanged();

 private:
  void lay();

  QPointF from_;
  QPointF to_;
  QColor ink_ = Qt::black;
  qreal stroke_ = 2.4;
};
