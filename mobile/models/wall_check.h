#pragma once

// The Wall pad: four slots, one for each clock position that a probe reaches on a tube. A finished
// number is a record of its own at once. The gauge's resolution sets the decimals: no key does.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QString>
#include <array>
#include <optional>
#include <vector>

#include "mobile/models/typed_slot.h"
#include "mobile/models/walk_pen.h"
#include "schema/store/run_store.h"
#include "schema/store/wall_store.h"

class WallCheck : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by WalkModel")
  Q_PROPERTY(int currentSlot READ current_slot NOTIFY changed)  ///< -1: none waits
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "Post tube, 150 mm above its base"
  Q_PROPERTY(QString facts READ facts NOTIFY
                 changed)  ///< "new 3.2 mm · last time 2.9 · owner's limit 2.6"
  Q_PROPERTY(QString askWords READ ask_words NOTIFY
                 changed)  ///< what a person is asked of the values; empty: nothing
  Q_PROPERTY(bool under READ under NOTIFY changed)  ///< a value of today is under the owner's limit

 public:
  static constexpr int slot_count = 4;
  enum Role {
    TextRole = Qt::UserRole,
    GhostRole,
    CurrentRole,
    KeptRole,
    LookAgainRole,
    NotKeptRole,
    ClockRole,
    SpokenRole
  };

  explicit WallCheck(WalkPen& pen, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  /// text, ghost, spoken (strings); current, kept, lookAgain, notKept (truths); clock: the hour the
  /// probe points at, 0 to 11.
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  /// The part that is chosen now, of that run; null: none. A number that was begun for the one
  /// before is finished as it stands.
  void show(const kneerail::SheetPart* part, const QString& name, kneerail::Database& tables);
  /// What this visit has on record may have changed; digits that are typed stay.
  void refresh();
  /// As if the part had just been chosen: another visit is at it.
  void begin();
  /// A number that was begun is finished as it stands.
  void close();
  /// Digits of a number that is not finished, as they stand in the slot; empty: none.
  [[nodiscard]] QString pending() const;
  /// They go; Redo puts them back.
  void take_back_pending();
  /// A number as a gauge types it, "2.9"; true when a slot took it. What cannot be the wall of this
  /// tube is of another gauge: it is left to who asks.
  bool typed(const QString& number);
  /// A number in 0.01 mm; none: it is not one that a record can hold.
  [[nodiscard]] static std::optional<std::int64_t> hundredth_mm_of(const QString& number);

  [[nodiscard]] bool offered() const { return part_ && offered_on(*part_); }
  /// A tube whose wall is known, and a gauge in service.
  [[nodiscard]] bool offered_on(const kneerail::SheetPart& part) const;
  [[nodiscard]] int current_slot() const { return current_; }
  [[nodiscard]] bool has_not_kept() const;
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString facts() const;
  [[nodiscard]] QString ask_words() const;
  [[nodiscard]] bool under() const;

  Q_INVOKABLE void digit(int digit);
  Q_INVOKABLE void backspace();
  Q_INVOKABLE void nextSlot();
  Q_INVOKABLE void chooseSlot(int slot);

 signals:
  void changed();
  void readingKept(bool far);
  /// The fourth is on the disk.
  void full();

 private:
  using Slot = TypedSlot;  ///< of 0.01 mm
  using State = TypedSlot::State;

  void finish(std::size_t slot);
  void write(std::size_t slot, std::int64_t hundredth_mm);
  void answered(const kneerail::Uuid& part, std::size_t slot, std::int64_t value, bool kept);
  void read_now();
  void move_on();
  void tell();
  [[nodiscard]] const kneerail::LastWall* last_at(std::size_t slot) const;
  [[nodiscard]] const kneerail::LastWall* any_last() const;
  [[nodiscard]] std::int64_t resolution() const;
  [[nodiscard]] std::optional<std::int64_t> owners_limit() const;
  [[nodiscard]] bool is_far(std::int64_t hundredth_mm) const;
  [[nodiscard]] QString text_of(std::int64_t hundredth_mm) const;
  [[nodiscard]] QString place_words() const;

  WalkPen& pen_;
  std::optional<kneerail::SheetPart> part_;
  QString name_;
  kneerail::Database* tables_ = nullptr;  ///< the screens' reader
  std::array<Slot, slot_count> slots_;
  std::vector<kneerail::LastWall> last_;
  int current_ = -1;
};
