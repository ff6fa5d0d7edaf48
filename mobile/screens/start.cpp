#include "mobile/screens/start.h"

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QTimer>
#include <cstdlib>

#include "mobile/screens/before_start.h"
#include "mobile/screens/rooms.h"
#include "mobile/theme/fonts.h"
#include "mobile/theme/language.h"

namespace kneerail {

namespace {

bool has_display() {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (const char* value = std::getenv(name); value != nullptr && *value != '\0') return true;
  return false;
}

/// The window and the rooms behind it. They are drawn while the register is still checked, and made
/// again when it is not as it was read: something was mended, or nobody can write it.
class Screens {
 public:
  Screens(std::filesystem::path folder, commands::Console& console)
      : folder_(std::move(folder)), console_(console) {}

  ~Screens() {
    if (engine_ != nullptr) Rooms::take_down(*engine_);
  }
  Screens(const Screens&) = delete;
  Screens& operator=(const Screens&) = delete;

  /// The first time. The register is read, the rooms' files are loaded and the models are made
  /// while the graphics driver is loaded, which takes as long as all of them.
  Result<> make_first(std::future<StoreLink::Ahead> ahead) {
    auto graphics = load_graphics();
    engine_ = std::make_unique<QQmlApplicationEngine>();
    Rooms::load_ahead(*engine_);
    theme::fonts();  // while the register is read
    return make(Rooms::open({.folder = folder_}, StoreLink::Checks::behind, std::move(ahead)),
                std::move(graphics));
  }

 private:
  Result<> make(Result<std::unique_ptr<Rooms>> rooms, std::future<void> graphics = {}) {
    if (!rooms) return fail(rooms.error());
    rooms_ = std::move(*rooms);
    QObject::connect(&rooms_->store(), &StoreLink::checked, engine_.get(), [this](bool as_read) {
      if (!as_read) QTimer::singleShot(0, qApp, [this] { make_again(); });
    });
    QObject::connect(&rooms_->tablet(), &ThisTablet::languageChosen, engine_.get(),
                     [this] { QTimer::singleShot(0, qApp, [this] { make_again(); }); });
    rooms_->show(*engine_, std::move(graphics));
    if (engine_->rootObjects().isEmpty()) {
      return fail(Fault::io, "The screens could not be made: a QML module is missing, see above.");
    }
    say_when_drawn();
    return Done{};
  }

  void make_again() {
    if (!rooms_->may_be_made_again()) return;
    QGuiApplication::setQuitOnLastWindowClosed(false);
    Rooms::take_down(*engine_);
    engine_.reset();
    rooms_.reset();
    engine_ = std::make_unique<QQmlApplicationEngine>();
    const auto made = make(Rooms::open({.folder = folder_}));
    QGuiApplication::setQuitOnLastWindowClosed(true);
    if (!made) QGuiApplication::exit(static_cast<int>(commands::report(made.error(), console_)));
  }

  /// One line when the room is on the glass: what is open.
  void say_when_drawn() {
    if (rooms_->first_room() == nullptr) return;
    const auto say = [this] {
      const WalkModel& walk = rooms_->walk();
      console_.out << (rooms_->store().writable() ? "Open" : "Open to read only");
      if (walk.opened())
        console_.out << ": " << walk.site_name().toStdString() << ", "
                     << walk.run_name().toStdString() << ", post "
                     << walk.post_label().toStdString() << std::endl;
      else
        console_.out << ". There is no run to walk in this register yet." << std::endl;
    };
    QObject::connect(rooms_->first_room(), &FirstRoom::drawn, engine_.get(), say);
    QObject::connect(rooms_->first_room(), &FirstRoom::drawn, engine_.get(), give_memory_back);
  }

  std::filesystem::path folder_;
  commands::Console& console_;
  std::unique_ptr<Rooms> rooms_;
  std::unique_ptr<QQmlApplicationEngine> engine_;  ///< last: it goes first
};

}  // namespace

commands::Exit open_screens(const commands::OpenOptions& options, commands::Console& console) {
  if (!has_display()) {
    console.err << "There is no display here to open a window on. Nothing was changed.\n";
    return commands::Exit::machine;
  }
  before_start();
  auto ahead = StoreLink::read_ahead({.folder = options.folder});
  int argc = 1;
  char name[] = "kneerail";
  char* argv[] = {name, nullptr};
  QGuiApplication app(argc, argv);
  install_language(app, Language::of_machine);  // until the register says another
  Screens screens(options.folder, console);
  if (auto made = screens.make_first(std::move(ahead)); !made)
    return commands::report(made.error(), console);
  return static_cast<commands::Exit>(QGuiApplication::exec());
}

}  // namespace kneerail
