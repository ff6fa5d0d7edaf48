#include "mobile/elevation/band_item.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QTouchEvent>
#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>
#include <vector>

#include "mobile/elevation/sign_shapes.h"

namespace elevation = kneerail::elevation;
using kneerail::PostState;
using kneerail::RunSheet;
using kneerail::SheetPart;
using kneerail::elevation::Gesture;
using kneerail::elevation::Point;
using kneerail::elevation::Pointer;
using kneerail::elevation::ShapeList;
using kneerail::elevation::Stroke;
using kneerail::elevation::TouchPoint;

namespace {

constexpr double side_drawn = 13;    // ground and rings beyond the ends
constexpr double sky_drawn = 20;     // boards above the top rail
constexpr double height_drawn = 36;  // of the rail; lengths are to scale, heights are not
constexpr double foot_drawn = 6;
constexpr double ring_drawn = 7.5;        // radius
constexpr double rings_apart_drawn = 18;  // nearer ones are one ring and a count
constexpr double board_half_drawn = 14;
constexpr double count_text_drawn = 14;
constexpr double mark_drawn = 9;  // over a part that was chosen
constexpr double mark_apart_drawn = 5;
constexpr double apart_drawn = 6;  // least between two posts that are drawn

bool is_rail(const SheetPart& part) {
  using kneerail::Role;
  return part.role == Role::mid_rail || part.role == Role::rail_tube || part.role == Role::weld;
}

int worst_grade(const SheetPart& part) {
  const auto& known = part.now ? part.now : part.last;
  return known ? known->grade : 0;
}

}  // namespace

RunBandItem::RunBandItem(QQuickItem* parent)
    : DrawingItem(parent), filter_([this](double x_px, double y_px) {
        return boundingRect().contains(x_px, y_px) ? 1 : 0;
      }) {
  setAcceptTouchEvents(true);
  setAcceptedMouseButtons(Qt::LeftButton);
  setActiveFocusOnTab(true);
}

const RunSheet& RunBandItem::sheet() const {
  static const RunSheet none;
  return picture_ != nullptr ? *picture_->sheet() : none;
}

void RunBandItem::set_picture(RunPicture* picture) {
  if (picture == picture_) return;
  if (picture_ != nullptr) picture_->disconnect(this);
  picture_ = picture;
  if (picture != nullptr) {
    connect(picture, &RunPicture::changed, this, &RunBandItem::resize);
    connect(picture, &RunPicture::markedChanged, this, [this] { redraw(); });
  }
  resize();
  emit pictureChanged();
}

void RunBandItem::set_pixels_per_metre(qreal pixels) {
  if (pixels <= 0 || qFuzzyCompare(pixels, pixels_per_metre_)) return;
  pixels_per_metre_ = pixels;
  resize();
  emit pixelsPerMetreChanged();
}

void RunBandItem::tokens_changed(bool sizes) {
  filter_.set_pixels_per_mm(tokens().pixels_per_mm());
  if (sizes) return resize();
  redraw();
}

void RunBandItem::resize() {
  const auto& posts = sheet().posts;
  const double length_mm =
      posts.empty() ? 0 : static_cast<double>(posts.back().chainage_mm - posts.front().chainage_mm);
  setImplicitSize(length_mm / 1000 * pixels_per_metre_ + drawn_px(2 * side_drawn),
                  drawn_px(sky_drawn + height_drawn + foot_drawn));
  redraw();
}

QString RunBandItem::spoken_name() const {
  return tr("%1, %n post(s)", nullptr, static_cast<int>(sheet().posts.size()))
      .arg(QString::fromStdString(sheet().name));
}

float RunBandItem::x(std::int64_t along_mm) const {
  const auto from_mm = along_mm - sheet().posts.front().chainage_mm;
  return drawn(side_drawn) +
         static_cast<float>(static_cast<double>(from_mm) / 1000 * pixels_per_metre_);
}

float RunBandItem::y(std::int64_t up_mm) const {
  const auto height = static_cast<double>(std::max<std::int64_t>(sheet().height_mm, 1));
  return drawn(sky_drawn) +
         static_cast<float>(drawn_px(height_drawn) * (1 - static_cast<double>(up_mm) / height));
}

ShapeList RunBandItem::shapes() const {
  ShapeList list;
  const RunSheet& run = sheet();
  if (run.posts.empty()) return list;
  add_rails(list);
  float last = -drawn(apart_drawn);
  for (const auto& post : run.posts) {
    // Of a long run not every post: a small elevation stays a rail, and does not turn black.
    const bool end = &post == &run.posts.back();
    if (!end && x(post.chainage_mm) - last < drawn(apart_drawn)) continue;
    last = x(post.chainage_mm);
    const bool down = post.state == PostState::struck;
    Stroke stroke{.width_px = drawn(1.3)};
    if (down) stroke.on_px = stroke.off_px = drawn(3);
    list.line(Point{x(post.chainage_mm), y(run.height_mm)}, Point{x(post.chainage_mm), y(0)},
              tokens().edge(), stroke);
  }
  list.line(Point{0, y(0)}, Point{x(run.posts.back().chainage_mm) + drawn(side_drawn), y(0)},
            tokens().concrete_line(), {.width_px = drawn(3)});
  add_marks(list);
  if (picture_ != nullptr) add_chosen(list);
  return list;
}

void RunBandItem::add_rails(ShapeList& list) const {
  const RunSheet& run = sheet();
  std::set<std::int64_t> heights;
  for (const SheetPart& part : run.parts) {
    if (is_rail(part) && part.up_mm < run.height_mm) heights.insert(part.up_mm);
  }
  std::vector<int> worst(run.bays.size(), 0);
  std::vector<int> worst_of_post(run.posts.size(), 0);
  for (const SheetPart& part : run.parts) {
    const int grade = worst_grade(part);
    const auto in = [](int place, const auto& rows) {
      return place >= 0 && static_cast<std::size_t>(place) < rows.size();
    };
    if (in(part.bay, worst)) {
      int& of_bay = worst[static_cast<std::size_t>(part.bay)];
      of_bay = std::max(of_bay, grade);
    } else if (in(part.post, worst_of_post)) {
      int& of_post = worst_of_post[static_cast<std::size_t>(part.post)];
      of_post = std::max(of_post, grade);
    }
  }
  const auto& patch = tokens().palette().patch;
  for (std::size_t bay = 0; bay < run.bays.size(); ++bay) {
    const auto& at = run.bays[bay];
    const auto along = [&](int post) {
      return x(run.posts.at(static_cast<std::size_t>(post)).chainage_mm);
    };
    const float from = along(at.from);
    const float to = along(at.to);
    Stroke thin{.width_px = drawn(1.2)};
    Stroke top{.width_px = drawn(3)};
    if (at.struck) thin.on_px = thin.off_px = top.on_px = top.off_px = drawn(3);
    for (const std::int64_t up_mm : heights) {
      list.line(Point{from, y(up_mm)}, Point{to, y(up_mm)}, tokens().edge(), thin);
    }
    const float rail = y(run.height_mm);
    list.line(Point{from, rail}, Point{to, rail}, tokens().ink(), top);
    const QColor begun = tokens().dark() ? patch[2] : patch[1];
    if (worst[bay] >= 3) {
      list.line(Point{from, rail}, Point{to, rail}, worst[bay] == 3 ? begun : tokens().rust(),
                {.width_px = drawn(5)});
    }
    if (worst_of_post.at(static_cast<std::size_t>(at.from)) > 3) {
      list.disc({from, rail + drawn(7)}, drawn(2), tokens().rust());
    }
  }
}

float RunBandItem::x_of_post(int post) const {
  const auto& posts = sheet().posts;
  const int last = static_cast<int>(posts.size()) - 1;
  return x(posts[static_cast<std::size_t>(std::clamp(post, 0, last))].chainage_mm);
}

/// From left to right. Rings that would cover each other are one, in their middle.
std::vector<RunBandItem::Ring> RunBandItem::rings() const {
  std::vector<Ring> rings;
  for (const auto& finding : sheet().findings) {
    if (finding.post < 0) continue;
    const float at = x_of_post(finding.post);
    rings.push_back({at, at, 1, finding.record});
  }
  std::sort(rings.begin(), rings.end(), [](const Ring& a, const Ring& b) {
    return std::tie(a.from, a.first) < std::tie(b.from, b.first);
  });
  for (std::size_t i = 0; i + 1 < rings.size();) {
    const Ring& next = rings[i + 1];
    if (next.middle() - rings[i].middle() >= drawn(rings_apart_drawn)) {
      ++i;
      continue;
    }
    rings[i].to = std::max(rings[i].to, next.to);
    rings[i].count += next.count;
    rings.erase(rings.begin() + static_cast<std::ptrdiff_t>(i) + 1);
    if (i > 0) --i;  // it has moved towards the one before
  }
  return rings;
}

void RunBandItem::add_marks(ShapeList& list) const {
  const RunSheet& run = sheet();
  std::vector<float> boards;
  for (const auto& bay : run.bays)
    if (bay.closed_off) boards.push_back((x_of_post(bay.from) + x_of_post(bay.to)) / 2);
  for (const Ring& ring : rings()) {
    const Point middle{ring.middle(), y(run.height_mm * 2 / 3)};
    elevation::add_chalk_ring(list, {middle, drawn(ring_drawn), drawn(2.2), ring.first},
                              tokens().chalk());
    if (ring.count > 1) add_count(list, ring, boards);
  }
  for (const float middle : boards) {
    const float half = drawn(board_half_drawn);
    const Point corner{middle - half, y(run.height_mm) - drawn(20)};
    elevation::add_barrier_board(list, {corner, {2 * half, drawn(15)}, drawn(1.6)},
                                 tokens().palette());
  }
}

/// Over the rail, one for the parts that stand nearer than they could be told apart.
void RunBandItem::add_chosen(ShapeList& list) const {
  float last = -drawn(mark_drawn);
  std::vector<float> along;
  for (const int part : picture_->marked())
    if (static_cast<std::size_t>(part) < sheet().parts.size())
      along.push_back(x(sheet().parts[static_cast<std::size_t>(part)].along_mm));
  std::sort(along.begin(), along.end());
  for (const float at : along) {
    if (at - last < drawn(mark_apart_drawn)) continue;
    last = at;
    elevation::add_chosen_mark(list, {at, y(sheet().height_mm) - drawn(3)}, drawn(mark_drawn),
                               tokens().chalk(), tokens().paper());
  }
}

/// How many findings a ring stands for, over the rail and beside a board that hangs there.
void RunBandItem::add_count(ShapeList& list, const Ring& ring,
                            const std::vector<float>& boards) const {
  float at = ring.middle();
  const float half = drawn(board_half_drawn + count_text_drawn * 0.7);
  for (const float board : boards)
    if (std::abs(at - board) < half) at = board + half;
  list.label({.text = QString::number(ring.count),
              .at = {at, y(sheet().height_mm) - drawn(5)},
              .size_px = drawn(count_text_drawn) * static_cast<float>(tokens().text_scale()),
              .color = tokens().chalk().rgba(),
              .bold = true});
}

void RunBandItem::act(const std::vector<Gesture>& gestures) {
  for (const Gesture& gesture : gestures) {
    if (gesture.what == Gesture::What::touch) emit chosen();
  }
}

void RunBandItem::touchEvent(QTouchEvent* event) {
  event->accept();
  if (event->type() == QEvent::TouchCancel) return filter_.taken_away();
  std::vector<TouchPoint> all;
  std::vector<TouchPoint> staying;
  for (const QEventPoint& point : event->points()) {
    const TouchPoint at{point.id(), point.position().x(), point.position().y(), 0};
    all.push_back(at);
    if (point.state() != QEventPoint::Released) staying.push_back(at);
  }
  const auto t_ms = static_cast<std::int64_t>(event->timestamp());
  act(filter_.points(all, t_ms));
  act(filter_.points(staying, t_ms));
}

void RunBandItem::mousePressEvent(QMouseEvent* event) {
  const TouchPoint at{-1, event->position().x(), event->position().y(), 0};
  act(filter_.points(std::span(&at, 1), static_cast<std::int64_t>(event->timestamp()),
                     Pointer::mouse));
}

void RunBandItem::mouseReleaseEvent(QMouseEvent* event) {
  const TouchPoint at{-1, event->position().x(), event->position().y(), 0};
  const auto t_ms = static_cast<std::int64_t>(event->timestamp());
  act(filter_.points(std::span(&at, 1), t_ms, Pointer::mouse));
  act(filter_.points({}, t_ms, Pointer::mouse));
}

void RunBandItem::keyPressEvent(QKeyEvent* event) {
  const bool press = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter ||
                     event->key() == Qt::Key_Space;
  if (!press) return event->ignore();
  emit chosen();
}
