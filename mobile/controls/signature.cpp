#include "mobile/controls/signature.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <algorithm>

namespace {

constexpr int finer = 2;             // of the picture
constexpr std::size_t most = 400;    // strokes: more are no name
constexpr qsizetype longest = 5000;  // points in one

}  // namespace

Signature::Signature(QQuickItem* parent) : PaintedItem(parent) {
  setAcceptedMouseButtons(Qt::LeftButton);
  setAcceptTouchEvents(true);
  connect(this, &Signature::lookChanged, this, [this] { update(); });
}

void Signature::draw(QPainter& painter, const QColor& ink) const {
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(ink, stroke_, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  for (const QPolygonF& stroke : strokes_) {
    if (stroke.size() == 1)
      painter.drawPoint(stroke.front());
    else
      painter.drawPolyline(stroke);
  }
}

void Signature::paint(QPainter* painter) {
  draw(*painter, ink_);
}

void Signature::wipe() {
  if (!written()) return;
  strokes_.clear();
  update();
  emit writtenChanged();
}

QByteArray Signature::picture() const {
  if (!written()) return {};
  QImage image((size() * finer).toSize(), QImage::Format_Grayscale8);
  image.fill(Qt::white);
  {
    QPainter painter(&image);
    painter.scale(finer, finer);
    draw(painter, Qt::black);
  }
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "PNG");
  return bytes;
}

void Signature::begin(const QPointF& at) {
  if (strokes_.size() >= most) return;
  const bool before = written();
  strokes_.push_back(QPolygonF{{at}});
  update();
  if (!before) emit writtenChanged();
}

void Signature::go_on(const QPointF& at) {
  if (strokes_.empty() || strokes_.back().size() >= longest) return;
  const QPointF inside(std::clamp(at.x(), qreal{0}, width()),
                       std::clamp(at.y(), qreal{0}, height()));
  if (strokes_.back().back() == inside) return;
  strokes_.back() << inside;
  update();
}

void Signature::touchEvent(QTouchEvent* event) {
  for (const QEventPoint& point : event->points()) {
    if (point.state() == QEventPoint::Pressed && finger_ < 0) {
      finger_ = point.id();
      begin(point.position());
    } else if (point.id() == finger_) {
      go_on(point.position());
      if (point.state() == QEventPoint::Released) finger_ = -1;
    }
  }
  event->accept();
}

void Signature::touchUngrabEvent() {
  finger_ = -1;
}

void Signature::mousePressEvent(QMouseEvent* event) {
  begin(event->position());
}

void Signature::mouseMoveEvent(QMouseEvent* event) {
  go_on(event->position());
}
