#include "mobile/controls/finding_sign.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace {

constexpr qreal wide = 48;
constexpr qreal high = 40;

QPen pen(const QColor& ink, qreal width) {
  return {ink, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

/// A ring drawn by hand, that overlaps where it ends.
QPolygonF hand_ring(const QPointF& middle, qreal across, qreal up) {
  constexpr int points = 46;
  constexpr double full_turn = 6.283185307179586;
  QPolygonF ring;
  for (int i = 0; i <= points + points / 12; ++i) {
    const double angle = full_turn * i / points;
    const double wave = 1 + 0.035 * std::sin(2 * angle + 1) + 0.015 * std::sin(5 * angle);
    const double drift = 1 + 0.0012 * i;
    ring << middle + QPointF(across * std::cos(angle), up * std::sin(angle)) * wave * drift;
  }
  return ring;
}

void paint_propped(QPainter& painter, const QColor& ink) {
  painter.setPen(QPen(ink, 4, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(20, 3), QPointF(20, 36));
  painter.setPen(pen(ink, 2.2));
  painter.drawLine(QPointF(21, 12), QPointF(35, 36));
  painter.drawLine(QPointF(8, 36.5), QPointF(42, 36.5));
}

void paint_guarded(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2.2));
  painter.drawEllipse(QPointF(24, 8), 5, 5);
  QPolygonF body;
  body << QPointF(16, 36) << QPointF(16, 21) << QPointF(19, 16) << QPointF(29, 16)
       << QPointF(32, 21) << QPointF(32, 36);
  painter.drawPolyline(body);
  painter.drawLine(QPointF(5, 36.5), QPointF(43, 36.5));
}

void paint_closed_below(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2));
  painter.drawRect(QRectF(8, 3, 32, 7));
  painter.drawLine(QPointF(4, 10), QPointF(44, 10));
  painter.drawLine(QPointF(17, 3), QPointF(17, 10));
  painter.drawLine(QPointF(31, 3), QPointF(31, 10));
  painter.setPen(pen(ink, 3));
  painter.drawLine(QPointF(17, 18), QPointF(31, 31));
  painter.drawLine(QPointF(31, 18), QPointF(17, 31));
  painter.setPen(pen(ink, 2));
  painter.drawLine(QPointF(4, 37), QPointF(44, 37));
}

void paint_reported(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2));
  const QPointF tag[] = {{4, 36}, {4, 12}, {10, 5}, {26, 5}, {32, 12}, {32, 36}};
  painter.drawPolygon(tag, 6);
  painter.drawEllipse(QPointF(18, 11), 2.2, 2.2);
  painter.drawLine(QPointF(10, 20), QPointF(26, 20));
  painter.drawLine(QPointF(10, 27), QPointF(22, 27));
  painter.drawLine(QPointF(35, 22), QPointF(46, 22));
  const QPointF head[] = {{41, 17}, {46, 22}, {41, 27}};
  painter.drawPolyline(head, 3);
}

void paint_arrow(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 3));
  painter.drawLine(QPointF(5, 36), QPointF(36, 11));
  painter.setPen(Qt::NoPen);
  painter.setBrush(ink);
  const QPointF head[] = {{44, 4}, {38, 16}, {31, 8}};
  painter.drawPolygon(head, 3);
}

void paint_camera(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2.4));
  painter.drawRoundedRect(QRectF(4, 9, 40, 27), 2, 2);
  painter.fillRect(QRectF(14, 3, 20, 6), ink);
  painter.drawEllipse(QPointF(24, 22.5), 10, 10);
  painter.drawEllipse(QPointF(24, 22.5), 5.5, 5.5);
}

/// A print with a rail on it.
void paint_picture(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2.2));
  painter.drawRect(QRectF(5, 5, 38, 30));
  painter.drawLine(QPointF(5, 15), QPointF(43, 15));
  painter.drawLine(QPointF(5, 20), QPointF(43, 20));
  painter.drawLine(QPointF(22, 5), QPointF(22, 35));
  painter.drawLine(QPointF(27, 5), QPointF(27, 35));
}

void paint_taped(QPainter& painter, const QColor& ink, const QColor& tape, const QColor& tape_ink) {
  painter.setPen(QPen(ink, 5, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(2, 21), QPointF(46, 21));
  const QRectF wrap(14, 11, 20, 20);
  painter.fillRect(wrap, tape);
  painter.setPen(QPen(tape_ink, 3.4, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(16, 29), QPointF(32, 13));
  painter.setPen(pen(ink, 2));
  painter.drawRect(wrap);
}

}  // namespace

FindingSign::FindingSign(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &FindingSign::lookChanged, this, [this] { update(); });
}

/// Bars at 45 degrees, half the board's height wide.
void FindingSign::paint_board(QPainter& painter, const QRectF& board, qreal outline) const {
  painter.save();
  painter.setClipRect(board);
  painter.fillRect(board, tape_);
  painter.setPen(Qt::NoPen);
  painter.setBrush(tape_ink_);
  const qreal across = board.height() / 2 * 1.4142135623730951;
  for (qreal x = board.left() - board.height(); x < board.right(); x += 2 * across) {
    const QPointF bar[] = {{x, board.bottom()},
                           {x + across, board.bottom()},
                           {x + across + board.height(), board.top()},
                           {x + board.height(), board.top()}};
    painter.drawPolygon(bar, 4);
  }
  painter.restore();
  painter.setPen(QPen(ink_, outline));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(board.adjusted(outline / 2, outline / 2, -outline / 2, -outline / 2));
}

void FindingSign::paint_measure(QPainter& painter) const {
  painter.setBrush(Qt::NoBrush);
  switch (kind_) {
    case ClosedOff:
      painter.setPen(QPen(ink_, 2.4, Qt::SolidLine, Qt::FlatCap));
      for (const qreal x : {4.0, 44.0}) painter.drawLine(QPointF(x, 5), QPointF(x, 37));
      return paint_board(painter, QRectF(4, 13, 40, 14), 1.6);
    case Propped:
      return paint_propped(painter, ink_);
    case Guarded:
      return paint_guarded(painter, ink_);
    case Taped:
      return paint_taped(painter, ink_, tape_, tape_ink_);
    case ClosedBelow:
      return paint_closed_below(painter, ink_);
    default:
      return paint_reported(painter, ink_);
  }
}

void FindingSign::paint_mark(QPainter& painter) const {
  painter.setBrush(Qt::NoBrush);
  switch (kind_) {
    case Finding:
      painter.setPen(QPen(ink_, 4, Qt::SolidLine, Qt::FlatCap));
      painter.drawLine(QPointF(2, 20), QPointF(46, 20));
      painter.drawLine(QPointF(24, 20), QPointF(24, 38));
      painter.setPen(pen(chalk_, 3));
      painter.drawPolyline(hand_ring({24, 20}, 15, 14));
      return;
    case Ring:
      painter.setPen(pen(chalk_, 3));
      painter.drawPolyline(hand_ring({24, 20}, 19, 15));
      return;
    case Arrow:
      return paint_arrow(painter, ink_);
    case Camera:
      return paint_camera(painter, ink_);
    case Picture:
      return paint_picture(painter, ink_);
    default: {
      painter.setPen(QPen(chalk_, 6, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
      const QPointF tick[] = {{6, 20}, {18, 33}, {43, 6}};
      painter.drawPolyline(tick, 3);
    }
  }
}

void FindingSign::paint(QPainter* painter) {
  if (kind_ == Board) {
    const qreal outline = std::max(1.0, height() * 0.09);
    return paint_board(*painter, QRectF(0, 0, width(), height()), outline);
  }
  const qreal scale = std::min(width() / wide, height() / high);
  painter->translate((width() - wide * scale) / 2, (height() - high * scale) / 2);
  painter->scale(scale, scale);
  if (kind_ >= ClosedOff && kind_ <= Reported)
    paint_measure(*painter);
  else
    paint_mark(*painter);
}
