// demo-day --data DIR [--pictures DIR]
// Walks a day on a demo register through the real window, without a display. In the forenoon the
// machine goes off in the middle of a set of readings; the afternoon opens what is left.

#include <QCommandLineParser>
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <filesystem>
#include <iostream>

#include "mobile/commands/console.h"
#include "mobile/day/power_cut.h"
#include "mobile/day/register_check.h"
#include "mobile/theme/language.h"

namespace {

using namespace kneerail;

struct Folders {
  std::filesystem::path data;
  std::filesystem::path pictures;
};

using PartOfDay = Result<std::vector<day::Entered>> (*)(const day::Screen&);

int told(const Error& error) {
  std::cerr << error.message << "\n";
  return static_cast<int>(commands::Exit::machine);
}

/// Walks on the window. It is closed again, unless the power goes before: `cut` ends the process.
Result<std::vector<day::Entered>> walked(const Folders& folders, PartOfDay part,
                                         const day::Ends& cut = {}) {
  auto rooms = Rooms::open({.folder = folders.data});
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
  day::Hand hand(*window, **rooms, folders.pictures);
  auto entered = part({**rooms, hand, *tokens});
  std::cout << hand.pictures() << " pictures in " << folders.pictures.string() << "\n";
  if (cut) cut(entered);
  Rooms::take_down(engine);
  return entered;
}

int told_of(const std::vector<day::Entered>& entered, const std::filesystem::path& folder) {
  auto store = Register::open({.folder = folder, .mode = Mode::read});
  if (!store) return told(store.error());
  std::cout << "Entered; the register in " << folder.string() << ", opened again, has\n";
  bool all = true;
  for (const day::Entered& one : entered) {
    const auto there = day::is_there(**store, one);
    if (!there) return told(there.error());
    std::cout << (*there ? "  yes  " : "  NO   ") << one.title << ": " << day::words(one) << "\n";
    all = all && *there;
  }
  return static_cast<int>(all ? commands::Exit::done : commands::Exit::findings);
}

/// Each part of the day is a process that has the screen for itself.
class Screens {
 public:
  Screens(int& argc, char** argv) : app_(argc, argv) {
    install_language(app_, Language::of_machine);
  }

 private:
  QGuiApplication app_;
};

int run(const Folders& folders, int& argc, char** argv) {
  std::error_code error;
  std::filesystem::create_directories(folders.pictures, error);
  if (error) {
    return told(fail(Fault::io, folders.pictures.string() +
                                    ": The folder for the pictures could not be made. Nothing "
                                    "was entered."));
  }
  auto entered = day::until_power_cut([&](const day::Ends& ends) {
    const Screens screens(argc, argv);
    ends(walked(folders, &day::forenoon, ends));
  });
  if (!entered) return told(entered.error());
  const Screens screens(argc, argv);
  const auto rest = walked(folders, &day::afternoon);
  if (!rest) return told(rest.error());
  entered->insert(entered->end(), rest->begin(), rest->end());
  return told_of(*entered, folders.data);
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QStringList words;
  for (int i = 0; i < argc; ++i) words << QString::fromLocal8Bit(argv[i]);
  QCommandLineParser line;
  line.setApplicationDescription("Walks a day on a demo register, without a display.");
  line.addHelpOption();
  line.addOptions({{"data", "The register's folder.", "DIR"},
                   {"pictures", "Where the pictures go.", "DIR", "pictures"}});
  line.process(words);
  if (!line.isSet("data")) {
    std::cerr << "Which register? Name its folder with --data DIR.\n";
    return static_cast<int>(commands::Exit::misuse);
  }
  return run({line.value("data").toStdString(), line.value("pictures").toStdString()}, argc, argv);
}
