#include "mobile/controls/torque_scale.h"

#include <QFontMetricsF>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace {

/// Between two numbers: a third of the scale, rounded up to a whole tick.
int number_step(qreal target) {
  return std::max(1, static_cast<int>(std::ceil(target / 3)));
}

/// Between two ticks: about twelve on the scale.
int tick_step(qreal target) {
  return std::max(1, qRound(target / 12));
}

QString in_words(qreal value) {
  return QLocale().toString(value, 'f', value == std::floor(value) ? 0 : 1);
}

}  // namespace

TorqueScale::TorqueScale(QQuickItem* parent) : PaintedItem(parent) {
  setAcceptedMouseButtons(Qt::LeftButton);
  setKeepMouseGrab(true);
  connect(this, &TorqueScale::scaleChanged, this, [this] { update(); });
  connect(this, &TorqueScale::lookChanged, this, [this] { update(); });
  connect(this, &TorqueScale::valueChanged, this, [this] { update(); });
}

void TorqueScale::set_value(qreal value) {
  const qreal kept = value < 0 ? -1 : std::min(value, target_);
  if (kept == value_) return;
  value_ = kept;
  emit valueChanged();
}

void TorqueScale::step(int by) {
  if (value_ < 0)
    set_value(std::floor(target_ / 2));
  else
    set_value(std::max(qreal{0}, by < 0 ? std::ceil(value_) + by : std::floor(value_) + by));
  emit settled(value_);
}

void TorqueScale::mousePressEvent(QMouseEvent* event) {
  set_value(at(event->position().x()));
}

void TorqueScale::mouseMoveEvent(QMouseEvent* event) {
  set_value(at(event->position().x()));
}

void TorqueScale::mouseReleaseEvent(QMouseEvent* event) {
  set_value(at(event->position().x()));
  emit settled(value_);
}

qreal TorqueScale::side() const {
  return stroke_ * 10;
}

qreal TorqueScale::across(qreal newton_metres) const {
  return side() + newton_metres / std::max(qreal{1}, target_) * (width() - 2 * side());
}

qreal TorqueScale::at(qreal x) const {
  const qreal wide = std::max(qreal{1}, width() - 2 * side());
  const qreal there = std::clamp((x - side()) / wide * target_, qreal{0}, target_);
  const qreal whole = std::round(there);
  return whole > target_ || std::abs(there - target_) < std::abs(there - whole) ? target_ : whole;
}

qreal TorqueScale::axis() const {
  return height() - QFontMetricsF(tick_font_).height() - stroke_ * 6;
}

void TorqueScale::paint(QPainter* painter) {
  if (width() <= 2 * side() || height() <= 0) return;
  paint_ticks(*painter);
  if (lowest_ > 0) paint_lowest(*painter);
  if (value_ >= 0) paint_mark(*painter);
}

void TorqueScale::paint_ticks(QPainter& painter) const {
  const qreal y = axis();
  painter.setPen(QPen(ink_, stroke_ * 1.2));
  painter.drawLine(QPointF(across(0), y), QPointF(across(target_), y));
  painter.setPen(QPen(ink_, stroke_ * 0.9));
  painter.setFont(tick_font_);
  const int numbers = number_step(target_);
  for (int value = 0; value < target_; ++value) {
    if (value % numbers == 0 && target_ - value >= numbers / 2)
      paint_number(painter, value);
    else if (value % tick_step(target_) == 0)
      painter.drawLine(QPointF(across(value), y), QPointF(across(value), y - stroke_ * 4));
  }
  paint_number(painter, target_);
}

/// A long tick with its number.
void TorqueScale::paint_number(QPainter& painter, qreal value) const {
  const QFontMetricsF metrics(tick_font_);
  const qreal y = axis();
  const QString text = in_words(value);
  painter.setPen(ink2_);
  painter.drawText(QPointF(across(value) - metrics.horizontalAdvance(text) / 2,
                           y + stroke_ * 3 + metrics.ascent()),
                   text);
  painter.setPen(QPen(ink_, stroke_ * 0.9));
  painter.drawLine(QPointF(across(value), y), QPointF(across(value), y - stroke_ * 7));
}

void TorqueScale::paint_lowest(QPainter& painter) const {
  QPen pen(rust_, stroke_ * 1.2, Qt::CustomDashLine, Qt::FlatCap);
  pen.setDashPattern({2, 1.3});
  painter.setPen(pen);
  const qreal x = across(lowest_);
  painter.drawLine(QPointF(x, stroke_ * 4), QPointF(x, axis()));
  painter.setFont(tick_font_);
  const QFontMetricsF metrics(tick_font_);
  // On the side where the mark does not stand.
  const qreal wide = metrics.horizontalAdvance(lowest_word_);
  const bool right = value_ >= 0 && value_ < lowest_ && x + stroke_ * 3 + wide < width();
  painter.drawText(
      QPointF(right ? x + stroke_ * 3 : x - stroke_ * 3 - wide, stroke_ * 4 + metrics.ascent()),
      lowest_word_);
}

void TorqueScale::paint_mark(QPainter& painter) const {
  const QFontMetricsF metrics(mark_font_);
  const QString text = in_words(value_);
  const qreal half = std::max(metrics.horizontalAdvance(text) / 2 + stroke_ * 3, stroke_ * 8.5);
  const qreal x = across(value_);
  const qreal foot = axis() - stroke_;
  const qreal shoulder = foot - stroke_ * 9;
  const qreal top = std::max(stroke_ * 3, shoulder - metrics.height());
  painter.setPen(Qt::NoPen);
  painter.setBrush(chalk_);
  const QPointF plate[] = {
      {x - half, top}, {x + half, top}, {x + half, shoulder}, {x, foot}, {x - half, shoulder}};
  painter.drawPolygon(plate, 5);
  painter.setFont(mark_font_);
  painter.setPen(paper_);
  painter.drawText(QRectF(x - half, top, 2 * half, shoulder - top + stroke_ * 2), Qt::AlignCenter,
                   text);
}
