#pragma once

// Where the walker is, remembered by this device: run, post or part, the pad, and who walks with
// what. Written a moment
// after each step, so that a machine that goes off comes back there. Not part of any record.

#include <QObject>
#include <QTimer>

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
  [[nodiscard]] bool was_walked() const { return !remembered().run.is_zero(); }
  /// Writes the place now, if it is another one.
  void keep();

 private:
  struct Place {
    kneerail::Uuid run;
    kneerail::Uuid at;      ///< part, else post
    kneerail::Uuid person;  ///< zero: the first
    kneerail::Uuid gauge;
    kneerail::Uuid wrench;
    int pad = 0;
    bool operator==(const Place&) const = default;
  };

  template <class Action>
  static void each_id(Place& place, Action action);
  [[nodiscard]] Place now() const;
  [[nodiscard]] Place remembered() const;

  StoreLink& store_;
  WalkModel& walk_;
  QTimer rest_;
  Place kept_;
};
