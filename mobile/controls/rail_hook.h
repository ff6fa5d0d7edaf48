#pragma once

// The hook by which a tag hangs on a tube: an open ring over the tube, its shaft, and the hole in
// the tag. The item reaches from the top of the tube to below the hole.

#include <QtQml/qqmlregistration.h>
#include <QColor>

#include "mobile/controls/painted_item.h"

class RailHook : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QColor wire MEMBER wire_ NOTIFY lookChanged)
  Q_PROPERTY(QColor hole MEMBER hole_ NOTIFY lookChanged)
  Q_PROPERTY(qreal holeRadius MEMBER hole_radius_ NOTIFY lookChanged)
  Q_PROPERTY(qreal stroke MEMBER stroke_ NOTIFY lookChanged)

 public:
  explicit RailHook(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  QColor wire_ = Qt::black;
  QColor hole_ = Qt::white;
  qreal hole_radius_ = 3.4;
  qreal stroke_ = 2;
};
