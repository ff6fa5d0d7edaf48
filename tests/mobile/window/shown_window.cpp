#include "tests/mobile/window/shown_window.h"

#include <QEventLoop>
#include <algorithm>
#include <functional>
#include <utility>

#include "mobile/elevation/elevation_item.h"
#include "mobile/theme/tokens.h"

namespace kneerail::tests {
namespace {

constexpr std::int64_t year_ms = 365LL * 24 * 60 * 60 * 1000;
constexpr const char* folder_in_memory = "/register";

QPointingDevice* glass() {
  static QPointingDevice* const device = QTest::createTouchDevice();
  return device;
}

QQuickItem* find_in(QQuickItem& at, const QString& name) {
  if (!at.isVisible()) return nullptr;
  if (at.objectName() == name) return at.isEnabled() ? &at : nullptr;
  for (QQuickItem* child : at.childItems())
    if (QQuickItem* found = find_in(*child, name)) return found;
  return nullptr;
}

}  // namespace

ShownWindow::ShownWindow(int posts) : ShownWindow(posts, folder_in_memory, false) {}

ShownWindow::ShownWindow(int posts, std::filesystem::path folder)
    : ShownWindow(posts, std::move(folder), true) {}

ShownWindow::ShownWindow(int posts, std::filesystem::path folder, bool real)
    : folder_(std::move(folder)), real_(real), site_(posts) {
  world_.clock.wall_ms -= year_ms;
  {
    auto opened = taken(Register::open(options(Mode::create)));
    taken(opened->save(site_.things()));
    taken(opened->save(site_.last_year()));
    taken(keep_settings(*opened, {{"cautions_read", 1}}));
  }
  world_.clock.move_on(year_ms);
  switch_on();
  touch(QStringLiteral("walkTag"));
}

ShownWindow::~ShownWindow() {
  switch_off();
}

Register::Options ShownWindow::options(Mode mode) {
  return world_.options(folder_, mode, real_ ? nullptr : &disk_.files());
}

void ShownWindow::switch_on(QSize size) {
  rooms_ = taken(Rooms::open(options(Mode::write)));
  engine_ = std::make_unique<QQmlApplicationEngine>();
  rooms_->show(*engine_);
  REQUIRE(engine_->rootObjects().size() == 1);
  window_ = qobject_cast<QQuickWindow*>(engine_->rootObjects().front());
  REQUIRE(window_ != nullptr);
  if (rooms_->tablet().cautions_read()) window_->setProperty("place", 1);  // the walk
  tokens().set_less_motion(true);
  resize(size);
}

Tokens& ShownWindow::tokens() {
  return *engine_->singletonInstance<Tokens*>(qmlTypeId("Kneerail.Ui", 1, 0, "Tokens"));
}

void ShownWindow::switch_off() {
  if (engine_ != nullptr) Rooms::take_down(*engine_);
  engine_.reset();
  window_ = nullptr;
  rooms_.reset();
}

void ShownWindow::cut_power(std::uint64_t seed, QSize size) {
  disk_.cut_after(0);
  switch_off();
  disk_.restore_power(seed);
  switch_on(size);
}

void ShownWindow::settle() {
  // An answer may ask for more; three rounds are one more than any touch needs.
  for (int round = 0; round < 3; ++round) {
    rooms_->store().settle();
    QCoreApplication::processEvents();
  }
  // Rows and columns lay themselves out before a frame.
  QEventLoop loop;
  QObject::connect(window_, &QQuickWindow::frameSwapped, &loop, &QEventLoop::quit,
                   Qt::QueuedConnection);
  window_->update();
  loop.exec();
  // What the forecast reckons comes from a thread of its own.
  while (real_ && rooms_->reckons()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
}

int ShownWindow::labels_on_keys_fit() {
  settle();
  int labels = 0;
  const std::function<void(QQuickItem&)> look = [&](QQuickItem& at) {
    if (!at.isVisible()) return;
    const QString text = at.property("text").toString();
    if (at.objectName() == "keyLabel" && !text.isEmpty()) {
      INFO(text.toStdString() << ", " << at.width() << " x " << at.height());
      CHECK(at.property("contentHeight").toDouble() <= at.height() + 1);
      CHECK(at.property("contentWidth").toDouble() <= at.width() + 1);
      CHECK_FALSE(at.property("truncated").toBool());
      ++labels;
    }
    for (QQuickItem* child : at.childItems()) look(*child);
  };
  look(*window_->contentItem());
  return labels;
}

void ShownWindow::settle_pictures() {
  constexpr int loading = 2;  // Image.Loading
  const std::function<bool(QQuickItem&)> loads = [&](QQuickItem& at) {
    if (!at.isVisible()) return false;
    if (at.inherits("QQuickImage") && at.property("status").toInt() == loading) return true;
    const auto children = at.childItems();
    return std::any_of(children.begin(), children.end(),
                       [&](QQuickItem* child) { return loads(*child); });
  };
  settle();
  while (loads(*window_->contentItem()))
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  settle();
}

void ShownWindow::resize(QSize size) {
  window_->resize(size);
  settle();
}

QQuickItem* ShownWindow::find(const QString& name) {
  return find_in(*window_->contentItem(), name);
}

QString ShownWindow::text_of(const QString& name) {
  QQuickItem* item = find(name);
  return item == nullptr ? QString() : item->property("text").toString();
}

bool ShownWindow::touch_only(const QString& name) {
  QQuickItem* item = find(name);
  if (item == nullptr) return false;
  const QPoint middle = item->mapToScene({item->width() / 2, item->height() / 2}).toPoint();
  QTest::touchEvent(window_, glass()).press(0, middle, window_);
  QTest::touchEvent(window_, glass()).release(0, middle, window_);
  return true;
}

bool ShownWindow::touch(const QString& name) {
  const bool there = touch_only(name);
  settle();
  return there;
}

bool ShownWindow::drag(const QString& name, const std::vector<QPointF>& shares) {
  QQuickItem* item = find(name);
  if (item == nullptr || shares.empty()) return false;
  std::vector<QPoint> places;  // the item may follow the finger
  for (const QPointF& share : shares)
    places.push_back(
        item->mapToScene({item->width() * share.x(), item->height() * share.y()}).toPoint());
  QTest::touchEvent(window_, glass()).press(0, places.front(), window_);
  for (const QPoint& place : places) {
    QTest::touchEvent(window_, glass()).move(0, place, window_);
    QCoreApplication::processEvents();
  }
  QTest::touchEvent(window_, glass()).release(0, places.back(), window_);
  settle();
  return true;
}

void ShownWindow::touch_drawing(double along_mm, double up_mm) {
  auto* drawing = qobject_cast<ElevationItem*>(find(QStringLiteral("elevation")));
  REQUIRE(drawing != nullptr);
  drawing->use_clock([this] { return touch_ms_; });
  const QPoint at =
      drawing->mapToScene({drawing->view().x_px(along_mm), drawing->view().y_px(up_mm)}).toPoint();
  touch_ms_ += 1000;
  QTest::touchEvent(window_, glass()).press(0, at, window_);
  touch_ms_ += 100;
  QTest::touchEvent(window_, glass()).release(0, at, window_);
  settle();
}

void ShownWindow::lay_palm_on_drawing() {
  auto* drawing = qobject_cast<ElevationItem*>(find(QStringLiteral("elevation")));
  REQUIRE(drawing != nullptr);
  drawing->use_clock([this] { return touch_ms_; });
  touch_ms_ += 1000;
  const QPoint at = drawing->mapToScene({drawing->width() / 2, drawing->height() / 2}).toPoint();
  constexpr int fingers = 3;
  constexpr int apart_px = 60;
  {
    auto palm = QTest::touchEvent(window_, glass());
    for (int i = 0; i < fingers; ++i) palm.press(i, at + QPoint(i * apart_px, 0), window_);
  }
  {
    auto palm = QTest::touchEvent(window_, glass());
    for (int i = 0; i < fingers; ++i) palm.release(i, at + QPoint(i * apart_px, 0), window_);
  }
}

void ShownWindow::type(const QString& digits) {
  for (const QChar digit : digits) CHECK(touch(QStringLiteral("digit") + digit));
  CHECK(touch(QStringLiteral("nextSlot")));
}

void ShownWindow::keys(const QString& keys, int apart_ms) {
  key_ms_ += 1000;
  for (const QChar key : keys) {
    const bool enter = key == '\n';
    for (const auto type : {QEvent::KeyPress, QEvent::KeyRelease}) {
      QKeyEvent event(type, enter ? int{Qt::Key_Return} : int{key.toUpper().unicode()},
                      Qt::NoModifier, enter ? QStringLiteral("\r") : QString(key));
      event.setTimestamp(key_ms_);
      QCoreApplication::sendEvent(window_, &event);
    }
    key_ms_ += static_cast<quint64>(apart_ms);
  }
  settle();
}

std::int64_t ShownWindow::count(const std::string& sql) {
  return taken(rooms_->store().reader().tables().number(sql));
}

}  // namespace kneerail::tests
