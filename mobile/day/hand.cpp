#include "mobile/day/hand.h"

#include <QImage>
#include <QTest>
#include <utility>

namespace kneerail::day {

namespace {

constexpr QSize lying(1280, 800);
constexpr QSize standing(800, 1280);
constexpr int touch_ms = 60;       // how long a finger stays
constexpr int move_ms = 16;        // and at each place it goes along
constexpr int follow_ms = 350;     // the longest movement on the screen
constexpr int reckon_ms = 60'000;  // a forecast that takes longer is an error elsewhere

QQuickItem* found_below(QQuickItem& item, const Hand::Holds& holds) {
  if (!item.isVisible()) return nullptr;
  if (holds(item)) return &item;
  for (QQuickItem* child : item.childItems()) {
    if (QQuickItem* found = found_below(*child, holds)) return found;
  }
  return nullptr;
}

}  // namespace

Hand::Hand(QQuickWindow& window, Rooms& rooms, std::filesystem::path pictures)
    : window_(window),
      rooms_(rooms),
      folder_(std::move(pictures)),
      screen_(QTest::createTouchDevice()) {
  window_.resize(lying);
  (void)QTest::qWaitForWindowExposed(&window_);
  QTest::qWait(follow_ms);
  settle();
}

QQuickItem* Hand::find(const Holds& holds) const {
  return found_below(*window_.contentItem(), holds);
}

QQuickItem* Hand::named(const QString& name) const {
  return find([&name](const QQuickItem& item) { return item.objectName() == name; });
}

Result<> Hand::touch(const QString& name) {
  const QQuickItem* item = named(name);
  if (item == nullptr) {
    return fail(Fault::not_found, "'" + name.toStdString() +
                                      "' is not on the screen. The day ends "
                                      "here; what was entered before it is kept.");
  }
  touch_at(*item, QPointF(item->width() / 2, item->height() / 2));
  return Done{};
}

void Hand::touch_at(const QQuickItem& item, QPointF place_px) {
  const QPoint place = item.mapToScene(place_px).toPoint();
  QTest::touchEvent(&window_, screen_).press(0, place, &window_);
  QTest::qWait(touch_ms);
  QTest::touchEvent(&window_, screen_).release(0, place, &window_);
  settle();
}

void Hand::drag(const QQuickItem& item, const std::vector<QPointF>& places_px) {
  if (places_px.empty()) return;
  std::vector<QPoint> places;  // the item may follow the finger
  for (const QPointF& place : places_px) places.push_back(item.mapToScene(place).toPoint());
  QTest::touchEvent(&window_, screen_).press(0, places.front(), &window_);
  for (const QPoint& place : places) {
    QTest::touchEvent(&window_, screen_).move(0, place, &window_);
    QTest::qWait(move_ms);
  }
  QTest::touchEvent(&window_, screen_).release(0, places.back(), &window_);
  settle();
}

void Hand::settle() {
  rooms_.store().settle();
  QTest::qWait(touch_ms);
  (void)QTest::qWaitFor([this] { return !rooms_.reckons(); }, reckon_ms);
}

Result<> Hand::picture(const std::string& name) {
  for (const QSize& size : {standing, lying}) {
    window_.resize(size);
    QTest::qWait(follow_ms);
    settle();
    const auto file = folder_ / (name + "-" + std::to_string(size.width()) + "x" +
                                 std::to_string(size.height()) + ".png");
    if (!window_.grabWindow().save(QString::fromStdString(file.string()))) {
      return fail(Fault::io, file.string() + ": The picture could not be written.");
    }
    ++pictures_;
  }
  return Done{};
}

}  // namespace kneerail::day
