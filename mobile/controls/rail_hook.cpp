#include "mobile/controls/rail_hook.h"

#include <QPainter>
#include <QPainterPath>

RailHook::RailHook(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &RailHook::lookChanged, this, [this] { update(); });
}

void RailHook::paint(QPainter* painter) {
  const QRectF box = boundingRect();
  const qreal middle = box.center().x();
  const qreal radius = box.width() / 2 - stroke_;
  QPen pen(wire_, stroke_, Qt::SolidLine, Qt::RoundCap);
  painter->setPen(pen);
  // Over the tube: a bow.
  const QRectF bow(middle - radius, stroke_, 2 * radius, 2.6 * radius);
  painter->drawArc(bow, 0, 180 * 16);
  const QPointF hole(middle, box.bottom() - hole_radius_ - stroke_ / 2);
  painter->drawLine(QPointF(middle, hole.y() - hole_radius_ * 3.2),
                    QPointF(middle, hole.y() - hole_radius_));
  painter->setPen(QPen(wire_, stroke_ * 0.75));
  painter->setBrush(hole_);
  painter->drawEllipse(hole, hole_radius_, hole_radius_);
}
