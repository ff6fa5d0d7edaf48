#include "mobile/picture/picture_marks.h"

#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "mobile/picture/photograph_marks.h"

namespace {

constexpr double whole = 10'000;  // of width and height
constexpr int places_most = 46;   // of a ring that was stroked
constexpr qreal tap_strokes = 4;  // a finger that went no further only tapped
constexpr qreal tap_ring = 0.11;  // of the picture's smaller side
const QColor light(255, 255, 255);
const QColor dark(0, 0, 0, 140);

QPolygonF places_of(const kneerail::Mark& mark, const QSizeF& size) {
  QPolygonF places;
  for (const auto& point : mark.points)
    places << QPointF(point.x / whole * size.width(), point.y / whole * size.height());
  return places;
}

QPainterPath smooth(const QPolygonF& places) {
  QPainterPath path;
  if (places.size() < 3) return path;
  const auto between = [&](qsizetype i) {
    return (places[i % places.size()] + places[(i + 1) % places.size()]) / 2;
  };
  path.moveTo(between(0));
  for (qsizetype i = 1; i <= places.size(); ++i) path.quadTo(places[i % places.size()], between(i));
  return path;
}

QPainterPath arrow(const QPointF& tail, const QPointF& head, qreal stroke) {
  QPainterPath path;
  const QPointF along = head - tail;
  const qreal length = std::hypot(along.x(), along.y());
  if (length < 1) return path;
  const QPointF way = along / length;
  const QPointF across(-way.y(), way.x());
  const qreal barb = stroke * 4;
  path.moveTo(tail);
  path.lineTo(head);
  path.moveTo(head - way * barb + across * barb * 0.7);
  path.lineTo(head);
  path.lineTo(head - way * barb - across * barb * 0.7);
  return path;
}

QPainterPath path_of(const kneerail::Mark& mark, const QSizeF& size, qreal stroke) {
  using kneerail::MarkShape;
  const QPolygonF places = places_of(mark, size);
  QPainterPath path;
  if (mark.shape == MarkShape::circle && places.size() >= 2) {
    const QPointF reach = places[1] - places[0];
    const qreal radius = std::hypot(reach.x(), reach.y());
    path.addEllipse(places[0], radius, radius);
  } else if (mark.shape == MarkShape::outline) {
    path = smooth(places);
  } else if (mark.shape == MarkShape::arrow && places.size() >= 2) {
    path = arrow(places[0], places[1], stroke);
  } else {
    path.addPolygon(places);
  }
  return path;
}

void paint_path(QPainter& painter, const QPainterPath& path, qreal stroke) {
  painter.setBrush(Qt::NoBrush);
  constexpr qreal dark_share = 10.0 / 6;
  for (const auto& [ink, width] :
       {std::pair(dark, stroke * dark_share), std::pair(light, stroke)}) {
    painter.setPen(QPen(ink, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
  }
}

}  // namespace

PictureMarks::PictureMarks(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &PictureMarks::marksChanged, this, [this] { update(); });
}

void PictureMarks::set_writes(bool writes) {
  if (writes == writes_) return;
  writes_ = writes;
  setAcceptedMouseButtons(writes ? Qt::LeftButton : Qt::NoButton);
  emit marksChanged();
}

void PictureMarks::paint(QPainter* painter) {
  for (const QString& line : marks_.split('\n', Qt::SkipEmptyParts))
    if (const auto mark = kneerail::mark_of_text(line))
      paint_path(*painter, path_of(*mark, size(), stroke_), stroke_);
  if (finger_.size() < 2) return;
  QPainterPath path;
  if (pointing_)
    path = arrow(finger_.first(), finger_.last(), stroke_);
  else
    path.addPolygon(finger_);
  paint_path(*painter, path, stroke_);
}

QString PictureMarks::place(const QPointF& at) const {
  const auto share = [](qreal part, qreal all) {
    return static_cast<int>(std::clamp(std::round(part / all * whole), 0.0, whole));
  };
  return QStringLiteral(" %1 %2").arg(share(at.x(), width())).arg(share(at.y(), height()));
}

QString PictureMarks::mark_of(const QPolygonF& stroke) const {
  const QRectF box = stroke.boundingRect();
  const bool tapped = std::hypot(box.width(), box.height()) < stroke_ * tap_strokes;
  const qreal reach = std::min(width(), height()) * tap_ring;
  const QPointF at = stroke.last();
  if (pointing_) {
    const QPointF tail =
        tapped ? at + QPointF(at.x() > width() / 2 ? -reach : reach, reach) * 1.5 : stroke.first();
    return QStringLiteral("arrow") + place(tail) + place(at);
  }
  if (tapped) {
    const QPointF side(at.x() + reach > width() ? -reach : reach, 0);
    return QStringLiteral("circle") + place(at) + place(at + side);
  }
  const qsizetype step = std::max<qsizetype>(1, (stroke.size() + places_most - 1) / places_most);
  QString mark = QStringLiteral("outline");
  for (qsizetype i = 0; i < stroke.size(); i += step) mark += place(stroke[i]);
  return mark;
}

void PictureMarks::add_place(const QPointF& at) {
  finger_ << QPointF(std::clamp(at.x(), 0.0, width()), std::clamp(at.y(), 0.0, height()));
  update();
}

void PictureMarks::mousePressEvent(QMouseEvent* event) {
  finger_.clear();
  add_place(event->position());
  event->accept();
}

void PictureMarks::mouseMoveEvent(QMouseEvent* event) {
  add_place(event->position());
}

void PictureMarks::mouseReleaseEvent(QMouseEvent* event) {
  add_place(event->position());
  const QString mark = mark_of(finger_);
  finger_.clear();
  update();
  emit drawn(mark);
}

void PictureMarks::mouseUngrabEvent() {
  finger_.clear();
  update();
}
