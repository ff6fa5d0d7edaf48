#pragma once

// The marks on a picture: white over dark, so that they read on any picture, beside the picture and
// never in it. A finger draws another one: a ring around what it strokes, or an arrow to it.

#include <QtQml/qqmlregistration.h>
#include <QPointF>
#include <QPolygonF>

#include "mobile/controls/painted_item.h"

class PictureMarks : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  /// A line for each, its word and then its places in 1/10,000 of width and height, "circle 4200
  /// 5000 5200 5000".
  Q_PROPERTY(QString marks MEMBER marks_ NOTIFY marksChanged)
  Q_PROPERTY(qreal stroke MEMBER stroke_ NOTIFY marksChanged)     ///< px, of the white
  Q_PROPERTY(bool pointing MEMBER pointing_ NOTIFY marksChanged)  ///< an arrow, else a ring
  Q_PROPERTY(bool writes READ writes WRITE set_writes NOTIFY marksChanged)

 public:
  explicit PictureMarks(QQuickItem* parent = nullptr);

  [[nodiscard]] bool writes() const { return writes_; }
  void set_writes(bool writes);
  void paint(QPainter* painter) override;

 signals:
  void marksChanged();
  /// One more, as a line of `marks`.
  void drawn(const QString& mark);

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseUngrabEvent() override;

 private:
  [[nodiscard]] QString mark_of(const QPolygonF& stroke) const;
  [[nodiscard]] QString place(const QPointF& at) const;
  void add_place(const QPointF& at);

  QString marks_;
  qreal stroke_ = 6;
  bool pointing_ = false;
  bool writes_ = false;
  QPolygonF finger_;  ///< where it went, px
};
