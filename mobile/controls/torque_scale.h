#pragma once

// A straight scale from nothing to the torque the register asks for, on which a finger says about
// where the screw moved. There is no mark on it until a finger or a key puts one there. A
// mark stands at whole newton metres, or at the end of the scale.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QFont>

#include "mobile/controls/painted_item.h"

class TorqueScale : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(qreal target MEMBER target_ NOTIFY scaleChanged)             ///< N m, end of the scale
  Q_PROPERTY(qreal lowest MEMBER lowest_ NOTIFY scaleChanged)             ///< N m; 0: none is set
  Q_PROPERTY(qreal value READ value WRITE set_value NOTIFY valueChanged)  ///< N m; -1: no mark yet
  Q_PROPERTY(QString lowestWord MEMBER lowest_word_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ink2 MEMBER ink2_ NOTIFY lookChanged)
  Q_PROPERTY(QColor chalk MEMBER chalk_ NOTIFY lookChanged)
  Q_PROPERTY(QColor paper MEMBER paper_ NOTIFY lookChanged)
  Q_PROPERTY(QColor rust MEMBER rust_ NOTIFY lookChanged)
  Q_PROPERTY(QFont tickFont MEMBER tick_font_ NOTIFY lookChanged)
  Q_PROPERTY(QFont markFont MEMBER mark_font_ NOTIFY lookChanged)
  Q_PROPERTY(qreal stroke MEMBER stroke_ NOTIFY lookChanged)

 public:
  explicit TorqueScale(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

  [[nodiscard]] qreal value() const { return value_; }
  /// Kept inside 0..target; anything under 0 takes the mark away.
  void set_value(qreal value);

  /// One step down or up; from no mark: the middle of the scale.
  Q_INVOKABLE void step(int by);

 signals:
  void scaleChanged();
  void lookChanged();
  void valueChanged();
  void settled(qreal value);  ///< the finger is lifted, or a key moved it

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;

 private:
  [[nodiscard]] qreal side() const;
  [[nodiscard]] qreal across(qreal newton_metres) const;
  [[nodiscard]] qreal at(qreal x) const;
  [[nodiscard]] qreal axis() const;
  void paint_ticks(QPainter& painter) const;
  void paint_number(QPainter& painter, qreal value) const;
  void paint_lowest(QPainter& painter) const;
  void paint_mark(QPainter& painter) const;

  qreal target_ = 24;
  qreal lowest_ = 0;
  qreal value_ = -1;
  QString lowest_word_;
  QColor ink_ = Qt::black;
  QColor ink2_ = Qt::darkGray;
  QColor chalk_ = Qt::blue;
  QColor paper_ = Qt::white;
  QColor rust_ = Qt::red;
  QFont tick_font_;
  QFont mark_font_;
  qreal stroke_ = 2;
};
