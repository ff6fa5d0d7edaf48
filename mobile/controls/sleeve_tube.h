#pragma once

// A tube that is being closed by a sleeve: solid as far as things are done, dashed for what is to
// come, the sleeve at the joint. Never a percentage without counts: the control beside it says
// them.

#include <QtQml/qqmlregistration.h>
#include <QColor>

#include "mobile/controls/painted_item.h"

class SleeveTube : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(qreal share MEMBER share_ NOTIFY lookChanged)  ///< 0..1
  Q_PROPERTY(bool sleeve MEMBER sleeve_ NOTIFY lookChanged)
  Q_PROPERTY(QColor zinc MEMBER zinc_ NOTIFY lookChanged)
  Q_PROPERTY(QColor light MEMBER light_ NOTIFY lookChanged)
  Q_PROPERTY(QColor shade MEMBER shade_ NOTIFY lookChanged)
  Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY lookChanged)
  Q_PROPERTY(QColor sleeveFill MEMBER sleeve_fill_ NOTIFY lookChanged)
  Q_PROPERTY(qreal stroke MEMBER stroke_ NOTIFY lookChanged)

 public:
  explicit SleeveTube(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  void paint_done(QPainter& painter, const QRectF& tube) const;
  void paint_to_come(QPainter& painter, const QRectF& tube) const;

  qreal share_ = 1;
  bool sleeve_ = true;
  QColor zinc_ = Qt::lightGray;
  QColor light_ = Qt::white;
  QColor shade_ = Qt::gray;
  QColor edge_ = Qt::black;
  QColor sleeve_fill_ = Qt::darkBlue;
  qreal stroke_ = 2;
};
