#pragma once

// Remembers where the walker is. Written a moment after each step, so that a machine that goes off
// comes back there.

#include <QObject>
#include <QTimer>

#include "mobile/models/place_kept.h"
#include "mobile/models/store_link.h"
#include "mobile/models/walk_model.h"

class WalkPlace : public QObject {
  Q_OBJECT

 public:
  /// Both outlive this.
  WalkPlace(StoreLink& store, WalkModel& walk, QObject* parent = nullptr);

  /// Opens the walk where it was left; where nothing is remembered, the register's first run by
  /// name. False where there is no run to walk.
  bool restore();
  /// Somebody has walked here before on this device.
  [[nodiscard]] bool was_walked() const {
    return !place_kept(store_.reader().tables()).run.is_zero();
  }
  /// Writes the place now, if it is another one.
  void keep();

 private:
  [[nodiscard]] kneerail::PlaceKept now() const;

  StoreLink& store_;
  WalkModel& walk_;
  QTimer rest_;
  kneerail::PlaceKept kept_;
};
