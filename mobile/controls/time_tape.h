#pragma once

// The time there is, as a surveyor's tape of hours with a slide on it: a finger or a key moves the
// slide in steps. What lies beyond the hours of access is cut off.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QFont>

#include "mobile/controls/painted_item.h"

class TimeTape : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int minutes MEMBER minutes_ NOTIFY lookChanged)  ///< where the slide stands
  Q_PROPERTY(int most MEMBER most_ NOTIFY lookChanged)        ///< it goes no further
  Q_PROPERTY(int length MEMBER length_ NOTIFY lookChanged)    ///< of the whole tape, minutes
  Q_PROPERTY(int step MEMBER step_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QColor edge MEMBER edge_ NOTIFY lookChanged)
  Q_PROPERTY(QColor filled MEMBER filled_ NOTIFY lookChanged)
  Q_PROPERTY(QColor empty MEMBER empty_ NOTIFY lookChanged)
  Q_PROPERTY(QColor cutOff MEMBER cut_off_ NOTIFY lookChanged)
  Q_PROPERTY(QColor slide MEMBER slide_ NOTIFY lookChanged)
  Q_PROPERTY(QColor grip MEMBER grip_ NOTIFY lookChanged)
  Q_PROPERTY(QFont hourFont MEMBER hour_font_ NOTIFY lookChanged)
  Q_PROPERTY(qreal stroke MEMBER stroke_ NOTIFY lookChanged)

 public:
  explicit TimeTape(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

  /// Steps up or down from where it stands.
  Q_INVOKABLE void move(int steps);

 signals:
  void lookChanged();
  void moved(int minutes);  ///< the hand wants it there

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void touchEvent(QTouchEvent* event) override;

 private:
  [[nodiscard]] qreal across(int minutes) const;
  void move_to(qreal x);
  void paint_hours(QPainter& painter, const QRectF& tape) const;
  void paint_slide(QPainter& painter) const;

  int minutes_ = 0;
  int most_ = 480;
  int length_ = 480;
  int step_ = 5;
  QColor ink_ = Qt::black;
  QColor edge_ = Qt::black;
  QColor filled_ = Qt::yellow;
  QColor empty_ = Qt::white;
  QColor cut_off_ = Qt::lightGray;
  QColor slide_ = Qt::blue;
  QColor grip_ = Qt::white;
  QFont hour_font_;
  qreal stroke_ = 2;
};
