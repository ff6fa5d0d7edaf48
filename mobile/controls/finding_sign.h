#pragma once

// The signs of findings: the chalk ring, what holds people back or warns them, the barrier board,
// marks on a picture, a camera, a tick. All but the board are drawn in a box of 48 x 40 and scaled
// to the item; the board fills the item with its bars.

#include <QtQml/qqmlregistration.h>
#include <QColor>

#include "mobile/controls/painted_item.h"

class FindingSign : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(Kind kind MEMBER kind_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QColor chalk MEMBER chalk_ NOTIFY lookChanged)
  Q_PROPERTY(QColor tape MEMBER tape_ NOTIFY lookChanged)
  Q_PROPERTY(QColor tapeInk MEMBER tape_ink_ NOTIFY lookChanged)

 public:
  enum Kind {
    Finding,
    ClosedOff,
    Propped,
    Guarded,
    Taped,
    ClosedBelow,
    Reported,
    Ring,
    Arrow,
    Camera,
    Picture,
    Tick,
    Board
  };
  Q_ENUM(Kind)

  explicit FindingSign(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  void paint_board(QPainter& painter, const QRectF& board, qreal outline) const;
  void paint_measure(QPainter& painter) const;
  void paint_mark(QPainter& painter) const;

  Kind kind_ = Finding;
  QColor ink_ = Qt::black;
  QColor chalk_ = Qt::blue;
  QColor tape_ = Qt::yellow;
  QColor tape_ink_ = Qt::black;
};
