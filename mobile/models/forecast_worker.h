#pragma once

// Reckons away from the screen, on a reading thread of its own. What it finds is told by signals;
// shared and const, because screens may still show the one before.

#include <QObject>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "core/base/world.h"
#include "mobile/models/reading_thread.h"
#include "mobile/models/reckoning.h"

class ForecastWorker : public QObject {
  Q_OBJECT

 public:
  /// The clock says what day it is and outlives this.
  ForecastWorker(std::filesystem::path folder, kneerail::Clock& clock, QObject* parent = nullptr);

  /// The last reckoning that was told; null before the first.
  [[nodiscard]] std::shared_ptr<const kneerail::Reckoning> reckoning() const { return reckoning_; }
  /// Walls, set screws and grades of that same reckoning; null before they were told.
  [[nodiscard]] std::shared_ptr<const kneerail::OtherReckoning> others() const { return others_; }
  [[nodiscard]] bool busy() const { return thread_.busy(); }
  /// Why there is no reckoning; empty while there is none to tell.
  [[nodiscard]] QString trouble() const { return trouble_; }
  /// Why there are no others.
  [[nodiscard]] QString others_trouble() const { return others_trouble_; }

  /// Everything again, from what the register has now, unless what is kept was made of the very
  /// same; a reckoning that is under way is left off.
  /// Told by reckoned(), then by othersReckoned().
  void reckon();
  /// The same, where a record came to the disk after the last reckoning was asked for.
  void catch_up();
  /// A record about this component is on the disk.
  void entered(const kneerail::Uuid& component) { entered_[component] = asked_; }
  /// It came after the reckoning that was told last, so that one may not know it.
  [[nodiscard]] bool entered_since(const kneerail::Uuid& component) const {
    return entered_.contains(component);
  }
  /// One part with what was entered since. Told by partTold().
  void tell(const kneerail::Uuid& site, const kneerail::Uuid& component);

 signals:
  void reckoned();
  void othersReckoned();
  void busyChanged();
  void partTold(kneerail::Uuid component,
                std::shared_ptr<const kneerail::Result<kneerail::PartTold>> told);

 private:
  using Known = std::shared_ptr<const kneerail::Reckoning>;
  using Others = std::shared_ptr<const kneerail::OtherReckoning>;

  struct Made {
    Known known;
    Others others;  ///< null: to be reckoned
  };
  void take(const kneerail::Result<Made>& made, int asked);
  void reckon_others();
  void take_others(const kneerail::Result<Others>& made, int asked);

  kneerail::Clock& clock_;
  std::filesystem::path kept_in_;
  Known reckoning_;
  Others others_;
  QString trouble_;
  QString others_trouble_;
  int asked_ = 0;                              ///< reckonings
  std::shared_ptr<ReadingThread::Stop> stop_;  ///< of the last one
  std::map<kneerail::Uuid, int> entered_;  ///< by component: reckonings asked before its last entry
  ReadingThread thread_;                   ///< ends first: its work uses the rest
};
