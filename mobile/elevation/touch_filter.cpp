#include "mobile/elevation/touch_filter.h"

#include <algorithm>
#include <cmath>

namespace kneerail::elevation {

namespace {

double distance(const TouchPoint& a, const TouchPoint& b) {
  return std::hypot(a.x_px - b.x_px, a.y_px - b.y_px);
}

}  // namespace

std::vector<Gesture> TouchFilter::points(std::span<const TouchPoint> down, std::int64_t t_ms,
                                         Pointer pointer) {
  std::vector<Gesture> said;
  if (is_palm(down) && state_ != State::palm) {
    state_ = State::palm;
    said.push_back({.what = Gesture::What::palm});
  }
  if (state_ == State::palm) {
    rest_until_ms_ = t_ms + rest_ms;
    if (down.empty()) state_ = State::idle;
    return said;
  }
  if (down.empty()) {
    if (state_ == State::one) end_one(t_ms, pointer, said);
    if (state_ == State::drag) end_drag(t_ms, said);
    if (state_ == State::two) said.push_back({.what = Gesture::What::settle});
    state_ = State::idle;
    return said;
  }
  if (state_ == State::idle) {
    if (pointer == Pointer::finger && resting(t_ms)) {
      state_ = State::spent;
    } else {
      begin(down.front(), t_ms);
    }
  }
  if (state_ == State::spent) return said;
  if (down.size() == 2) {
    move_two(down, said);
  } else if (state_ == State::two) {  // one of the two has left; the other says nothing more
    said.push_back({.what = Gesture::What::settle});
    state_ = State::spent;
  } else {
    move_one(down.front(), t_ms, said);
  }
  return said;
}

bool TouchFilter::is_palm(std::span<const TouchPoint> down) const {
  if (down.size() >= palm_points) return true;
  return std::any_of(down.begin(), down.end(), [&](const TouchPoint& point) {
    return point.width_px > palm_mm * pixels_per_mm_;
  });
}

void TouchFilter::begin(const TouchPoint& point, std::int64_t t_ms) {
  state_ = State::one;
  first_ = last_ = point;
  cell_ = cell_at_(point.x_px, point.y_px);
  down_ms_ = t_ms;
  way_.assign(1, {t_ms, point.x_px});
}

void TouchFilter::move_one(const TouchPoint& point, std::int64_t t_ms, std::vector<Gesture>& said) {
  if (point.id != first_.id) {  // the finger was changed for another between two events
    state_ = State::spent;
    return;
  }
  if (state_ == State::one && distance(point, first_) >= move_limit_mm * pixels_per_mm_) {
    state_ = State::drag;
    last_ = first_;
  }
  if (state_ == State::drag) {
    said.push_back({.what = Gesture::What::pan,
                    .x_px = point.x_px,
                    .y_px = point.y_px,
                    .dx_px = point.x_px - last_.x_px,
                    .dy_px = point.y_px - last_.y_px});
  }
  last_ = point;
  way_.push_back({t_ms, point.x_px});
  const auto recent = std::find_if(way_.begin(), way_.end() - 1, [&](const Sample& sample) {
    return sample.t_ms >= t_ms - swipe_window_ms;
  });
  way_.erase(way_.begin(), recent);
}

void TouchFilter::move_two(std::span<const TouchPoint> down, std::vector<Gesture>& said) {
  const bool same = state_ == State::two && down[0].id == pair_[0].id && down[1].id == pair_[1].id;
  if (same) {
    const double before = std::max(distance(pair_[0], pair_[1]), 1.0);
    const double now = std::max(distance(down[0], down[1]), 1.0);
    said.push_back({.what = Gesture::What::pinch,
                    .x_px = (down[0].x_px + down[1].x_px) / 2,
                    .y_px = (down[0].y_px + down[1].y_px) / 2,
                    .dx_px = (down[0].x_px + down[1].x_px - pair_[0].x_px - pair_[1].x_px) / 2,
                    .dy_px = (down[0].y_px + down[1].y_px - pair_[0].y_px - pair_[1].y_px) / 2,
                    .factor = now / before});
  }
  state_ = State::two;
  pair_[0] = down[0];
  pair_[1] = down[1];
}

void TouchFilter::end_one(std::int64_t t_ms, Pointer pointer, std::vector<Gesture>& said) const {
  const std::int64_t stayed_ms = t_ms - down_ms_;
  if (pointer == Pointer::finger && stayed_ms < shortest_touch_ms) return;
  if (cell_at_(first_.x_px, first_.y_px) != cell_) return;  // the drawing moved under the finger
  if (cell_at_(last_.x_px, last_.y_px) != cell_) return;
  said.push_back(
      at_start(stayed_ms > longest_touch_ms ? Gesture::What::hold : Gesture::What::touch));
}

void TouchFilter::end_drag(std::int64_t t_ms, std::vector<Gesture>& said) const {
  const double across_px = last_.x_px - first_.x_px;
  if (std::abs(across_px) < swipe_mm * pixels_per_mm_) return;
  if (std::abs(across_px) < 2 * std::abs(last_.y_px - first_.y_px)) return;
  const auto from = std::find_if(way_.begin(), way_.end() - 1, [&](const Sample& sample) {
    return sample.t_ms >= t_ms - swipe_window_ms;
  });
  const auto lasted_ms = static_cast<double>(std::max<std::int64_t>(t_ms - from->t_ms, 1));
  const double speed = (last_.x_px - from->x_px) / pixels_per_mm_ / lasted_ms;
  if (std::abs(speed) < swipe_speed_mm_per_ms || (speed < 0) != (across_px < 0)) return;
  Gesture swipe = at_start(Gesture::What::swipe);
  swipe.direction = across_px < 0 ? 1 : -1;
  said.push_back(swipe);
}

Gesture TouchFilter::at_start(Gesture::What what) const {
  return {.what = what, .x_px = first_.x_px, .y_px = first_.y_px};
}

std::vector<Gesture> TouchFilter::time(std::int64_t t_ms) {
  const auto next = next_time_ms();
  if (!next || t_ms < *next) return {};
  state_ = State::spent;
  if (cell_at_(first_.x_px, first_.y_px) != cell_) return {};
  return {at_start(Gesture::What::hold)};
}

std::optional<std::int64_t> TouchFilter::next_time_ms() const {
  if (state_ != State::one) return std::nullopt;
  return down_ms_ + longest_touch_ms + 1;
}

void TouchFilter::cancel() {
  if (state_ != State::idle && state_ != State::palm) state_ = State::spent;
}

}  // namespace kneerail::elevation
