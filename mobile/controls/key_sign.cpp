#include "mobile/controls/key_sign.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace {

constexpr qreal wide = 48;
constexpr qreal high = 40;

QPen pen(const QColor& ink, qreal width) {
  return {ink, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

void paint_coating(QPainter& painter, const QColor& ink) {
  painter.setPen(QPen(ink, 5, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(4, 33), QPointF(44, 33));
  QPen line(ink, 1.6, Qt::CustomDashLine, Qt::FlatCap);
  line.setDashPattern({3.1, 1.9});
  painter.setPen(line);
  painter.drawLine(QPointF(4, 26), QPointF(44, 26));
  const QPointF probe[] = {{19, 9}, {29, 9}, {29, 18}, {24, 24}, {19, 18}};
  painter.setPen(Qt::NoPen);
  painter.setBrush(ink);
  painter.drawPolygon(probe, 5);
}

void paint_torque(QPainter& painter, const QColor& ink) {
  QPolygonF screw;
  for (int corner = 0; corner < 6; ++corner) {
    const double angle = corner * 1.0471975511965976;  // 60 degrees
    screw << QPointF(15 + 9 * std::cos(angle), 23 + 9 * std::sin(angle));
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(pen(ink, 2.2));
  painter.drawPolygon(screw);
  painter.setPen(pen(ink, 2.4));
  painter.drawArc(QRectF(-1, 7, 32, 32), 0, 90 * 16);
  painter.setPen(Qt::NoPen);
  painter.setBrush(ink);
  const QPointF head[] = {{31, 28}, {25, 20}, {37, 20}};
  painter.drawPolygon(head, 3);
}

void paint_octagon(QPainter& painter, const QRectF& box, qreal cut) {
  const QPointF corners[] = {{box.left() + cut, box.top()},     {box.right() - cut, box.top()},
                             {box.right(), box.top() + cut},    {box.right(), box.bottom() - cut},
                             {box.right() - cut, box.bottom()}, {box.left() + cut, box.bottom()},
                             {box.left(), box.bottom() - cut},  {box.left(), box.top() + cut}};
  painter.drawPolygon(corners, 8);
}

void paint_next_slot(QPainter& painter, const QColor& ink, const QColor& chalk,
                     const QColor& chalk_light) {
  painter.setPen(pen(ink, 1.2));
  painter.setBrush(Qt::NoBrush);
  paint_octagon(painter, QRectF(2, 11.5, 13, 17), 2.2);
  painter.setPen(pen(chalk, 1.7));
  painter.setBrush(chalk_light);
  paint_octagon(painter, QRectF(31, 10.5, 14.5, 19), 2.4);
  painter.setPen(pen(ink, 1.5));
  painter.setBrush(Qt::NoBrush);
  painter.drawLine(QPointF(18, 20), QPointF(28, 20));
  const QPointF head[] = {{24, 16}, {28, 20}, {24, 24}};
  painter.drawPolyline(head, 3);
}

void paint_erase(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2.4));
  painter.setBrush(Qt::NoBrush);
  const QPointF tag[] = {{2, 20}, {16, 7}, {46, 7}, {46, 33}, {16, 33}};
  painter.drawPolygon(tag, 5);
  painter.drawLine(QPointF(23, 15), QPointF(34, 25));
  painter.drawLine(QPointF(34, 15), QPointF(23, 25));
}

/// Two tube ends; `closed`: a solid sleeve across the joint.
void paint_joint(QPainter& painter, const QColor& ink, bool closed) {
  painter.setPen(QPen(ink, 2.2));
  painter.setBrush(Qt::NoBrush);
  for (const double side : {-1.0, 1.0}) {
    const double end = 24 + side * (closed ? 1 : 6);
    const QPointF tube[] = {{24 + side * 23, 14}, {end, 14}, {end, 26}, {24 + side * 23, 26}};
    painter.drawPolyline(tube, 4);
  }
  if (closed) painter.fillRect(QRectF(13, 11, 22, 18), ink);
}

/// Its two faces, and an arrow on each.
void paint_wall(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2.2));
  painter.drawLine(QPointF(4, 14), QPointF(44, 14));
  painter.drawLine(QPointF(4, 26), QPointF(44, 26));
  painter.setBrush(ink);
  for (const double side : {-1.0, 1.0}) {
    const double tip = 20 + side * 7;
    painter.drawLine(QPointF(24, 20 + side * 18), QPointF(24, tip + side * 4));
    const QPointF head[] = {{24, tip}, {20, tip + side * 6}, {28, tip + side * 6}};
    painter.drawPolygon(head, 3);
  }
}

/// The section of a tube and the probe on it, at an hour of the clock.
void paint_probe(QPainter& painter, const QColor& ink, const QColor& chalk, int hour) {
  painter.setPen(QPen(ink, 4));
  painter.setBrush(Qt::NoBrush);
  painter.drawEllipse(QPointF(24, 20), 14, 14);
  const double turn = (hour - 3) * std::numbers::pi / 6;
  painter.setPen(Qt::NoPen);
  painter.setBrush(chalk);
  painter.drawEllipse(QPointF(24 + 14 * std::cos(turn), 20 + 14 * std::sin(turn)), 6, 6);
}

/// Half a disc in light, half in shade.
void paint_light(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2.2));
  painter.setBrush(Qt::NoBrush);
  painter.drawEllipse(QPointF(24, 20), 12, 12);
  painter.setBrush(ink);
  painter.drawPie(QRectF(12, 8, 24, 24), 90 * 16, 180 * 16);
}

/// Bars at 45 degrees, half the board's height wide, between two end posts.
void paint_board(QPainter& painter, const QColor& bar, const QColor& ground) {
  const QRectF board(2, 8, 44, 20);
  painter.fillRect(board, ground);
  painter.setClipRect(board);
  painter.setPen(Qt::NoPen);
  painter.setBrush(bar);
  const double bar_wide = board.height() / 2;
  for (double left = board.left() - board.height(); left < board.right(); left += 2 * bar_wide) {
    const QPointF corners[] = {{left, board.bottom()},
                               {left + bar_wide, board.bottom()},
                               {left + bar_wide + board.height(), board.top()},
                               {left + board.height(), board.top()}};
    painter.drawPolygon(corners, 4);
  }
  painter.setClipping(false);
  painter.setPen(QPen(bar, 1.6));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(board);
  for (const double post : {6.0, 42.0}) painter.drawLine(QPointF(post, 28), QPointF(post, 36));
}

void paint_onward(QPainter& painter, const QColor& ink) {
  painter.setPen(pen(ink, 2.6));
  painter.setBrush(Qt::NoBrush);
  for (const double left : {4.0, 18.0, 32.0}) {
    const QPointF chevron[] = {{left, 10}, {left + 11, 20}, {left, 30}};
    painter.drawPolyline(chevron, 3);
  }
}

/// A post on the deck under a push; `lean`: how far its head goes. A foot that moves breaks up.
void paint_push(QPainter& painter, const QColor& ink, qreal lean, bool moves) {
  painter.setPen(pen(ink, 1.6));
  painter.setBrush(Qt::NoBrush);
  painter.drawLine(QPointF(2, 38), QPointF(46, 38));
  painter.setPen(pen(ink, 1.8));
  painter.drawLine(QPointF(3, 7), QPointF(15, 7));
  const QPointF head[] = {{10.5, 3}, {15, 7}, {10.5, 11}};
  painter.drawPolyline(head, 3);
  if (lean > 0) {
    QPen was(ink, 1.2, Qt::CustomDashLine, Qt::FlatCap);
    was.setDashPattern({3, 2.4});
    painter.setPen(was);
    painter.drawLine(QPointF(24, 36), QPointF(24, 5));
  }
  painter.setPen(QPen(ink, 4.6, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(24, 38), QPointF(24 + lean, 4 + lean / 4));
  if (!moves) return;
  painter.setPen(pen(ink, 1.6));
  const QPointF broken[] = {{15, 37}, {19, 33}, {21, 35.5}};
  painter.drawPolyline(broken, 3);
}

}  // namespace

KeySign::KeySign(QQuickItem* parent) : PaintedItem(parent) {
  connect(this, &KeySign::lookChanged, this, [this] { update(); });
}

void KeySign::paint(QPainter* painter) {
  const qreal scale = std::min(width() / wide, height() / high);
  painter->translate((width() - wide * scale) / 2, (height() - high * scale) / 2);
  painter->scale(scale, scale);
  switch (kind_) {
    case Coating:
      return paint_coating(*painter, ink_);
    case Torque:
      return paint_torque(*painter, ink_);
    case Wall:
      return paint_wall(*painter, ink_);
    case Probe:
      return paint_probe(*painter, ink_, chalk_, hour_);
    case NextSlot:
      return paint_next_slot(*painter, ink_, chalk_, chalk_light_);
    case Erase:
      return paint_erase(*painter, ink_);
    case JointApart:
      return paint_joint(*painter, ink_, false);
    case JointClosed:
      return paint_joint(*painter, ink_, true);
    case Onward:
      return paint_onward(*painter, ink_);
    case Board:
      return paint_board(*painter, ink_, chalk_light_);
    case Light:
      return paint_light(*painter, ink_);
    case Firm:
      return paint_push(*painter, ink_, 0, false);
    case Gives:
      return paint_push(*painter, ink_, 5, false);
    case Moves:
      return paint_push(*painter, ink_, 14, true);
  }
}
