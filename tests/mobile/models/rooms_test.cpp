// The window and its rooms, on a small register: where it opens, and how one room leads to another.

#include <QCoreApplication>
#include <QImage>
#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QTest>

#include "mobile/screens/rooms.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

struct OpenedRooms {
  explicit OpenedRooms(const std::vector<Entry>& entries) {
    auto made = taken(Register::open(world.options(folder.path(), Mode::create)));
    if (!entries.empty()) taken(made->save(entries));
    taken(keep_settings(*made, {{"cautions_read", 1}}));
    made.reset();
    world.clock.move_on(year_ms);
    switch_on();
  }

  void switch_on() {
    engine.reset();
    rooms.reset();
    rooms = taken(Rooms::open(world.options(folder.path(), Mode::write)));
    engine = std::make_unique<QQmlApplicationEngine>();
    rooms->show(*engine);
    REQUIRE_FALSE(engine->rootObjects().isEmpty());
    window = qobject_cast<QQuickWindow*>(engine->rootObjects().first());
    REQUIRE(window != nullptr);
    window->resize(1280, 800);
    settle();
  }

  /// Until what was asked has come and was drawn.
  void settle() const {
    for (int round = 0; round < 3; ++round) {
      while (rooms->reckons() || rooms->forecast().busy())
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
      rooms->store().settle();
      QCoreApplication::processEvents();
      picture = window->grabWindow();
    }
  }

  [[nodiscard]] QQuickItem* item(const char* name) const {
    return find(window->contentItem(), QString::fromLatin1(name));
  }
  void touch(const char* name) const {
    const QQuickItem* what = item(name);
    INFO(name);
    REQUIRE(what != nullptr);
    const QPointF middle = what->mapToScene({what->width() / 2, what->height() / 2});
    QTest::mousePress(window, Qt::LeftButton, {}, middle.toPoint());
    QTest::mouseRelease(window, Qt::LeftButton, {}, middle.toPoint(), touch_ms);
    settle();
  }
  [[nodiscard]] bool stands(const char* room) const {
    const QQuickItem* what = item(room);
    return what != nullptr && what->isVisible();
  }

  static QQuickItem* find(QQuickItem* in, const QString& name) {
    if (in->objectName() == name) return in;
    for (QQuickItem* child : in->childItems())
      if (QQuickItem* found = find(child, name)) return found;
    return nullptr;
  }

  static constexpr int touch_ms = 80;
  static constexpr std::int64_t year_ms = 365LL * 24 * 60 * 60 * 1000;
  Folder folder;
  World world;
  std::unique_ptr<Rooms> rooms;
  std::unique_ptr<QQmlApplicationEngine> engine;
  QQuickWindow* window = nullptr;
  mutable QImage picture;
};

std::vector<Entry> walked_site() {
  const WalkedSite site(4);
  std::vector<Entry> all = site.things();
  for (Entry& entry : site.last_year()) all.push_back(std::move(entry));
  return all;
}

}  // namespace

TEST_CASE("the window opens at the sites, and a run that is touched is walked", "[rooms]") {
  const OpenedRooms app(walked_site());
  CHECK(app.stands("sitesRoom"));
  CHECK_FALSE(app.stands("walkRoom"));
  app.touch("run");
  CHECK(app.stands("walkRoom"));
  CHECK(app.rooms->walk().run_name() == "Ferry Slip");
}

TEST_CASE("the forecast is of the part that is chosen in the walk, and leads back to it",
          "[rooms]") {
  const OpenedRooms app(walked_site());
  app.touch("run");
  const int part = 3;
  app.rooms->walk().choosePart(part);
  const QString title = app.rooms->walk().part_title();
  app.touch("forecastTag");
  CHECK(app.stands("forecastRoom"));
  CHECK(app.rooms->forecast().run()->part() == part);
  app.rooms->walk().choosePart(0);
  app.rooms->forecast().walkHere();
  app.settle();
  CHECK(app.stands("walkRoom"));
  CHECK(app.rooms->walk().part_title() == title);
  app.touch("sitesTag");
  CHECK(app.stands("sitesRoom"));
}

TEST_CASE("the forecast of a part knows the readings just entered", "[rooms]") {
  const OpenedRooms app(walked_site());
  app.touch("run");
  WalkModel& walk = app.rooms->walk();
  ForecastModel& forecast = app.rooms->forecast();
  const auto sheet = walk.run()->sheet();
  const auto& parts = sheet->parts;
  const auto tee_of = [&](int post) {
    for (std::size_t i = 0; i < parts.size(); ++i)
      if (parts[i].post == post && parts[i].spots.size() == 2) return static_cast<int>(i);
    return -1;
  };
  const auto last_dots = [&] {
    return forecast.trend().dots.isEmpty() ? QVector<qreal>() : forecast.trend().dots.last().values;
  };
  walk.choosePart(tee_of(2));
  app.touch("forecastTag");
  REQUIRE(forecast.drawn());
  CHECK(forecast.reason().contains("gauge A2"));  // its name, not its identifier
  app.touch("walkTag");
  walk.choosePart(tee_of(0));
  walk.openPad(WalkModel::CoatingPad);
  for (const char* reading : {"71", "72", "73", "74", "75"}) walk.typed(reading);
  app.settle();
  walk.choosePart(tee_of(0));
  app.touch("forecastTag");
  CHECK(forecast.run()->part() == tee_of(0));
  CHECK(last_dots() == QVector<qreal>{71, 72, 73, 74, 75});
  CHECK_FALSE(forecast.stale());
  forecast.choosePart(tee_of(2));
  app.settle();
  CHECK(last_dots() == QVector<qreal>{88, 84, 86, 90, 85});
  walk.undo();
  app.settle();
  forecast.choosePart(tee_of(0));
  app.settle();
  CHECK(last_dots() == QVector<qreal>{88, 84, 86, 90, 85});
}

TEST_CASE("after a walk the window opens where the walker was", "[rooms]") {
  OpenedRooms app(walked_site());
  app.touch("run");
  app.rooms->walk().choosePart(2);
  app.settle();
  app.switch_on();
  CHECK(app.stands("walkRoom"));
  CHECK(app.rooms->walk().run()->part() == 2);
}

TEST_CASE("an empty register opens on a page that says how to begin", "[rooms]") {
  const OpenedRooms app({});
  CHECK(app.stands("sitesRoom"));
  CHECK(app.stands("noSites"));
  app.touch("forecastTag");
  CHECK(app.stands("forecastRoom"));
  CHECK_FALSE(app.rooms->forecast().message().isEmpty());
  app.touch("walkTag");
  CHECK(app.stands("walkRoom"));
}

TEST_CASE("the forecast's piece of rail shows the grade just given", "[rooms]") {
  const OpenedRooms app(walked_site());
  app.touch("run");
  WalkModel& walk = app.rooms->walk();
  const int part = 2;
  walk.choosePart(part);
  walk.chooseGrade(4);
  app.settle();
  app.touch("forecastTag");
  const auto sheet = app.rooms->forecast().run()->sheet();
  const SheetPart& shown = sheet->parts.at(part);
  REQUIRE(shown.now);
  CHECK(shown.now->grade == 4);
  REQUIRE(shown.last);
  CHECK(shown.last->grade == 1);
  app.touch("walkTag");
  walk.undo();
  app.settle();
  app.touch("forecastTag");
  CHECK_FALSE(app.rooms->forecast().run()->sheet()->parts.at(part).now);
}

TEST_CASE("more sites than the screen holds are said to be below, until the last is seen",
          "[rooms]") {
  std::vector<Entry> entries = walked_site();
  const WalkedSite first(4);
  constexpr std::uint32_t more = 8;
  for (std::uint32_t i = 2; i < 2 + more; ++i)
    entries.push_back(created(first.organisation, id_of(2, i), 2, first.organisation,
                              {{1, "Quay " + std::to_string(i)}}));
  const OpenedRooms app(entries);
  CHECK(app.stands("moreBelow"));
  QQuickItem* bands = app.item("bands");
  REQUIRE(bands != nullptr);
  QMetaObject::invokeMethod(bands, "positionViewAtEnd");
  app.settle();
  CHECK_FALSE(app.stands("moreBelow"));
  QMetaObject::invokeMethod(bands, "positionViewAtBeginning");
  app.settle();
  CHECK(app.stands("moreBelow"));
  const OpenedRooms few(walked_site());
  CHECK_FALSE(few.stands("moreBelow"));
}
