#include "mobile/elevation/run_line_item.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QTouchEvent>
#include <algorithm>
#include <cmath>
#include <utility>

#include "mobile/elevation/sheet_change.h"
#include "mobile/elevation/sign_shapes.h"

using kneerail::PostState;
using kneerail::RunSheet;
using kneerail::SheetPost;
using kneerail::elevation::Point;
using kneerail::elevation::ShapeList;
using kneerail::elevation::Stroke;

namespace {

// In the pixels of the drawings, down from the top of a line of 92.
constexpr double margin_drawn = 24;
constexpr double rail_drawn = 36;
constexpr double chosen_drawn = 9;
constexpr double foot_drawn = 66;
constexpr double marks_drawn = 27;
constexpr double numbers_drawn = 86;
constexpr double window_top_drawn = 6;
constexpr double window_foot_drawn = 72;
constexpr double least_gap_of_numbers_drawn = 64;

/// A round step of posts so that numbers stand no nearer than they can be read.
int number_step(double post_px, double least_px) {
  for (const int step : {1, 2, 5, 10, 20, 50, 100, 200, 500}) {
    if (step * post_px >= least_px) return step;
  }
  return 1000;
}

}  // namespace

RunLineItem::RunLineItem(QQuickItem* parent) : DrawingItem(parent) {
  setAcceptTouchEvents(true);
  setAcceptedMouseButtons(Qt::LeftButton);
  setActiveFocusOnTab(true);
}

const RunSheet& RunLineItem::sheet() const {
  static const RunSheet none;
  return picture_ != nullptr ? *picture_->sheet() : none;
}

void RunLineItem::set_picture(RunPicture* picture) {
  if (picture == picture_) return;
  if (picture_ != nullptr) picture_->disconnect(this);
  picture_ = picture;
  const auto changed = [this] {
    show_sheet();
    emit spokenChanged();
    emit windowMoved();
  };
  if (picture != nullptr) {
    connect(picture, &RunPicture::changed, this, changed);
    connect(picture, &RunPicture::chosenChanged, this, &RunLineItem::spokenChanged);
    connect(picture, &RunPicture::markedChanged, this, [this] { redraw(); });
  }
  emit pictureChanged();
  changed();
}

/// While a run is walked most entries change nothing on its line.
void RunLineItem::show_sheet() {
  namespace elevation = kneerail::elevation;
  const auto before = std::exchange(drawn_, picture_ != nullptr ? picture_->sheet() : nullptr);
  if (before && drawn_ && elevation::stand_alike(*before, *drawn_) &&
      elevation::marked_alike(*before, *drawn_) && elevation::seen_alike(*before, *drawn_))
    return;
  redraw();
}

void RunLineItem::set_view(ElevationItem* view) {
  if (view == view_) return;
  if (view_ != nullptr) view_->disconnect(this);
  view_ = view;
  if (view != nullptr) connect(view, &ElevationItem::viewChanged, this, &RunLineItem::windowMoved);
  emit viewChanged();
  emit windowMoved();
}

double RunLineItem::x_px(double along_mm) const {
  const double margin = drawn_px(margin_drawn);
  if (sheet().posts.size() < 2) return width() / 2;
  const auto first = static_cast<double>(sheet().posts.front().chainage_mm);
  const auto last = static_cast<double>(sheet().posts.back().chainage_mm);
  if (last <= first) return margin;
  return margin + (along_mm - first) / (last - first) * (width() - 2 * margin);
}

double RunLineItem::along_mm(double x) const {
  if (sheet().posts.empty()) return 0;
  const auto first = static_cast<double>(sheet().posts.front().chainage_mm);
  const auto last = static_cast<double>(sheet().posts.back().chainage_mm);
  const double margin = drawn_px(margin_drawn);
  const double share = (x - margin) / std::max(width() - 2 * margin, 1.0);
  return first + std::clamp(share, 0.0, 1.0) * (last - first);
}

int RunLineItem::postAt(qreal x) const {
  const double along = along_mm(x);
  const auto& posts = sheet().posts;
  const auto off = [&](const SheetPost& post) {
    return std::abs(static_cast<double>(post.chainage_mm) - along);
  };
  const auto nearest = std::min_element(
      posts.begin(), posts.end(), [&](const auto& a, const auto& b) { return off(a) < off(b); });
  return nearest == posts.end() ? -1 : static_cast<int>(nearest - posts.begin());
}

qreal RunLineItem::xOfPost(int post) const {
  if (post < 0 || static_cast<std::size_t>(post) >= sheet().posts.size()) return 0;
  return x_px(static_cast<double>(sheet().posts[static_cast<std::size_t>(post)].chainage_mm));
}

int RunLineItem::post() const {
  if (picture_ != nullptr && picture_->post() >= 0) return picture_->post();
  return view_ != nullptr ? postAt(x_px(view_->centre_chainage())) : -1;
}

int RunLineItem::open() const {
  const auto& posts = sheet().posts;
  return static_cast<int>(std::count_if(posts.begin(), posts.end(), [](const SheetPost& post) {
    return post.state == PostState::open;
  }));
}

QString RunLineItem::spoken_name() const {
  const int at = post();
  if (at < 0 || static_cast<std::size_t>(at) >= sheet().posts.size()) return tr("no post");
  const QString label = QString::fromStdString(sheet().posts[static_cast<std::size_t>(at)].label);
  return tr("post %1 of %2, %n open", nullptr, open()).arg(label).arg(sheet().posts.size());
}

QRectF RunLineItem::window_rect() const {
  if (view_ == nullptr || sheet().posts.empty()) return {};
  const double edge = drawn_px(margin_drawn) / 2;
  const double least = drawn_px(8);
  double left = std::max(x_px(view_->left_chainage()), edge);
  double right = std::min(x_px(view_->right_chainage()), width() - edge);
  if (right - left < least) {
    const double middle = std::clamp(x_px(view_->centre_chainage()), edge, width() - edge);
    left = middle - least / 2;
    right = middle + least / 2;
  }
  const double top = drawn_px(window_top_drawn);
  return {left, top, right - left, drawn_px(window_foot_drawn) - top};
}

void RunLineItem::set_stretch_from(int post) {
  if (post == stretch_from_) return;
  stretch_from_ = post;
  redraw();
  emit stretchChanged();
}

void RunLineItem::set_stretch_to(int post) {
  if (post == stretch_to_) return;
  stretch_to_ = post;
  redraw();
  emit stretchChanged();
}

void RunLineItem::stepPost(int direction) {
  const int last = static_cast<int>(sheet().posts.size()) - 1;
  const int next = std::clamp(post() + direction, 0, std::max(last, 0));
  if (last >= 0 && next != post()) emit postTouched(next);
}

ShapeList RunLineItem::shapes() const {
  ShapeList list;
  const auto& posts = sheet().posts;
  if (posts.empty()) return list;
  if (stretch_from_ >= 0 && stretch_to_ >= 0) {
    const auto [from, to] = std::minmax({xOfPost(stretch_from_), xOfPost(stretch_to_)});
    list.rect(
        {static_cast<float>(from) - drawn(6), drawn(window_top_drawn)},
        {static_cast<float>(to - from) + drawn(12), drawn(window_foot_drawn - window_top_drawn)},
        tokens().chalk_light());
  }
  const auto left = static_cast<float>(x_px(static_cast<double>(posts.front().chainage_mm)));
  const auto right = static_cast<float>(x_px(static_cast<double>(posts.back().chainage_mm)));
  const float middle = drawn((rail_drawn + foot_drawn) / 2);
  list.line(Point{left, middle}, Point{right, middle}, tokens().line(), {.width_px = drawn(1)});
  for (std::size_t post = 0; post < posts.size(); ++post) add_post(list, post);
  list.line(Point{left, drawn(rail_drawn)}, Point{right, drawn(rail_drawn)}, tokens().ink(),
            {.width_px = drawn(3)});
  add_numbers(list);
  add_marks(list);
  return list;
}

void RunLineItem::add_post(ShapeList& list, std::size_t post) const {
  const SheetPost& at = sheet().posts[post];
  // On whole pixels, else near posts look unlike each other.
  const auto x = static_cast<float>(std::round(x_px(static_cast<double>(at.chainage_mm))));
  const double pitch = width() / static_cast<double>(sheet().posts.size());
  const float half = std::min(drawn(2.4), static_cast<float>(pitch) * 0.32F);
  const float top = drawn(rail_drawn);
  const float foot = drawn(foot_drawn);
  const bool roomy = half > 1;  // else an outline would fill itself
  const Point corner{x - half, top};
  const Point size{2 * half, foot - top};
  switch (at.state) {
    case PostState::seen:
      list.rect(corner, size, tokens().ink());
      break;
    case PostState::open:
    case PostState::skipped:
      list.rect(corner, size, roomy ? tokens().sheet() : tokens().line());
      if (roomy) list.rect_outline(corner, size, tokens().edge(), {.width_px = drawn(1.1)});
      break;
    case PostState::struck:
      list.line(
          Point{x, top}, Point{x, foot}, tokens().edge(),
          {.width_px = std::min(drawn(1.6), half * 2), .on_px = drawn(5), .off_px = drawn(4)});
      break;
  }
  if (at.state != PostState::skipped) return;
  list.line(Point{x - drawn(4), foot + drawn(2)}, Point{x + drawn(6), top + drawn(6)},
            tokens().ink(), {.width_px = drawn(1.8)});
}

void RunLineItem::add_numbers(ShapeList& list) const {
  const auto& posts = sheet().posts;
  const double post_px =
      (width() - 2 * drawn_px(margin_drawn)) / std::max(static_cast<double>(posts.size()) - 1, 1.0);
  const int step = number_step(post_px, drawn_px(least_gap_of_numbers_drawn));
  bool any_round = false;  // posts without numbers are counted from the first
  for (const SheetPost& post : posts) {
    any_round = any_round || QString::fromStdString(post.label).toInt() > 0;
  }
  for (std::size_t post = 0; post < posts.size(); ++post) {
    const QString label = QString::fromStdString(posts[post].label);
    const int number = any_round ? label.toInt() : static_cast<int>(post);
    if (number % step != 0 || (any_round && number == 0)) continue;
    list.label({.text = label,
                .at = {static_cast<float>(xOfPost(static_cast<int>(post))), drawn(numbers_drawn)},
                .size_px = static_cast<float>(tokens().small_text()),
                .color = tokens().ink2().rgba()});
  }
}

void RunLineItem::add_marks(ShapeList& list) const {
  const RunSheet& run = sheet();
  float last = -drawn(chosen_drawn);
  for (const int place : picture_->marked()) {
    if (static_cast<std::size_t>(place) >= run.parts.size()) continue;
    const auto x = static_cast<float>(
        x_px(static_cast<double>(run.parts[static_cast<std::size_t>(place)].along_mm)));
    if (std::abs(x - last) < drawn(chosen_drawn) / 2) continue;
    last = x;
    kneerail::elevation::add_chosen_mark(list, {x, drawn(rail_drawn - 3)}, drawn(chosen_drawn),
                                         tokens().chalk(), tokens().paper());
  }
  const float y = drawn(marks_drawn);
  for (const auto& bay : run.bays) {
    if (!bay.closed_off) continue;
    const float x = static_cast<float>(xOfPost(bay.from) + xOfPost(bay.to)) / 2;
    const float half = drawn(9);
    const float tall = drawn(5);
    kneerail::elevation::add_barrier_board(
        list, {{x - half, y - tall}, {2 * half, 2 * tall}, drawn(1.4)}, tokens().palette());
  }
  for (const auto& finding : run.findings) {
    if (finding.hazard_state != 0 && finding.part < 0 && finding.bay >= 0) continue;
    if (finding.post < 0) continue;
    list.circle({static_cast<float>(xOfPost(finding.post)), y}, drawn(5), tokens().chalk(),
                {.width_px = drawn(2.4)});
  }
}

void RunLineItem::drag_to(double x) {
  if (sheet().posts.empty()) return;
  if (view_ != nullptr) view_->set_centre_chainage(along_mm(x));
  const int post = postAt(x);
  if (post == dragged_post_) return;
  dragged_post_ = post;
  emit draggedTo(post);
}

void RunLineItem::let_go() {
  const int post = std::exchange(dragged_post_, -1);
  finger_ = -1;
  if (post >= 0) emit postTouched(post);
}

void RunLineItem::touchEvent(QTouchEvent* event) {
  event->accept();
  if (event->type() == QEvent::TouchCancel) return touchUngrabEvent();
  for (const QEventPoint& point : event->points()) {
    if (finger_ < 0 && point.state() == QEventPoint::Pressed) finger_ = point.id();
    if (point.id() != finger_) continue;
    drag_to(point.position().x());
    if (point.state() == QEventPoint::Released) let_go();
  }
}

void RunLineItem::touchUngrabEvent() {
  finger_ = -1;
  dragged_post_ = -1;
}

void RunLineItem::mousePressEvent(QMouseEvent* event) {
  drag_to(event->position().x());
}

void RunLineItem::mouseMoveEvent(QMouseEvent* event) {
  drag_to(event->position().x());
}

void RunLineItem::mouseReleaseEvent(QMouseEvent* event) {
  drag_to(event->position().x());
  let_go();
}

void RunLineItem::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Left:
      return stepPost(-1);
    case Qt::Key_Right:
      return stepPost(1);
    default:
      event->ignore();
  }
}
