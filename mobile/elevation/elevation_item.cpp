#include "mobile/elevation/elevation_item.h"

#include <algorithm>
#include <utility>

#include "mobile/elevation/run_measure.h"
#include "mobile/elevation/scale_steps.h"
#include "mobile/elevation/sheet_change.h"

namespace elevation = kneerail::elevation;
using elevation::RunPoint;
using elevation::RunView;
using kneerail::RunSheet;

namespace {

// Pixels of the drawings, which were made for 5.88 pixels in a millimetre.
constexpr double deck_margin_drawn = 94;   // ground and dimensions
constexpr double headroom_drawn = 110;     // tags over the top rail
constexpr double bracket_half_drawn = 38;  // from the middle of a joint
constexpr double bracket_inset_drawn = 8;  // of a bay's brackets from its rails
constexpr double post_half_drawn = 54;     // across, of a post's brackets
constexpr double post_over_drawn = 34;     // of a post's brackets over its top rail
constexpr double post_foot_drawn = 4;      // over the deck: its bolts' sign stands in the ground
constexpr double leader_up_drawn = 30;     // where a leader meets the brackets, above the middle

double between(double from, double to, double t) {
  return from + (to - from) * t;
}

}  // namespace

ElevationItem::ElevationItem(QQuickItem* parent)
    : DrawingItem(parent),
      sheet_(std::make_shared<RunSheet>()),
      filter_([this](double x_px, double y_px) { return cell_at(x_px, y_px); }) {
  setClip(true);
  setAcceptTouchEvents(true);
  setAcceptedMouseButtons(Qt::LeftButton);
  setActiveFocusOnTab(true);
  hold_timer_.setSingleShot(true);
  connect(&hold_timer_, &QTimer::timeout, this, [this] {
    if (const auto due_ms = filter_.next_time_ms()) act(filter_.time(*due_ms));
  });
  glide_.setStartValue(0.0);
  glide_.setEndValue(1.0);
  glide_.setEasingCurve(QEasingCurve::OutCubic);
  connect(&glide_, &QVariantAnimation::valueChanged, this, [this](const QVariant& value) {
    RunView view = view_;
    view.centre_mm = between(glide_from_.centre_mm, glide_to_.centre_mm, value.toDouble());
    view.deck_px = between(glide_from_.deck_px, glide_to_.deck_px, value.toDouble());
    set_view(view);
  });
  connect(&glide_, &QVariantAnimation::finished, this, &ElevationItem::settle);
  bracket_glide_.setStartValue(0.0);
  bracket_glide_.setEndValue(1.0);
  bracket_glide_.setEasingCurve(QEasingCurve::OutCubic);
  connect(&bracket_glide_, &QVariantAnimation::valueChanged, this, [this](const QVariant& value) {
    const double t = value.toDouble();
    brackets_ = Brackets{{between(brackets_from_.middle.along_mm, brackets_to_.middle.along_mm, t),
                          between(brackets_from_.middle.up_mm, brackets_to_.middle.up_mm, t)},
                         between(brackets_from_.half_along_mm, brackets_to_.half_along_mm, t),
                         between(brackets_from_.half_up_mm, brackets_to_.half_up_mm, t)};
    emit chosenMoved();
    update();
  });
  ring_fill_.setEasingCurve(QEasingCurve::OutCubic);
  connect(&ring_fill_, &QVariantAnimation::valueChanged, this, &QQuickItem::update);
  connect(&ring_fill_, &QVariantAnimation::finished, this, [this] {
    rings_.rings.clear();
    update();
  });
}

ElevationItem::~ElevationItem() = default;

void ElevationItem::componentComplete() {
  DrawingItem::componentComplete();
  list_visible_parts();
}

void ElevationItem::tokens_changed(bool sizes) {
  closeJoint();
  update();
  if (!sizes) return;
  filter_.set_pixels_per_mm(tokens().pixels_per_mm());
  RunView view = view_;
  view.pixels_per_mm = tokens().pixels_per_mm();
  view.deck_px = resting_deck_px();
  set_view(clamped(view));
  if (!scale_by_hand_) open_at_rule();
  emit scaleTextChanged();
  list_visible_parts();
}

qreal ElevationItem::deck_margin() const {
  return deck_margin_px_.value_or(drawn_px(deck_margin_drawn));
}

void ElevationItem::set_deck_margin(qreal margin_px) {
  if (deck_margin_px_ && qFuzzyCompare(*deck_margin_px_, margin_px)) return;
  deck_margin_px_ = margin_px;
  RunView view = view_;
  view.deck_px = resting_deck_px();
  set_view(clamped(view));
  emit deckMarginChanged();
}

double ElevationItem::resting_deck_px() const {
  return view_.height_px - deck_margin();
}

void ElevationItem::set_thumb_side(Qt::Edge side) {
  if (side == thumb_side_) return;
  thumb_side_ = side;
  closeJoint();
  emit thumbSideChanged();
}

void ElevationItem::set_tagged(bool tagged) {
  if (tagged == tagged_) return;
  tagged_ = tagged;
  update();
  emit taggedChanged();
}

void ElevationItem::set_picture(RunPicture* picture) {
  if (picture == picture_) return;
  if (picture_ != nullptr) picture_->disconnect(this);
  picture_ = picture;
  if (picture != nullptr) {
    connect(picture, &RunPicture::changed, this, &ElevationItem::sheet_changed);
    connect(picture, &RunPicture::chosenChanged, this, &ElevationItem::chosen_changed);
    connect(picture, &RunPicture::markedChanged, this, [this] {
      list_visible_parts();
      update();
    });
  }
  emit pictureChanged();
  sheet_changed();
}

void ElevationItem::sheet_changed() {
  const auto before = std::exchange(
      sheet_, picture_ != nullptr ? picture_->sheet() : std::make_shared<const RunSheet>());
  const bool alike = elevation::stand_alike(*before, *sheet_);
  if (!alike) index_ = elevation::PickIndex(*sheet_);
  const bool other_run = sheet_->id != run_;
  if (!alike || other_run) {
    ring_fill_.stop();
    rings_.rings.clear();
  } else {
    fill_rings(*before);
  }
  run_ = sheet_->id;
  closeJoint();
  if (other_run) {
    filter_.cancel();
    glide_.stop();
    bracket_glide_.stop();
    scale_by_hand_ = false;
    brackets_.reset();
    open_at_rule();
    emit scaleTextChanged();
  }
  chosen_changed();
  if (!moving()) list_visible_parts();
  update();
}

/// Nothing moves by itself: only what was just given or taken back, and never with less motion.
void ElevationItem::fill_rings(const RunSheet& before) {
  auto change = elevation::ring_change(before, *sheet_);
  const int time_ms = change.back ? tokens().undo_time() : tokens().post_glide_time();
  if (change.rings.empty() || time_ms <= 0 || window() == nullptr || !isVisible()) return;
  ring_fill_.stop();
  rings_ = std::move(change);
  ring_fill_.setStartValue(rings_.back ? 1.0 : 0.0);
  ring_fill_.setEndValue(rings_.back ? 0.0 : 1.0);
  ring_fill_.setDuration(time_ms);
  ring_fill_.start();
}

/// Where the person has not chosen a scale, and when another run is shown.
void ElevationItem::open_at_rule() {
  RunView view = view_;
  elevation::OpeningView opening{.width_mm = view_.width_px / view_.pixels_per_mm};
  opening.rail_gap_mm = elevation::least_rail_gap_mm(*sheet_);
  opening.bay_mm = elevation::usual_bay_mm(*sheet_);
  view.denominator = elevation::opening_scale(opening);
  view.deck_px = resting_deck_px();
  set_view(clamped(view));
}

void ElevationItem::set_scale_denominator(qreal denominator) {
  if (denominator <= 0) return;
  scale_by_hand_ = true;
  closeJoint();
  set_view(clamped(elevation::scaled_about(view_, elevation::nearest_step(denominator),
                                           view_.width_px / 2, view_.deck_px)));
  settle();
}

void ElevationItem::stepScale(int direction) {
  set_scale_denominator(elevation::next_step(view_.denominator, direction));
}

void ElevationItem::set_centre_chainage(qreal chainage_mm) {
  glide_.stop();
  closeJoint();
  RunView view = view_;
  view.centre_mm = chainage_mm;
  set_view(clamped(view));
  settle();
}

RunView ElevationItem::clamped(RunView view) const {
  if (!sheet_->posts.empty()) {
    const auto [first, last] = std::minmax_element(
        sheet_->posts.begin(), sheet_->posts.end(),
        [](const auto& a, const auto& b) { return a.chainage_mm < b.chainage_mm; });
    view.centre_mm = std::clamp(view.centre_mm, static_cast<double>(first->chainage_mm),
                                static_cast<double>(last->chainage_mm));
  }
  // Down as far as the top rail and its tags need to be seen; never up.
  const double resting_px = resting_deck_px();
  const double needed_px =
      static_cast<double>(sheet_->height_mm) * view.scale() + drawn_px(headroom_drawn);
  view.deck_px = std::clamp(view.deck_px, resting_px, std::max(resting_px, needed_px));
  return view;
}

void ElevationItem::set_view(const RunView& view) {
  if (view == view_) return;
  const bool other_scale = view.denominator != view_.denominator;
  view_ = view;
  if (elevation::nearest_step(view.denominator) == view.denominator) {
    drawn_denominator_ = view.denominator;
  }
  if (other_scale) {
    emit scaleDenominatorChanged();
    emit scaleTextChanged();
  }
  emit viewChanged();
  if (brackets_) emit chosenMoved();
  update();
}

void ElevationItem::geometryChange(const QRectF& now, const QRectF& before) {
  DrawingItem::geometryChange(now, before);
  if (now.size() == before.size()) return;
  filter_.cancel();  // what touches now touched another drawing
  hold_timer_.stop();
  closeJoint();
  // A glide was on its way over a glass of another size: it is there at once.
  const bool glided = glide_.state() == QAbstractAnimation::Running;
  glide_.stop();
  RunView view = glided ? glide_to_ : view_;
  const double lifted_px = view.deck_px - resting_deck_px();
  view.width_px = now.width();
  view.height_px = now.height();
  view_.height_px = now.height();
  view.deck_px = resting_deck_px() + std::max(lifted_px, 0.0);
  set_view(clamped(view));
  if (!scale_by_hand_) open_at_rule();
  if (picture_ != nullptr && picture_->part() >= 0)
    if (const auto chosen = brackets_of_chosen()) set_view(clamped(with_in_view(view_, *chosen)));
  if (glided) settle();
  list_visible_parts();
}

void ElevationItem::chosen_changed() {
  if (picture_ == nullptr) return move_brackets(std::nullopt);
  const auto to = brackets_of_chosen();
  move_brackets(to);
  const int post = picture_->post();
  if (post < 0 || post >= picture_->posts()) return;
  RunView view = view_;
  view.centre_mm =
      picture_->bay() >= 0 && to
          ? to->middle.along_mm
          : static_cast<double>(sheet_->posts[static_cast<std::size_t>(post)].chainage_mm);
  if (to && picture_->part() >= 0) view = with_in_view(view, *to);
  glide_to(clamped(view),
           picture_->taking_back() ? tokens().undo_time() : tokens().post_glide_time());
  update();
}

/// Where the drawing is higher than the glass.
RunView ElevationItem::with_in_view(RunView view, const Brackets& chosen) const {
  const double y_px = view.y_px(chosen.middle.up_mm);
  const double edge_px = std::min(drawn_px(headroom_drawn), view.height_px / 2);
  view.deck_px += std::max(edge_px - y_px, 0.0);
  view.deck_px -= std::max(y_px - (view.height_px - deck_margin()), 0.0);
  return view;
}

void ElevationItem::glide_to(const RunView& view, int time_ms) {
  glide_.stop();
  closeJoint();
  if (view == view_) return settle();
  if (time_ms <= 0 || window() == nullptr || !isVisible()) {
    set_view(view);
    return settle();
  }
  // From far away only the last screen of the way: nobody can read what would rush by.
  const double screen_mm = view_.width_px / view_.scale();
  glide_from_ = view_;
  glide_from_.centre_mm =
      std::clamp(view_.centre_mm, view.centre_mm - screen_mm, view.centre_mm + screen_mm);
  glide_to_ = view;
  glide_.setDuration(time_ms);
  glide_.start();
  emit movingChanged();
}

std::optional<ElevationItem::Brackets> ElevationItem::brackets_of_chosen() const {
  const int part = picture_->part();
  if (part >= 0 && static_cast<std::size_t>(part) < sheet_->parts.size()) {
    return Brackets{elevation::part_place(*sheet_, part, view_.denominator), 0, 0};
  }
  const int bay = picture_->bay();
  if (bay < 0 || static_cast<std::size_t>(bay) >= sheet_->bays.size()) return brackets_of_post();
  const auto& at = sheet_->bays[static_cast<std::size_t>(bay)];
  const auto along = [&](int post) {
    return static_cast<double>(sheet_->posts.at(static_cast<std::size_t>(post)).chainage_mm);
  };
  const double half_up_mm = static_cast<double>(sheet_->height_mm) / 2;
  return Brackets{{(along(at.from) + along(at.to)) / 2, half_up_mm},
                  std::abs(along(at.to) - along(at.from)) / 2,
                  half_up_mm};
}

std::optional<ElevationItem::Brackets> ElevationItem::brackets_of_post() const {
  const int post = picture_->post();
  if (post < 0 || static_cast<std::size_t>(post) >= sheet_->posts.size()) return std::nullopt;
  const auto& at = sheet_->posts[static_cast<std::size_t>(post)];
  const double half_up_mm = static_cast<double>(at.height_mm) / 2;
  return Brackets{{static_cast<double>(at.chainage_mm), half_up_mm}, 0, half_up_mm};
}

void ElevationItem::move_brackets(const std::optional<Brackets>& to) {
  bracket_glide_.stop();
  const bool same_kind = to && brackets_ && (to->half_up_mm > 0) == (brackets_->half_up_mm > 0) &&
                         (to->half_along_mm > 0) == (brackets_->half_along_mm > 0);
  const bool back = picture_ != nullptr && picture_->taking_back();
  const int time_ms = back ? tokens().undo_time() : tokens().part_glide_time();
  if (same_kind && time_ms > 0 && window() != nullptr && isVisible()) {
    brackets_from_ = *brackets_;
    brackets_to_ = *to;
    bracket_glide_.setDuration(time_ms);
    bracket_glide_.start();
  } else {
    brackets_ = to;
  }
  emit chosenMoved();
  update();
}

QRectF ElevationItem::chosen_rect() const {
  if (!brackets_) return {};
  const QPointF middle(view_.x_px(brackets_->middle.along_mm), view_.y_px(brackets_->middle.up_mm));
  double half_across = drawn_px(bracket_half_drawn);
  double half_up = half_across;
  if (brackets_->half_up_mm > 0 && brackets_->half_along_mm == 0) {  // a post, from over its rail
    const double half = brackets_->half_up_mm * view_.scale();
    const double across = drawn_px(post_half_drawn);
    const double over = drawn_px(post_over_drawn);
    return {middle.x() - across, middle.y() - half - over, 2 * across,
            2 * half + over - drawn_px(post_foot_drawn)};
  }
  if (brackets_->half_up_mm > 0) {
    const double inset = drawn_px(bracket_inset_drawn) * 2;
    half_across = std::max(brackets_->half_along_mm * view_.scale() - inset, half_across);
    half_up = std::max(brackets_->half_up_mm * view_.scale() - inset, half_up);
  }
  return {middle.x() - half_across, middle.y() - half_up, 2 * half_across, 2 * half_up};
}

QPointF ElevationItem::chosen_point() const {
  const QRectF rect = chosen_rect();
  if (brackets_ && brackets_->half_up_mm > 0) {
    return {rect.left() + drawn_px(bracket_half_drawn), rect.top()};
  }
  return {rect.left(), rect.center().y() - drawn_px(leader_up_drawn)};
}

qreal ElevationItem::bay_width() const {
  return elevation::usual_bay_mm(*sheet_) * view_.scale();
}

bool ElevationItem::moving() const {
  return hand_moves_ || glide_.state() == QAbstractAnimation::Running;
}

void ElevationItem::settle() {
  if (moving()) return;
  list_visible_parts();
  emit movingChanged();
}

void ElevationItem::list_visible_parts() {
  if (isComponentComplete())
    visible_parts_.show(sheet_, view_,
                        picture_ != nullptr ? picture_->marked() : std::vector<int>());
}
