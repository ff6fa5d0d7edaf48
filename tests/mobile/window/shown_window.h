#pragma once

// The real window on a small site, offscreen, on a disk in memory; driven by Qt's own touch and key
// events. The machine can be switched off and on.

#include <QKeyEvent>
#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QTest>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "mobile/screens/rooms.h"
#include "mobile/theme/tokens.h"
#include "tests/faults/fault_disk.h"
#include "tests/mobile/walking.h"

namespace kneerail::tests {

class ShownWindow {
 public:
  explicit ShownWindow(int posts = 4);
  /// On a real disk, in a folder that is not there yet: the forecast reads it for itself.
  ShownWindow(int posts, std::filesystem::path folder);
  ~ShownWindow();

  void switch_on(QSize size = {1280, 800});
  /// The window and all behind it go, after the power of the disk is cut where that is asked.
  void switch_off();
  /// The power goes, with whatever the disk had not synced, and comes back.
  void cut_power(std::uint64_t seed, QSize size = {1280, 800});
  /// Everything that was asked is on the disk and on the glass.
  void settle();
  /// The same, with every picture that is on its way to the glass.
  void settle_pictures();

  /// The item of that name that a finger can reach; null: there is none.
  [[nodiscard]] QQuickItem* find(const QString& name);
  [[nodiscard]] QString text_of(const QString& name);
  /// A finger down and up in the middle of it. False: there is nothing to touch.
  bool touch(const QString& name);
  /// The same, without waiting for what comes of it.
  bool touch_only(const QString& name);
  /// A finger that goes along places of it, each a share of its width and height, and lets go at
  /// the last. False: there is nothing to touch.
  bool drag(const QString& name, const std::vector<QPointF>& shares);
  /// On the drawing, at a place of the run.
  void touch_drawing(double along_mm, double up_mm);
  /// Three fingers at once. Waits for nothing.
  void lay_palm_on_drawing();
  /// Each digit by its key, then the next slot.
  void type(const QString& digits);
  /// Keys of a keyboard, so many ms apart. '\n' is Enter.
  void keys(const QString& keys, int apart_ms);
  void resize(QSize size);

  [[nodiscard]] WalkModel& walk() { return rooms_->walk(); }
  [[nodiscard]] Rooms& rooms() { return *rooms_; }
  [[nodiscard]] faults::FaultDisk& disk() { return disk_; }
  [[nodiscard]] SteadyClock& clock() { return world_.clock; }
  [[nodiscard]] const WalkedSite& site() const { return site_; }
  [[nodiscard]] QQuickWindow& window() { return *window_; }
  [[nodiscard]] Tokens& tokens();
  /// Checks that no word on a key is broken, cut or over its edge; how many labels there are.
  int labels_on_keys_fit();
  std::int64_t count(const std::string& sql);

 private:
  ShownWindow(int posts, std::filesystem::path folder, bool real);
  [[nodiscard]] Register::Options options(Mode mode);

  const std::filesystem::path folder_;
  const bool real_;
  faults::FaultDisk disk_;
  World world_;
  WalkedSite site_;
  std::unique_ptr<Rooms> rooms_;
  std::unique_ptr<QQmlApplicationEngine> engine_;
  QQuickWindow* window_ = nullptr;
  std::int64_t touch_ms_ = 1000;
  quint64 key_ms_ = 1000;
};

}  // namespace kneerail::tests
