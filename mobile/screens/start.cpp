#include "mobile/screens/start.h"

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <cstdlib>

namespace kneerail {

namespace {

bool has_display() {
  return std::getenv("DISPLAY") != nullptr || std::getenv("WAYLAND_DISPLAY") != nullptr;
}

}  // namespace

commands::Exit open_screens(const commands::OpenOptions& options, commands::Console& console) {
  if (options.headless || !has_display()) qputenv("QT_QPA_PLATFORM", "offscreen");
  int argc = 1;
  char name[] = "kneerail";
  char* argv[] = {name, nullptr};
  const QGuiApplication app(argc, argv);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  QQmlApplicationEngine engine;
  engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Kneerail/Ui/screens/Main.qml")));
  if (engine.rootObjects().isEmpty()) {
    console.err << "The screens could not be made: a QML module is missing, see above.\n";
    return commands::Exit::machine;
  }
  return QGuiApplication::exec() == 0 ? commands::Exit::done : commands::Exit::machine;
}

}  // namespace kneerail
