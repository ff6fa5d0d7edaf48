#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QTest>
#include <iostream>

#include "mobile/day/hand.h"
#include "mobile/screens/rooms.h"
#include "mobile/theme/tokens.h"
#include "tests/benchmark/section.h"
#include "tests/mobile/benchmark/frame_watch.h"
#include "tests/mobile/benchmark/sections.h"

namespace kneerail::benchmark {

namespace {

using Steady = std::chrono::steady_clock;
using namespace std::chrono_literals;

constexpr auto idle_time = 5s;
constexpr const char* bare_window =
    "import QtQuick\nWindow { visible: true; width: 1280; height: 800\n"
    "Rectangle { width: 200; height: 200; color: tap.pressed ? 'black' : 'white'\n"
    "TapHandler { id: tap } } }";

/// A finger on a window; each touch goes down, and the frame it causes is waited for.
class Finger {
 public:
  explicit Finger(QQuickWindow& window)
      : window_(window), watch_(window), glass_(QTest::createTouchDevice()) {}

  /// ms from the finger's coming down to the first frame after it; none: nothing changed.
  std::optional<double> down(QPoint place) {
    watch_.quiet();
    const auto since = Steady::now();
    QTest::touchEvent(&window_, glass_).press(0, place, &window_);
    return watch_.next_frame_ms(since);
  }
  void up(QPoint place) { QTest::touchEvent(&window_, glass_).release(0, place, &window_); }
  [[nodiscard]] FrameWatch& watch() { return watch_; }

 private:
  QQuickWindow& window_;
  FrameWatch watch_;
  QPointingDevice* glass_;
};

QPoint middle(const QQuickItem& item) {
  return item.mapToScene({item.width() / 2, item.height() / 2}).toPoint();
}

std::vector<double> touches_of_a_bare_window(int touches) {
  QQmlApplicationEngine engine;
  engine.loadData(bare_window);
  auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().value(0));
  check(window != nullptr, "the bare window could not be made");
  (void)QTest::qWaitForWindowExposed(window);
  Finger finger(*window);
  std::vector<double> times;
  for (int touch = 0; touch < touches; ++touch) {
    if (const auto ms = finger.down({100, 100})) times.push_back(*ms);
    finger.up({100, 100});
  }
  return times;
}

/// Enters sets of readings on the real window by touches, and takes the times.
class Entering {
 public:
  Entering(QQuickWindow& window, Rooms& rooms, day::Hand& hand)
      : rooms_(rooms), hand_(hand), finger_(window) {
    QObject::connect(&rooms.walk(), &WalkModel::felt, &rooms.walk(),
                     [this] { kept_at_ = Steady::now(); });
  }

  Result<> set() {
    for (int slot = 0; slot < CoatingSet::slot_count; ++slot) {
      for (const char* digit : {"digit7", "digit4"}) {
        if (auto done = touch(digit); !done) return done;
      }
      if (auto done = finish(); !done) return done;
    }
    return Done{};
  }
  [[nodiscard]] std::vector<double>& touched() { return touched_ms_; }
  [[nodiscard]] std::vector<double>& kept() { return kept_ms_; }
  [[nodiscard]] FrameWatch& watch() { return finger_.watch(); }

 private:
  Result<> touch(const char* name) {
    const QQuickItem* key = hand_.named(QString::fromLatin1(name));
    if (key == nullptr) {
      return fail(Fault::not_found, std::string("'") + name + "' is not on the screen.");
    }
    const QPoint place = middle(*key);
    const auto ms = finger_.down(place);
    if (!ms) return fail(Fault::io, std::string("A touch of '") + name + "' changed nothing.");
    touched_ms_.push_back(*ms);
    finger_.up(place);
    return Done{};
  }
  /// From the finger's leaving "next" to the frame after the register's answer.
  Result<> finish() {
    const QQuickItem* key = hand_.named(QStringLiteral("nextSlot"));
    if (key == nullptr) return fail(Fault::not_found, "'nextSlot' is not on the screen.");
    const QPoint place = middle(*key);
    (void)finger_.down(place);
    finger_.watch().quiet();
    kept_at_.reset();
    const auto since = Steady::now();
    finger_.up(place);
    while (!kept_at_ && Steady::now() - since < 5s) FrameWatch::wait(1ms);
    if (!kept_at_) return fail(Fault::io, "A reading was not answered for 5 s.");
    const auto drawn = finger_.watch().next_frame_ms(*kept_at_);
    const double wrote_ms = std::chrono::duration<double, std::milli>(*kept_at_ - since).count();
    kept_ms_.push_back(wrote_ms + drawn.value_or(0));
    return Done{};
  }

  Rooms& rooms_;
  day::Hand& hand_;
  Finger finger_;
  std::vector<double> touched_ms_;
  std::vector<double> kept_ms_;
  std::optional<Steady::time_point> kept_at_;
};

Result<> open_longest_run(Rooms& rooms) {
  auto longest = rooms.store().reader().tables().prepare(
      "SELECT parent FROM entity WHERE type = 5 GROUP BY parent ORDER BY count(*) DESC LIMIT 1");
  if (!longest) return fail(longest.error());
  const auto there = longest->step();
  if (!there) return fail(there.error());
  if (*there) rooms.walk().open(longest->uuid(0));
  return Done{};
}

Result<> enter_sets(Rooms& rooms, Entering& entering, int sets) {
  WalkModel& walk = rooms.walk();
  const std::shared_ptr<const RunSheet> sheet = walk.run()->sheet();  // it is read again meanwhile
  int entered = 0;
  for (int part = 0; part < std::ssize(sheet->parts) && entered < sets; ++part) {
    walk.choosePart(part);
    if (!walk.coating_offered()) continue;
    walk.openPad(WalkModel::CoatingPad);
    rooms.store().settle();
    if (auto done = entering.set(); !done) return done;
    ++entered;
  }
  return Done{};
}

void watch_nothing(FrameWatch& watch) {
  watch.quiet();
  FrameWatch::wait(12s);  // the bar that takes an act back has run out
  const int before = watch.frames();
  FrameWatch::wait(idle_time);
  std::cout << "  frames in " << std::chrono::seconds(idle_time).count()
            << " s of a walk nobody touches: " << watch.frames() - before << "\n";
}

}  // namespace

Result<> measure_walk(const std::filesystem::path& register_folder, const Times& times) {
  auto bare = touches_of_a_bare_window(times.bare_touches);
  auto rooms = Rooms::open({.folder = register_folder});
  if (!rooms) return fail(rooms.error());
  (*rooms)->tablet().readCautions();
  QQmlApplicationEngine engine;
  (*rooms)->show(engine);
  auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().value(0));
  if (window == nullptr) return fail(Fault::io, "The screens could not be made, see above.");
  day::Hand hand(*window, **rooms, {});
  if (auto done = hand.touch(QStringLiteral("walkTag")); !done) return done;
  if (auto done = open_longest_run(**rooms); !done) return done;
  hand.settle();
  if (!(*rooms)->walk().opened()) {
    return fail(Fault::not_found,
                "There is no run to walk. Name a register that `kneerail demo` made.");
  }
  Entering entering(*window, **rooms, hand);
  if (auto done = enter_sets(**rooms, entering, times.sets); !done) return done;
  auto& touched = entering.touched();
  auto& kept = entering.kept();
  std::cout << "Walk, " << touched.size() << " touches and " << kept.size() << " readings\n";
  print({"touch to first frame, p50", share_below(touched, 0.5), "bare rectangle",
         share_below(bare, 0.5), "ms"});
  print({"touch to first frame, p99", share_below(touched, 0.99), "bare rectangle",
         share_below(bare, 0.99), "ms"});
  print({"reading to drawn as kept, p50", share_below(kept, 0.5), "bare rectangle",
         share_below(bare, 0.5), "ms"});
  print({"reading to drawn as kept, p99", share_below(kept, 0.99), "bare rectangle",
         share_below(bare, 0.99), "ms"});
  hand.settle();
  if (times.idle) watch_nothing(entering.watch());
  std::cout << "  most memory of this process: " << std::lround(memory_peak_mb()) << " MB"
            << std::endl;
  return Done{};
}

}  // namespace kneerail::benchmark
