#include "mobile/feel/device.h"

#include <QFile>
#include <QGuiApplication>
#include <QLibrary>
#include <QThread>
#include <utility>

namespace kneerail::feel {

namespace {

QString sound_library() {
  return QCoreApplication::applicationDirPath() + QStringLiteral("/libkneerail_sound.so");
}

/// The library is loaded, and plays, away from the screens: opening a loudspeaker takes its time.
class Loudspeaker : public Device {
 public:
  Loudspeaker() : there_(new QObject) {
    there_->moveToThread(&thread_);
    thread_.start(QThread::LowPriority);
    QMetaObject::invokeMethod(there_, [this] { load(); });
  }
  ~Loudspeaker() override {
    QMetaObject::invokeMethod(there_, [this] {
      if (close_ != nullptr) close_();
      delete there_;
    });
    thread_.quit();
    thread_.wait();
  }
  Loudspeaker(const Loudspeaker&) = delete;
  Loudspeaker& operator=(const Loudspeaker&) = delete;

  void play(const std::vector<std::int16_t>& sound) override {
    QMetaObject::invokeMethod(there_, [this, sound] {
      if (play_ != nullptr) play_(sound.data(), static_cast<int>(sound.size()));
    });
  }

 private:
  void load() {
    library_.setFileName(sound_library());
    const auto open = reinterpret_cast<bool (*)()>(library_.resolve("kneerail_sound_open"));
    if (open == nullptr || !open()) return;
    play_ = reinterpret_cast<Play>(library_.resolve("kneerail_sound_play"));
    close_ = reinterpret_cast<Close>(library_.resolve("kneerail_sound_close"));
  }

  using Play = void (*)(const std::int16_t*, int);
  using Close = void (*)();

  QThread thread_;
  QObject* there_;  ///< lives on the thread
  QLibrary library_;
  Play play_ = nullptr;  ///< touched on the thread alone
  Close close_ = nullptr;
};

}  // namespace

bool sound_is_there() {
  return QGuiApplication::platformName() != QLatin1String("offscreen") &&
         QFile::exists(sound_library());
}

std::unique_ptr<Device> device_of_machine() {
  if (sound_is_there()) return std::make_unique<Loudspeaker>();
  return std::make_unique<Device>();
}

}  // namespace kneerail::feel
