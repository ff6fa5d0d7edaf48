#include "mobile/screens/start.h"

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <QQuickWindow>
#include <cstdlib>

#include "mobile/screens/rooms.h"
#include "mobile/theme/language.h"

namespace kneerail {

namespace {

bool has_display() {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (const char* value = std::getenv(name); value != nullptr && *value != '\0') return true;
  return false;
}

/// One line when the first frame is on the glass: what is open.
void say_when_drawn(QQmlApplicationEngine& engine, Rooms& rooms, commands::Console& console) {
  auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().front());
  if (window == nullptr) return;
  const auto say = [&rooms, &console] {
    const WalkModel& walk = rooms.walk();
    if (walk.opened())
      console.out << "Open: " << walk.site_name().toStdString() << ", "
                  << walk.run_name().toStdString() << ", post " << walk.post_label().toStdString()
                  << std::endl;
    else
      console.out << "Open. There is no run to walk in this register yet." << std::endl;
  };
  QObject::connect(
      window, &QQuickWindow::frameSwapped, window, say,
      static_cast<Qt::ConnectionType>(Qt::QueuedConnection | Qt::SingleShotConnection));
}

}  // namespace

commands::Exit open_screens(const commands::OpenOptions& options, commands::Console& console) {
  if (!has_display()) {
    console.err << "There is no display here to open a window on. Nothing was changed.\n";
    return commands::Exit::machine;
  }
  int argc = 1;
  char name[] = "kneerail";
  char* argv[] = {name, nullptr};
  QGuiApplication app(argc, argv);
  install_language(app);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  auto rooms = Rooms::open({.folder = options.folder});
  if (!rooms) return commands::report(rooms.error(), console);
  QQmlApplicationEngine engine;
  (*rooms)->show(engine);
  if (engine.rootObjects().isEmpty()) {
    console.err << "The screens could not be made: a QML module is missing, see above.\n";
    return commands::Exit::machine;
  }
  say_when_drawn(engine, **rooms, console);
  return QGuiApplication::exec() == 0 ? commands::Exit::done : commands::Exit::machine;
}

}  // namespace kneerail
