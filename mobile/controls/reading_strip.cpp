#include "mobile/controls/reading_strip.h"

#include <QFontMetricsF>
#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace {

/// The round step that cuts `top` into at most six: 1, 2, 5 or 4 times a power of ten.
qreal round_step(qreal top) {
  qreal power = 1;
  while (true) {
    for (const qreal step : {1.0, 2.0, 4.0, 5.0}) {
      if (top / (step * power) <= 4) return step * power;
    }
    power *= 10;
  }
}

qreal mean(const QList<qreal>& readings) {
  return std::accumulate(readings.begin(), readings.end(), qreal{0}) /
         static_cast<qreal>(readings.size());
}

}  // namespace

ReadingStrip::ReadingStrip(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &ReadingStrip::readingsChanged, this, [this] { update(); });
  connect(this, &ReadingStrip::lookChanged, this, [this] { update(); });
}

qreal ReadingStrip::scale_end() const {
  qreal most = std::max(limit_, qreal{30});
  for (const qreal reading : today_) most = std::max(most, reading);
  for (const qreal reading : last_) most = std::max(most, reading);
  const qreal step = round_step(most * 1.04);
  return std::ceil(most * 1.04 / step) * step;
}

qreal ReadingStrip::across(qreal value) const {
  const qreal side = dot_radius_ * 1.6;
  return side + value / scale_end() * (width() - 2 * side);
}

qreal ReadingStrip::axis() const {
  return height() - QFontMetricsF(font_).height() - dot_radius_;
}

void ReadingStrip::paint(QPainter* painter) {
  if (width() < 8 * dot_radius_ || height() < 4 * dot_radius_) return;
  paint_axis(*painter);
  paint_limit(*painter);
  QPen ghost(ghost_, dot_radius_ * 0.36);
  ghost.setDashPattern({1.5, 1.5});
  paint_dots(*painter, last_, false);
  paint_mean(*painter, last_, ghost);
  paint_dots(*painter, today_, true);
  paint_mean(*painter, today_, QPen(chalk_, dot_radius_ * 0.47));
}

void ReadingStrip::paint_axis(QPainter& painter) const {
  const qreal y = axis();
  const qreal tick = dot_radius_;
  painter.setPen(QPen(ink_, dot_radius_ * 0.25));
  painter.setFont(font_);
  painter.drawLine(QPointF(across(0), y), QPointF(across(scale_end()), y));
  const qreal step = round_step(scale_end());
  const QFontMetricsF metrics(font_);
  for (int place = 0; place * step / 2 <= scale_end() + 1e-9; ++place) {
    const qreal value = place * step / 2;
    painter.drawLine(QPointF(across(value), y), QPointF(across(value), y + tick));
    if (place % 2 != 0) continue;
    const QString text = QLocale().toString(value, 'f', 0);
    const qreal wide = metrics.horizontalAdvance(text);
    const qreal left = std::clamp(across(value) - wide / 2, across(0), across(scale_end()) - wide);
    painter.drawText(QPointF(left, y + tick + metrics.ascent()), text);
  }
}

void ReadingStrip::paint_dots(QPainter& painter, const QList<qreal>& readings, bool filled) const {
  const qreal low = axis() - dot_radius_ * (filled ? 4.4 : 2.1);
  for (qsizetype place = 0; place < readings.size(); ++place) {
    // Dots that would cover the one before step up a little.
    const qreal x = across(readings[place]);
    qreal y = low;
    for (qsizetype before = 0; before < place; ++before) {
      if (std::abs(across(readings[before]) - x) < dot_radius_ * 2 && place % 2 == 1) {
        y = low - dot_radius_ * 0.6;
      }
    }
    const bool newest = filled && place + 1 == readings.size();
    if (newest) y *= drop_;
    painter.setPen(filled ? QPen(Qt::NoPen) : QPen(ghost_, dot_radius_ * 0.36));
    painter.setBrush(filled ? QBrush(chalk_) : QBrush(Qt::NoBrush));
    painter.drawEllipse(QPointF(x, y), dot_radius_, dot_radius_);
  }
}

void ReadingStrip::paint_mean(QPainter& painter, const QList<qreal>& readings,
                              const QPen& pen) const {
  if (readings.isEmpty()) return;
  painter.setPen(pen);
  const qreal x = across(mean(readings));
  painter.drawLine(QPointF(x, dot_radius_), QPointF(x, axis()));
}

void ReadingStrip::paint_limit(QPainter& painter) const {
  if (limit_ <= 0) return;
  const qreal x = across(limit_);
  const qreal top_edge = dot_radius_ * 0.7;
  painter.setPen(QPen(rust_, dot_radius_ * 0.44));
  painter.drawLine(QPointF(x, top_edge), QPointF(x, axis()));
  painter.setPen(Qt::NoPen);
  painter.setBrush(rust_);
  const QPointF pointer[] = {{x - dot_radius_ * 1.1, top_edge},
                             {x + dot_radius_ * 1.1, top_edge},
                             {x, top_edge + dot_radius_ * 1.6}};
  painter.drawPolygon(pointer, 3);
}
