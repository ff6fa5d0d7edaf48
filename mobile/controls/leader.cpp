#include "mobile/controls/leader.h"

#include <QPainter>

namespace {

constexpr qreal dot_strokes = 2;      // the dot's radius, in strokes
constexpr qreal straight_part = 0.3;  // of the way down before it slants

}  // namespace

Leader::Leader(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &Leader::placeChanged, this, &Leader::lay);
  connect(this, &Leader::lookChanged, this, &Leader::lay);
}

void Leader::lay() {
  const qreal room = stroke_ * (dot_strokes + 1);
  const QRectF box = QRectF(from_, to_).normalized().adjusted(-room, -room, room, room);
  setPosition(box.topLeft());
  setSize(box.size());
  update();
}

void Leader::paint(QPainter* painter) {
  const QPointF start = from_ - position();
  const QPointF end = to_ - position();
  const QPointF knee(start.x(), start.y() + (end.y() - start.y()) * straight_part);
  painter->setPen(QPen(ink_, stroke_, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  const QPointF points[] = {start, knee, end};
  painter->drawPolyline(points, 3);
  painter->setPen(Qt::NoPen);
  painter->setBrush(ink_);
  painter->drawEllipse(end, stroke_ * dot_strokes, stroke_ * dot_strokes);
}
