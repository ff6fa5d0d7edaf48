#pragma once

// Reads the register away from the screens, on a thread and a connection of its own that only read.
// What is asked is done in the order it was asked; the answer comes back on the screens' thread,
// and is dropped when who asked is gone. Nobody waits for work whose answer nobody wants: it is
// left off. The thread begins with the first that is asked: at the start of the program one could
// not be made while the graphics driver is loaded.

#include <QObject>
#include <QThread>
#include <atomic>
#include <filesystem>
#include <functional>
#include <memory>
#include <utility>
#include <vector>

#include "schema/store/register.h"

class ReadingThread : public QObject {
  Q_OBJECT

 public:
  /// Set, it leaves off work that was asked, whether it has begun or not.
  using Stop = std::atomic<bool>;

  explicit ReadingThread(std::filesystem::path folder, QObject* parent = nullptr);
  /// Leaves off whatever was asked.
  ~ReadingThread() override;

  /// `work` is called on the thread, `told` on this object's; cancelled where it was left off.
  /// Statements end by themselves when the flag that is returned is set; what works long without
  /// them looks at it.
  template <class T>
  std::shared_ptr<Stop> ask(
      std::function<kneerail::Result<T>(kneerail::Database&, const Stop&)> work,
      std::function<void(kneerail::Result<T>)> told) {
    auto stop = std::make_shared<Stop>(false);
    asked_.push_back(stop);
    begin();
    QMetaObject::invokeMethod(there_, [this, stop, work = std::move(work), told = std::move(told)] {
      auto made = std::make_shared<kneerail::Result<T>>([&]() -> kneerail::Result<T> {
        auto tables = watched(*stop);
        if (!tables) return kneerail::fail(tables.error());
        auto result = work(**tables, *stop);
        (*tables)->watch(nullptr);
        return result;
      }());
      QMetaObject::invokeMethod(this, [this, stop, made, told] {
        std::erase(asked_, stop);
        told(std::move(*made));
      });
    });
    return stop;
  }
  /// Something was asked and is not answered yet.
  [[nodiscard]] bool busy() const { return !asked_.empty(); }

 private:
  /// Where it has not begun yet.
  void begin();
  /// The register's tables, whose statements end when it is stopped.
  kneerail::Result<kneerail::Database*> watched(const Stop& stop);

  std::filesystem::path folder_;
  QThread thread_;
  QObject* there_;                              ///< lives on the thread; owned by it
  std::unique_ptr<kneerail::Register> reader_;  ///< touched on the thread alone
  kneerail::Watch watch_;                       ///< likewise
  std::vector<std::shared_ptr<Stop>> asked_;
};
