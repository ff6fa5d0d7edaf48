#pragma once

// The small signs on keys and cells, drawn from the trade: a gauge on a coating, a screw that is
// turned, the two faces of a wall, a probe at an hour of a tube, the step to the next slot, the
// last digit taken back, two tube ends joined or apart, a barrier board (chalkLight with bars in
// ink), three chevrons, a post that is pushed and stands, gives or moves. Each is drawn in a box
// of 48 x 40 and scaled to the item.

#include <QtQml/qqmlregistration.h>
#include <QColor>

#include "mobile/controls/painted_item.h"

class KeySign : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(Kind kind MEMBER kind_ NOTIFY lookChanged)
  Q_PROPERTY(int hour MEMBER hour_ NOTIFY lookChanged)  ///< of Probe, 0 to 11
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QColor chalk MEMBER chalk_ NOTIFY lookChanged)
  Q_PROPERTY(QColor chalkLight MEMBER chalk_light_ NOTIFY lookChanged)

 public:
  enum Kind {
    Coating,
    Torque,
    Wall,
    Probe,
    NextSlot,
    Erase,
    JointApart,
    JointClosed,
    Light,
    Board,
    Onward,
    Firm,
    Gives,
    Moves
  };
  Q_ENUM(Kind)

  explicit KeySign(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 private:
  Kind kind_ = Coating;
  int hour_ = 0;
  QColor ink_ = Qt::black;
  QColor chalk_ = Qt::blue;
  QColor chalk_light_ = Qt::white;
};
