#pragma once

// The small signs on keys and cells, drawn from the trade: a gauge on a coating, a screw that is
// turned, the step to the next slot, the last digit taken back, two tube ends joined or apart. Each
// is drawn in a box of 48 x 40 and scaled to the item.

#include <QtQml/qqmlregistration.h>
#include <QColor>

#include "mobile/controls/painted_item.h"

class KeySign : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(Kind kind MEMBER kind_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QColor chalk MEMBER chalk_ NOTIFY lookChanged)
  Q_PROPERTY(QColor chalkLight MEMBER chalk_light_ NOTIFY lookChanged)

 public:
  enum Kind { Coating, Torque, NextSlot, Erase, JointApart, JointClosed, Light };
  Q_ENUM(Kind)

  explicit KeySign(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  Kind kind_ = Coating;
  QColor ink_ = Qt::black;
  QColor chalk_ = Qt::blue;
  QColor chalk_light_ = Qt::white;
};
