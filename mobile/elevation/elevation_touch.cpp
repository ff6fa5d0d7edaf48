// The hand's side of ElevationView: fingers, mouse, wheel and keys become gestures, gestures become
// signals and movement.

#include <QKeyEvent>
#include <QMouseEvent>
#include <QTouchEvent>
#include <QWheelEvent>
#include <algorithm>
#include <utility>

#include "mobile/elevation/elevation_item.h"
#include "mobile/elevation/part_steps.h"
#include "mobile/elevation/scale_steps.h"

namespace elevation = kneerail::elevation;
using elevation::Crowds;
using elevation::Gesture;
using elevation::Pick;
using elevation::Pointer;
using elevation::RunView;
using elevation::TouchPoint;

namespace {

constexpr double lens_mm = 60;  // side of the square in which a joint is drawn larger
constexpr double lens_denominator = 10;
constexpr double freest = 1.25;  // how far a pinch may go beyond the outer steps
constexpr double wheel_notch = 120;

}  // namespace

std::int64_t ElevationItem::time_of(const QInputEvent& event) const {
  return now_ms_ ? now_ms_() : static_cast<std::int64_t>(event.timestamp());
}

void ElevationItem::touchEvent(QTouchEvent* event) {
  event->accept();
  if (event->type() == QEvent::TouchCancel) return touchUngrabEvent();
  if (event->type() == QEvent::TouchBegin) forceActiveFocus(Qt::MouseFocusReason);
  std::vector<TouchPoint> all;
  std::vector<TouchPoint> staying;
  for (const QEventPoint& point : event->points()) {
    const QSizeF size = point.ellipseDiameters();
    const TouchPoint at{point.id(), point.position().x(), point.position().y(),
                        std::max(size.width(), size.height())};
    all.push_back(at);
    if (point.state() != QEventPoint::Released) staying.push_back(at);
  }
  const std::int64_t t_ms = time_of(*event);
  if (all.size() != staying.size()) act(filter_.points(all, t_ms));
  act(filter_.points(staying, t_ms));
  wait_for_hold();
  if (staying.empty()) hand_gone();
}

void ElevationItem::touchUngrabEvent() {
  filter_.taken_away();
  hand_gone();
}

void ElevationItem::hand_gone() {
  hold_timer_.stop();
  if (std::exchange(hand_moves_, false)) settle();
}

void ElevationItem::mouse(QMouseEvent* event, bool down) {
  const TouchPoint at{-1, event->position().x(), event->position().y(), 0};
  const std::int64_t t_ms = time_of(*event);
  act(filter_.points(std::span(&at, 1), t_ms, Pointer::mouse));
  if (!down) act(filter_.points({}, t_ms, Pointer::mouse));
  wait_for_hold();
  if (!down) hand_gone();
}

void ElevationItem::mousePressEvent(QMouseEvent* event) {
  forceActiveFocus(Qt::MouseFocusReason);
  mouse(event, true);
}

void ElevationItem::mouseMoveEvent(QMouseEvent* event) {
  mouse(event, true);
}

void ElevationItem::mouseReleaseEvent(QMouseEvent* event) {
  mouse(event, false);
}

void ElevationItem::mouseUngrabEvent() {
  touchUngrabEvent();
}

void ElevationItem::wait_for_hold() {
  if (!filter_.next_time_ms()) return hold_timer_.stop();
  constexpr int longest = static_cast<int>(elevation::TouchFilter::longest_touch_ms);
  if (!hold_timer_.isActive()) hold_timer_.start(longest + 1);
}

void ElevationItem::wheelEvent(QWheelEvent* event) {
  event->accept();
  const QPoint angle = event->angleDelta();
  glide_.stop();
  closeJoint();
  if (event->modifiers() & Qt::ControlModifier) {
    if (angle.y() == 0) return;
    scale_by_hand_ = true;
    const double step = elevation::next_step(view_.denominator, angle.y() > 0 ? -1 : 1);
    const QPointF at = event->position();
    set_view(clamped(elevation::scaled_about(view_, step, at.x(), at.y())));
  } else {
    const double notches = (angle.x() != 0 ? angle.x() : angle.y()) / wheel_notch;
    RunView view = view_;
    view.centre_mm -= notches * view_.width_px / 8 / view_.scale();
    set_view(clamped(view));
  }
  settle();
}

void ElevationItem::keyPressEvent(QKeyEvent* event) {
  using elevation::Step;
  const auto go = [&](Step step) {
    if (picture_ == nullptr || sheet_->parts.empty()) return;
    int part = picture_->part();
    if (part >= 0) {
      part = elevation::part_beside(*sheet_, part, step);
    } else if (picture_->post() >= 0) {
      part = sheet_->posts.at(static_cast<std::size_t>(picture_->post())).first_part;
    }
    if (part >= 0 && part != picture_->part()) emit partTouched(part);
  };
  switch (event->key()) {
    case Qt::Key_Left:
      return go(Step::left);
    case Qt::Key_Right:
      return go(Step::right);
    case Qt::Key_Up:
      return go(Step::up);
    case Qt::Key_Down:
      return go(Step::down);
    case Qt::Key_PageDown:
      emit swiped(1);
      return;
    case Qt::Key_PageUp:
      emit swiped(-1);
      return;
    case Qt::Key_Plus:
      return stepScale(-1);
    case Qt::Key_Minus:
      return stepScale(1);
    case Qt::Key_Escape:
      if (joint_enlarged()) return closeJoint();
      break;
    default:
      break;
  }
  event->ignore();
}

void ElevationItem::act(const std::vector<Gesture>& gestures) {
  for (const Gesture& gesture : gestures) act(gesture);
}

void ElevationItem::act(const Gesture& gesture) {
  RunView view = view_;
  const bool moves = gesture.what == Gesture::What::pan || gesture.what == Gesture::What::pinch;
  if (moves) {
    glide_.stop();
    closeJoint();
  }
  if (moves && !std::exchange(hand_moves_, true)) emit movingChanged();
  switch (gesture.what) {
    case Gesture::What::touch:
      touched(gesture.x_px, gesture.y_px);
      break;
    case Gesture::What::hold:
      held(gesture.x_px, gesture.y_px);
      break;
    case Gesture::What::swipe:
      emit swiped(gesture.direction);
      break;
    case Gesture::What::palm:
      emit palmSeen();
      break;
    case Gesture::What::pinch:
      scale_by_hand_ = true;
      view = elevation::scaled_about(
          view,
          std::clamp(view.denominator / gesture.factor, elevation::scale_steps.front() / freest,
                     elevation::scale_steps.back() * freest),
          gesture.x_px - gesture.dx_px, gesture.y_px - gesture.dy_px);
      [[fallthrough]];
    case Gesture::What::pan:
      view.centre_mm -= gesture.dx_px / view.scale();
      view.deck_px += gesture.dy_px;
      set_view(clamped(view));
      break;
    case Gesture::What::settle:
      set_view(clamped(elevation::scaled_about(view, elevation::nearest_step(view.denominator),
                                               view.width_px / 2, view.height_px / 2)));
      break;
  }
}

Pick ElevationItem::pick_at(double x_px, double y_px) const {
  if (lens_ && lens_->rect.contains(x_px, y_px)) {
    const RunView& lens = lens_->view;
    return index_.pick(lens.at(x_px - lens_->rect.x(), y_px - lens_->rect.y()), lens.denominator,
                       Crowds::choose_nearest);
  }
  const bool largest = view_.denominator <= elevation::scale_steps.front();
  return index_.pick(view_.at(x_px, y_px), view_.denominator,
                     largest ? Crowds::choose_nearest : Crowds::ask);
}

std::int64_t ElevationItem::cell_at(double x_px, double y_px) const {
  const Pick pick = pick_at(x_px, y_px);
  const bool in_lens = lens_ && lens_->rect.contains(x_px, y_px);
  return (static_cast<std::int64_t>(pick.what) << 40) + (in_lens ? std::int64_t{1} << 48 : 0) +
         pick.place;
}

void ElevationItem::touched(double x_px, double y_px) {
  const Pick pick = pick_at(x_px, y_px);
  closeJoint();
  switch (pick.what) {
    case Pick::What::nothing:
      break;
    case Pick::What::part:
      emit partTouched(pick.place);
      break;
    case Pick::What::post:
      emit postTouched(pick.place);
      break;
    case Pick::What::bay: {
      const auto at = view_.at(x_px, y_px);
      emit bayTouched(pick.place, at.along_mm, at.up_mm);
      break;
    }
    case Pick::What::crowd:
      enlarge(pick);
      break;
  }
}

void ElevationItem::held(double x_px, double y_px) {
  const Pick pick = pick_at(x_px, y_px);
  const bool a_part = pick.what == Pick::What::part || pick.what == Pick::What::crowd;
  if (a_part) emit partHeld(pick.place);
}

/// Draws the joint at 1:10 where it stands, a little away from the hand and whole in the item.
void ElevationItem::enlarge(const Pick& crowd) {
  const double side = std::min({lens_mm * view_.pixels_per_mm, width(), height()});
  const double aside = thumb_side_ == Qt::LeftEdge ? side / 4 : -side / 4;
  const double x = view_.x_px(crowd.middle.along_mm) + aside - side / 2;
  const double y = view_.y_px(crowd.middle.up_mm) - side / 2;
  Lens lens;
  lens.rect = {std::clamp(x, 0.0, std::max(width() - side, 0.0)),
               std::clamp(y, 0.0, std::max(height() - side, 0.0)), side, side};
  lens.view = view_;
  lens.view.width_px = lens.view.height_px = side;
  lens.view.denominator = lens_denominator;
  lens.view.centre_mm = crowd.middle.along_mm;
  lens.view.deck_px = side / 2 + crowd.middle.up_mm * lens.view.scale();
  lens_ = lens;
  emit jointEnlargedChanged();
  update();
}

void ElevationItem::closeJoint() {
  if (!lens_) return;
  lens_.reset();
  emit jointEnlargedChanged();
  update();
}

QPointF ElevationItem::enlargedPlace(qreal along_mm, qreal up_mm) const {
  if (!lens_) return {};
  return lens_->rect.topLeft() + QPointF(lens_->view.x_px(along_mm), lens_->view.y_px(up_mm));
}
