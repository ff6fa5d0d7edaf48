#include "mobile/controls/time_tape.h"

#include <QFontMetricsF>
#include <QMouseEvent>
#include <QPainter>
#include <QTouchEvent>
#include <algorithm>
#include <cmath>

namespace {

constexpr int hour = 60;
constexpr qreal slide_strokes = 14;  // its width in strokes
constexpr qreal beyond_strokes = 4;  // it stands over the tape above and below

}  // namespace

TimeTape::TimeTape(QQuickItem* parent) : PaintedItem(parent) {
  setAcceptedMouseButtons(Qt::LeftButton);
  setAcceptTouchEvents(true);
  setKeepMouseGrab(true);
  setKeepTouchGrab(true);
  connect(this, &TimeTape::lookChanged, this, [this] { update(); });
}

void TimeTape::move(int steps) {
  emit moved(std::clamp(minutes_ + steps * step_, 0, most_));
}

/// The slide stays on the tape whole.
qreal TimeTape::across(int minutes) const {
  const qreal side = slide_strokes * stroke_ / 2;
  return side + (width() - 2 * side) * minutes / std::max(1, length_);
}

void TimeTape::move_to(qreal x) {
  const qreal side = slide_strokes * stroke_ / 2;
  const qreal share = (x - side) / std::max<qreal>(1, width() - 2 * side);
  const int steps = static_cast<int>(std::lround(share * length_ / std::max(1, step_)));
  const int there = std::clamp(steps * step_, 0, most_);
  if (there != minutes_) emit moved(there);
}

void TimeTape::mousePressEvent(QMouseEvent* event) {
  move_to(event->position().x());
}

void TimeTape::mouseMoveEvent(QMouseEvent* event) {
  move_to(event->position().x());
}

/// One finger moves it; more are rain or a palm.
void TimeTape::touchEvent(QTouchEvent* event) {
  event->accept();
  if (event->type() == QEvent::TouchCancel || event->points().size() != 1) return;
  move_to(event->points().front().position().x());
}

void TimeTape::paint(QPainter* painter) {
  if (width() <= slide_strokes * stroke_ || height() <= 0) return;
  const qreal beyond = beyond_strokes * stroke_;
  const QRectF tape(stroke_ / 2, beyond, width() - stroke_, height() - 2 * beyond);
  painter->setPen(Qt::NoPen);
  painter->fillRect(tape, empty_);
  QRectF part = tape;
  part.setRight(across(minutes_));
  painter->fillRect(part, filled_);
  if (most_ < length_) {
    part = tape;
    part.setLeft(across(most_));
    painter->fillRect(part, cut_off_);
  }
  paint_hours(*painter, tape);
  painter->setBrush(Qt::NoBrush);
  painter->setPen(QPen(edge_, stroke_));
  painter->drawRect(tape);
  paint_slide(*painter);
}

void TimeTape::paint_hours(QPainter& painter, const QRectF& tape) const {
  const QFontMetricsF metrics(hour_font_);
  painter.setFont(hour_font_);
  painter.setPen(QPen(ink_, stroke_ * 0.9));
  for (int at = 0; at <= length_; at += hour / 2) {
    const bool whole = at % hour == 0;
    const qreal x = across(at);
    const qreal tall = tape.height() * (whole ? 0.42 : 0.22);
    painter.drawLine(QPointF(x, tape.bottom()), QPointF(x, tape.bottom() - tall));
    if (!whole) continue;
    const QString text = tr("%1 h").arg(at / hour);
    if (x + metrics.horizontalAdvance(text) + stroke_ * 3 > tape.right()) continue;
    painter.drawText(QPointF(x + stroke_ * 2.5, tape.top() + stroke_ * 2 + metrics.ascent()), text);
  }
}

void TimeTape::paint_slide(QPainter& painter) const {
  const qreal half = slide_strokes * stroke_ / 2;
  const qreal x = across(minutes_);
  painter.fillRect(QRectF(x - half, 0, 2 * half, height()), slide_);
  painter.setPen(QPen(grip_, stroke_));
  for (const int line : {-1, 0, 1}) {
    const qreal at = x + line * stroke_ * 2.5;
    painter.drawLine(QPointF(at, height() * 0.34), QPointF(at, height() * 0.66));
  }
}
