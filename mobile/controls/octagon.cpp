#include "mobile/controls/octagon.h"

#include <QPainter>
#include <QPainterPath>

namespace {

QPainterPath outline(const QRectF& box, qreal cut, bool cut_below) {
  const qreal below = cut_below ? cut : 0;
  QPainterPath path;
  path.moveTo(box.left() + cut, box.top());
  path.lineTo(box.right() - cut, box.top());
  path.lineTo(box.right(), box.top() + cut);
  path.lineTo(box.right(), box.bottom() - below);
  path.lineTo(box.right() - below, box.bottom());
  path.lineTo(box.left() + below, box.bottom());
  path.lineTo(box.left(), box.bottom() - below);
  path.lineTo(box.left(), box.top() + cut);
  path.closeSubpath();
  return path;
}

}  // namespace

Octagon::Octagon(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &Octagon::lookChanged, this, [this] { update(); });
}

void Octagon::paint(QPainter* painter) {
  const qreal half = edge_width_ / 2;
  const QRectF box = boundingRect().adjusted(half, half, -half, -half);
  if (box.isEmpty()) return;
  QPen pen(edge_, edge_width_);
  pen.setJoinStyle(Qt::MiterJoin);
  if (dashed_) pen.setDashPattern({4, 3});
  painter->setPen(pen);
  painter->setBrush(fill_);
  painter->drawPath(outline(box, cut_, cut_below_));
  if (foot_ > 0) {
    const qreal y = box.bottom() + half - foot_ / 2;
    painter->setPen(QPen(edge_, foot_, Qt::SolidLine, Qt::FlatCap));
    painter->drawLine(QPointF(box.left() + cut_, y), QPointF(box.right() - cut_, y));
  }
  painter->setBrush(Qt::NoBrush);
  if (double_edge_) {
    const qreal in = edge_width_ * 2;
    painter->setPen(QPen(edge_, edge_width_ * 0.75));
    painter->drawPath(outline(box.adjusted(in, in, -in, -in), cut_ * 0.8, cut_below_));
  }
  if (focus_ring_) {
    const qreal in = edge_width_ * 2.5;
    painter->setPen(QPen(ring_, edge_width_ * 1.5));
    painter->drawPath(outline(box.adjusted(in, in, -in, -in), cut_ * 0.8, cut_below_));
  }
}
