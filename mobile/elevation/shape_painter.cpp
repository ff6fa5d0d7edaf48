#include "mobile/elevation/shape_painter.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>

namespace kneerail::elevation {

namespace {

QFont font_of(const Label& label, const QString& family) {
  QFont font(family);
  font.setPixelSize(std::max(qRound(label.size_px), 1));
  font.setBold(label.bold);
  return font;
}

QPolygonF polygon(std::span<const Point> points) {
  QPolygonF polygon;
  polygon.reserve(static_cast<qsizetype>(points.size()));
  for (const Point& point : points) {
    polygon << QPointF(static_cast<double>(point.x), static_cast<double>(point.y));
  }
  return polygon;
}

void paint_strip(QPainter& painter, std::span<const Point> both) {
  const std::size_t side = both.size() / 2;
  QPolygonF ring = polygon(both.first(side));
  for (std::size_t i = both.size(); i > side; --i) {
    ring << QPointF(static_cast<double>(both[i - 1].x), static_cast<double>(both[i - 1].y));
  }
  painter.drawPolygon(ring, Qt::WindingFill);
}

void paint_line(QPainter& painter, std::span<const Point> way, const Shape& shape) {
  QPen pen(QColor::fromRgba(shape.color), static_cast<double>(shape.stroke.width_px), Qt::SolidLine,
           Qt::FlatCap, Qt::MiterJoin);
  pen.setMiterLimit(2);
  painter.setPen(pen);
  painter.setBrush(Qt::NoBrush);
  if (shape.stroke.on_px > 0 && shape.stroke.off_px > 0) {
    for (const auto& dash : dashes(way, shape.stroke)) painter.drawPolyline(polygon(dash));
  } else if (shape.stroke.closed) {
    painter.drawPolygon(polygon(way));
  } else {
    painter.drawPolyline(polygon(way));
  }
}

}  // namespace

void paint(QPainter& painter, const ShapeList& list, const QString& family) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  for (const Shape& shape : list.shapes) {
    const auto points = std::span(list.points).subspan(shape.first, shape.count);
    if (shape.kind == ShapeKind::line) {
      paint_line(painter, points, shape);
      continue;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor::fromRgba(shape.color));
    if (shape.kind == ShapeKind::strip) {
      paint_strip(painter, points);
    } else {
      painter.drawPolygon(polygon(points));
    }
  }
  for (const Label& label : list.labels) paint_label(painter, label, family);
  painter.restore();
}

QRectF label_rect(const Label& label, const QString& family) {
  const QFontMetricsF metrics(font_of(label, family));
  const double width = metrics.horizontalAdvance(label.text);
  double left = static_cast<double>(label.at.x);
  if (label.align & Qt::AlignHCenter) left -= width / 2;
  if (label.align & Qt::AlignRight) left -= width;
  return {left, static_cast<double>(label.at.y) - metrics.ascent(), width, metrics.height()};
}

void paint_label(QPainter& painter, const Label& label, const QString& family) {
  const QRectF rect = label_rect(label, family);
  const QPointF at(rect.left(), static_cast<double>(label.at.y));
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  if (qAlpha(label.halo) > 0) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor::fromRgba(label.halo));
    constexpr double around_px = 3;
    painter.drawRect(rect.adjusted(-around_px, 0, around_px, 0));
  }
  painter.setFont(font_of(label, family));
  painter.setPen(QColor::fromRgba(label.color));
  painter.drawText(at, label.text);
}

}  // namespace kneerail::elevation
