#include "mobile/controls/touch_item.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QTouchEvent>
#include <utility>

namespace {

/// Return and Enter stay with the room: there they end a number.
bool presses(const QKeyEvent& event) {
  return event.key() == Qt::Key_Space || event.key() == Qt::Key_Select;
}

bool by_keyboard(Qt::FocusReason reason) {
  return reason == Qt::TabFocusReason || reason == Qt::BacktabFocusReason ||
         reason == Qt::ShortcutFocusReason;
}

}  // namespace

TouchItem::TouchItem(QQuickItem* parent) : QQuickItem(parent) {
  setAcceptedMouseButtons(Qt::LeftButton);
  setAcceptTouchEvents(true);
}

void TouchItem::accessiblePressAction() {
  if (isEnabled()) emit clicked();
}

void TouchItem::touchEvent(QTouchEvent* event) {
  event->accept();
  if (event->type() == QEvent::TouchCancel) return cancel();
  for (const QEventPoint& point : event->points()) take_point(point);
}

void TouchItem::take_point(const QEventPoint& point) {
  if (point.state() == QEventPoint::Pressed && by_ == By::nothing) {
    finger_ = point.id();
    return press(By::finger);
  }
  if (by_ != By::finger || point.id() != finger_) return;
  if (point.state() == QEventPoint::Updated) set_pressed(contains(point.position()));
  if (point.state() == QEventPoint::Released) release(contains(point.position()));
}

void TouchItem::touchUngrabEvent() {
  if (by_ == By::finger) cancel();
}

void TouchItem::mousePressEvent(QMouseEvent* event) {
  event->accept();
  if (by_ == By::nothing) press(By::mouse);
}

void TouchItem::mouseMoveEvent(QMouseEvent* event) {
  if (by_ == By::mouse) set_pressed(contains(event->position()));
}

void TouchItem::mouseReleaseEvent(QMouseEvent* event) {
  if (by_ == By::mouse) release(contains(event->position()));
}

/// The second press of the two came as a press of its own.
void TouchItem::mouseDoubleClickEvent(QMouseEvent* event) {
  event->accept();
}

void TouchItem::mouseUngrabEvent() {
  if (by_ == By::mouse) cancel();
}

void TouchItem::keyPressEvent(QKeyEvent* event) {
  event->setAccepted(presses(*event));
  if (event->isAccepted() && by_ == By::nothing && !event->isAutoRepeat()) press(By::keyboard);
}

void TouchItem::keyReleaseEvent(QKeyEvent* event) {
  event->setAccepted(presses(*event));
  if (event->isAccepted() && by_ == By::keyboard && !event->isAutoRepeat()) release(true);
}

void TouchItem::focusInEvent(QFocusEvent* event) {
  QQuickItem::focusInEvent(event);
  set_visual_focus(by_keyboard(event->reason()));
}

void TouchItem::focusOutEvent(QFocusEvent* event) {
  QQuickItem::focusOutEvent(event);
  set_visual_focus(false);
  if (by_ == By::keyboard) cancel();
}

void TouchItem::itemChange(ItemChange change, const ItemChangeData& data) {
  const bool may_go = change == ItemVisibleHasChanged || change == ItemEnabledHasChanged;
  if (may_go && !data.boolValue) cancel();
  QQuickItem::itemChange(change, data);
}

void TouchItem::press(By by) {
  by_ = by;
  set_pressed(true);
}

void TouchItem::release(bool inside) {
  by_ = By::nothing;
  set_pressed(false);
  if (inside) emit clicked();
}

void TouchItem::cancel() {
  by_ = By::nothing;
  set_pressed(false);
}

void TouchItem::set_pressed(bool pressed) {
  if (std::exchange(pressed_, pressed) != pressed) emit pressedChanged();
}

void TouchItem::set_visual_focus(bool visual) {
  if (std::exchange(visual_focus_, visual) != visual) emit visualFocusChanged();
}
