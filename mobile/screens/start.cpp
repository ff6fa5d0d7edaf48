#include "mobile/screens/start.h"

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <cstdlib>

#include "mobile/screens/rooms.h"

namespace kneerail {

namespace {

bool has_display() {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (const char* value = std::getenv(name); value != nullptr && *value != '\0') return true;
  return false;
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
  const QGuiApplication app(argc, argv);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  auto rooms = Rooms::open({.folder = options.folder});
  if (!rooms) return commands::report(rooms.error(), console);
  QQmlApplicationEngine engine;
  (*rooms)->show(engine);
  if (engine.rootObjects().isEmpty()) {
    console.err << "The screens could not be made: a QML module is missing, see above.\n";
    return commands::Exit::machine;
  }
  return QGuiApplication::exec() == 0 ? commands::Exit::done : commands::Exit::machine;
}

}  // namespace kneerail
