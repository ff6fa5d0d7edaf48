#pragma once

// The octagon that keys, slots and tags are cut from: a sheet with cut corners, an edge inside its
// bounds, and a bar along the foot that says "can be pressed". Painted, so that it is the same
// under every renderer.

#include <QtQml/qqmlregistration.h>
#include <QColor>

#include "mobile/controls/painted_item.h"

class Octagon : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QColor fill MEMBER fill_ NOTIFY lookChanged)
  Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY lookChanged)
  Q_PROPERTY(qreal edgeWidth MEMBER edge_width_ NOTIFY lookChanged)
  Q_PROPERTY(qreal cut MEMBER cut_ NOTIFY lookChanged)
  Q_PROPERTY(qreal foot MEMBER foot_ NOTIFY lookChanged)              ///< 0: none
  Q_PROPERTY(bool doubleEdge MEMBER double_edge_ NOTIFY lookChanged)  ///< look again
  Q_PROPERTY(bool cutBelow MEMBER cut_below_ NOTIFY lookChanged)      ///< false: a tag
  Q_PROPERTY(bool dashed MEMBER dashed_ NOTIFY lookChanged)           ///< open, struck, skipped
  Q_PROPERTY(bool focusRing MEMBER focus_ring_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ring MEMBER ring_ NOTIFY lookChanged)

 public:
  explicit Octagon(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  QColor fill_ = Qt::white;
  QColor edge_ = Qt::black;
  QColor ring_ = Qt::black;
  qreal edge_width_ = 2;
  qreal cut_ = 9;
  qreal foot_ = 0;
  bool double_edge_ = false;
  bool cut_below_ = true;
  bool dashed_ = false;
  bool focus_ring_ = false;
};
