#pragma once

// Reckons away from the screen, on a thread and a register of its own that only reads. What it
// finds comes back as queued signals; shared and const, because screens may still show the one
// before.

#include <QObject>
#include <QThread>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

#include "core/base/world.h"
#include "mobile/models/reckoning.h"
#include "schema/store/register.h"

class ForecastWorker : public QObject {
  Q_OBJECT

 public:
  /// The clock says what day it is and outlives this.
  ForecastWorker(std::filesystem::path folder, kneerail::Clock& clock, QObject* parent = nullptr);
  ~ForecastWorker() override;

  /// The last reckoning that was told; null before the first.
  [[nodiscard]] std::shared_ptr<const kneerail::Reckoning> reckoning() const { return reckoning_; }
  [[nodiscard]] bool busy() const { return asked_ > 0; }
  /// Why there is no reckoning; empty while there is none to tell.
  [[nodiscard]] QString trouble() const { return trouble_; }

  /// Everything again. Told by reckoned().
  void reckon();
  /// One part with what was entered since. Told by storyTold().
  void tell(const kneerail::Uuid& site, const kneerail::Uuid& component);

 signals:
  void reckoned();
  void busyChanged();
  void storyTold(kneerail::Uuid component,
                 std::shared_ptr<const kneerail::Result<kneerail::forecast::PartStory>> story);

 private:
  using Known = std::shared_ptr<const kneerail::Reckoning>;

  kneerail::Result<kneerail::Register*> reader();
  void take(const kneerail::Result<Known>& made);
  void ended();

  std::filesystem::path folder_;
  kneerail::Clock& clock_;
  QThread thread_;
  QObject* there_;                              ///< lives on the thread; owned by it
  std::unique_ptr<kneerail::Register> reader_;  ///< touched on the thread alone
  Known reckoning_;
  QString trouble_;
  int asked_ = 0;
};
