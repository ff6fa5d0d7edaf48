#include "mobile/controls/sleeve_tube.h"

#include <QPainter>
#include <algorithm>

namespace {

constexpr qreal sleeve_over_tube = 1.6;  // height of the sleeve, in tubes
constexpr qreal sleeve_wide = 1.15;      // its width, in tubes

}  // namespace

SleeveTube::SleeveTube(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &SleeveTube::lookChanged, this, [this] { update(); });
}

void SleeveTube::paint(QPainter* painter) {
  const qreal high = sleeve_ ? height() / sleeve_over_tube : height() - stroke_;
  const qreal joint = std::clamp(share_, qreal{0}, qreal{1}) * (width() - 2 * stroke_) + stroke_;
  const qreal top = (height() - high) / 2;
  const QRectF done(stroke_, top, joint - stroke_, high);
  const QRectF to_come(joint, top, width() - stroke_ - joint, high);
  if (to_come.width() > stroke_) paint_to_come(*painter, to_come);
  if (done.width() > 0) paint_done(*painter, done);
  if (!sleeve_) return;
  const qreal wide = high * sleeve_wide;
  const qreal left = std::clamp(joint - wide / 2, stroke_, width() - wide - stroke_);
  painter->setPen(QPen(edge_, stroke_));
  painter->setBrush(sleeve_fill_);
  painter->drawRoundedRect(QRectF(left, stroke_ / 2, wide, height() - stroke_), stroke_, stroke_);
}

void SleeveTube::paint_done(QPainter& painter, const QRectF& tube) const {
  const qreal od = tube.height();
  painter.fillRect(tube, zinc_);
  painter.fillRect(QRectF(tube.left(), tube.top() + 0.20 * od, tube.width(), 0.22 * od), light_);
  QColor shade = shade_;
  shade.setAlphaF(0.55F);
  painter.fillRect(QRectF(tube.left(), tube.top() + 0.80 * od, tube.width(), 0.20 * od), shade);
  painter.setPen(QPen(edge_, stroke_ * 0.8));
  painter.drawLine(tube.topLeft(), tube.topRight());
  painter.drawLine(tube.bottomLeft(), tube.bottomRight());
}

void SleeveTube::paint_to_come(QPainter& painter, const QRectF& tube) const {
  QPen pen(edge_, stroke_ * 0.8, Qt::CustomDashLine, Qt::FlatCap);
  pen.setDashPattern({5, 3});
  painter.setPen(pen);
  painter.drawLine(tube.topLeft(), tube.topRight());
  painter.drawLine(tube.bottomLeft(), tube.bottomRight());
  painter.drawLine(tube.topRight(), tube.bottomRight());
}
