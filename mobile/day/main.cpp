// demo-day --data DIR [--pictures DIR]
// Walks part of a day on a demo register through the real window, without a display.

#include <QCommandLineParser>
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <filesystem>
#include <iostream>

#include "mobile/commands/console.h"
#include "mobile/day/register_check.h"
#include "mobile/theme/language.h"

namespace {

using namespace kneerail;

int told(const Error& error) {
  std::cerr << error.message << "\n";
  return static_cast<int>(commands::Exit::machine);
}

/// Walks on the window and closes it again.
Result<std::vector<day::Entered>> walked(const std::filesystem::path& folder,
                                         const std::filesystem::path& pictures) {
  auto rooms = Rooms::open({.folder = folder});
  if (!rooms) return fail(rooms.error());
  QQmlApplicationEngine engine;
  (*rooms)->show(engine);
  auto* window = engine.rootObjects().isEmpty()
                     ? nullptr
                     : qobject_cast<QQuickWindow*>(engine.rootObjects().constFirst());
  auto* tokens = engine.singletonInstance<Tokens*>(qmlTypeId("Kneerail.Ui", 1, 0, "Tokens"));
  if (window == nullptr || tokens == nullptr) {
    return fail(Fault::io, "The screens could not be made: a QML module is missing, see above.");
  }
  day::Hand hand(*window, **rooms, pictures);
  auto entered = day::walk(**rooms, hand, *tokens);
  std::cout << hand.pictures() << " pictures in " << pictures.string() << "\n";
  return entered;
}

int run(const std::filesystem::path& folder, const std::filesystem::path& pictures) {
  std::error_code error;
  std::filesystem::create_directories(pictures, error);
  if (error) {
    return told(fail(Fault::io, pictures.string() + ": The folder for the pictures could not be "
                                                    "made. Nothing was entered."));
  }
  const auto entered = walked(folder, pictures);
  if (!entered) return told(entered.error());
  auto store = Register::open({.folder = folder, .mode = Mode::read});
  if (!store) return told(store.error());
  std::cout << "Entered; the register in " << folder.string() << ", opened again, has\n";
  bool all = true;
  for (const day::Entered& one : *entered) {
    const auto there = day::is_there(**store, one);
    if (!there) return told(there.error());
    std::cout << (*there ? "  yes  " : "  NO   ") << one.title << ": " << day::words(one) << "\n";
    all = all && *there;
  }
  return static_cast<int>(all ? commands::Exit::done : commands::Exit::findings);
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QGuiApplication app(argc, argv);
  install_language(app);
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  QCommandLineParser line;
  line.setApplicationDescription("Walks part of a day on a demo register, without a display.");
  line.addHelpOption();
  line.addOptions({{"data", "The register's folder.", "DIR"},
                   {"pictures", "Where the pictures go.", "DIR", "pictures"}});
  line.process(app);
  if (!line.isSet("data")) {
    std::cerr << "Which register? Name its folder with --data DIR.\n";
    return static_cast<int>(commands::Exit::misuse);
  }
  return run(line.value("data").toStdString(), line.value("pictures").toStdString());
}
