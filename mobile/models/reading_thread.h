#pragma once

// Reads the register away from the screens, on a thread and a connection of its own that only read.
// What is asked is done in the order it was asked; the answer comes back on the screens' thread,
// and is dropped when who asked is gone.

#include <QObject>
#include <QThread>
#include <filesystem>
#include <functional>
#include <memory>
#include <utility>

#include "schema/store/register.h"

class ReadingThread : public QObject {
  Q_OBJECT

 public:
  explicit ReadingThread(std::filesystem::path folder, QObject* parent = nullptr);
  ~ReadingThread() override;

  /// `work` is called on the thread, `told` on this object's.
  template <class T>
  void ask(std::function<kneerail::Result<T>(kneerail::Database&)> work,
           std::function<void(kneerail::Result<T>)> told) {
    ++asked_;
    QMetaObject::invokeMethod(there_, [this, work = std::move(work), told = std::move(told)] {
      auto made = std::make_shared<kneerail::Result<T>>([&]() -> kneerail::Result<T> {
        auto opened = reader();
        if (!opened) return kneerail::fail(opened.error());
        return work((*opened)->tables());
      }());
      QMetaObject::invokeMethod(this, [this, made, told] {
        --asked_;
        told(std::move(*made));
      });
    });
  }
  /// Something was asked and is not answered yet.
  [[nodiscard]] bool busy() const { return asked_ > 0; }

 private:
  kneerail::Result<kneerail::Register*> reader();

  std::filesystem::path folder_;
  QThread thread_;
  QObject* there_;                              ///< lives on the thread; owned by it
  std::unique_ptr<kneerail::Register> reader_;  ///< touched on the thread alone
  int asked_ = 0;
};
