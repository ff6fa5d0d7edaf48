#pragma once

// A name written with a finger, a pen or a mouse on a line. What was written is a picture for a
// record: ink on white, whatever the theme.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QPolygonF>
#include <vector>

#include "mobile/controls/painted_item.h"

class Signature : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(qreal stroke MEMBER stroke_ NOTIFY lookChanged)
  Q_PROPERTY(bool written READ written NOTIFY writtenChanged)

 public:
  explicit Signature(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

  [[nodiscard]] bool written() const { return !strokes_.empty(); }
  Q_INVOKABLE void wipe();
  /// PNG, twice the item's size; empty where nothing was written.
  Q_INVOKABLE [[nodiscard]] QByteArray picture() const;

 signals:
  void lookChanged();
  void writtenChanged();

 protected:
  void touchEvent(QTouchEvent* event) override;
  void touchUngrabEvent() override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;

 private:
  void begin(const QPointF& at);
  void go_on(const QPointF& at);
  void draw(QPainter& painter, const QColor& ink) const;

  QColor ink_ = Qt::black;
  qreal stroke_ = 3;
  std::vector<QPolygonF> strokes_;
  int finger_ = -1;  ///< the touch point that writes
};
