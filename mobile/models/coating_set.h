#pragma once

// The Coating pad: five slots for the replicates at one spot, last visit's value under each. What
// is typed into a slot is on the disk, as a draft, before the slot is drawn as kept; the fifth, or
// leaving the part, makes it one record. A set that was left before its fifth goes on where it was:
// what comes is a record beside it. The instrument's resolution sets the decimals: no key
// does.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QList>
#include <QString>
#include <array>
#include <optional>
#include <vector>

#include "mobile/models/walk_pen.h"
#include "schema/store/run_store.h"

class CoatingSet : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by WalkModel")
  Q_PROPERTY(int currentSlot READ current_slot NOTIFY setChanged)  ///< -1: none waits
  Q_PROPERTY(QString summary READ summary NOTIFY
                 setChanged)  ///< "mean 73.7 µm · last visit 86.6 · 12.9 less"
  Q_PROPERTY(QString farWords READ far_words NOTIFY
                 setChanged)  ///< "Far from last time. Read it once more?"
  Q_PROPERTY(QList<qreal> today READ today NOTIFY setChanged)  ///< µm, for the strip
  Q_PROPERTY(QList<qreal> last READ last NOTIFY setChanged)
  Q_PROPERTY(qreal limit READ limit NOTIFY setChanged)  ///< first maintenance, µm; 0: none is set
  Q_PROPERTY(QString stripSpoken READ strip_spoken NOTIFY setChanged)
  /// 1 bright zinc, 2 dull zinc, 3 rust, 4 paint; 0 not said. Preset by the grade just given.
  Q_PROPERTY(int underProbe READ under_probe WRITE set_under_probe NOTIFY setChanged)
  Q_PROPERTY(QString underProbeWords READ under_probe_words NOTIFY setChanged)
  Q_PROPERTY(QString spotWords READ spot_words NOTIFY setChanged)  ///< "seaward face"
  Q_PROPERTY(int spots READ spots NOTIFY setChanged)

 public:
  static constexpr int slot_count = 5;
  enum Role {
    TextRole = Qt::UserRole,
    GhostRole,
    CurrentRole,
    KeptRole,
    LookAgainRole,
    NotKeptRole
  };

  CoatingSet(WalkPen& pen, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  /// text, ghost (strings); current, kept, lookAgain (far from last time), notKept (truths).
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  /// The part that is chosen now, with its sheet's facts; none: no part. What was typed for the one
  /// before becomes a record.
  void show(const kneerail::SheetPart* part, kneerail::Database& tables);
  /// What this visit has on record changed: shown again, unless something is being typed.
  void reload();
  /// As if the part had just been chosen: another visit or another gauge is at it. What was typed
  /// was closed before.
  void begin();
  /// What was typed becomes a record; a number that was not finished is finished.
  void close();
  /// Digits of a number that is not finished, as they stand in the slot; empty: none.
  [[nodiscard]] QString pending() const;
  /// They go; Redo puts them back.
  void take_back_pending();

  [[nodiscard]] int current_slot() const { return current_; }
  [[nodiscard]] QString summary() const;
  [[nodiscard]] QString far_words() const;
  [[nodiscard]] QList<qreal> today() const;
  [[nodiscard]] QList<qreal> last() const;
  [[nodiscard]] qreal limit() const;
  [[nodiscard]] QString strip_spoken() const;
  [[nodiscard]] int under_probe() const { return under_probe_; }
  void set_under_probe(int under);
  [[nodiscard]] QString under_probe_words() const;
  [[nodiscard]] QString spot_words() const;
  [[nodiscard]] int spots() const { return part_ ? static_cast<int>(part_->spots.size()) : 0; }
  /// A gauge reading makes sense on this part.
  [[nodiscard]] bool offered() const { return part_ && offered_on(*part_); }
  [[nodiscard]] bool offered_on(const kneerail::SheetPart& part) const;
  [[nodiscard]] bool has_not_kept() const;
  /// Whether a number from the gauge would find a slot.
  [[nodiscard]] bool waits() const;
  /// What the grade says lies under the probe; a person's own word stays.
  void preset_under_probe(int grade);
  /// Sends a draft again that could not be written.
  void try_again();

  Q_INVOKABLE void digit(int digit);
  Q_INVOKABLE void backspace();
  Q_INVOKABLE void nextSlot();
  Q_INVOKABLE void chooseSlot(int slot);
  Q_INVOKABLE void nextSpot();
  /// A number as a gauge types it, "76" or "76.4"; true when a slot took it.
  bool typed(const QString& number);
  /// A number in 0.1 µm; none: it is not one that a record can hold.
  [[nodiscard]] static std::optional<std::int64_t> tenth_um_of(const QString& number);

 signals:
  void setChanged();
  void replicateKept(bool far);
  /// The fifth is in: the set is a record on the disk.
  void full();

 private:
  struct Slot {
    std::optional<std::int64_t> tenth_um;  ///< finished
    QString digits;                        ///< still typed
    bool kept = false;
    bool not_kept = false;
    bool on_record = false;  ///< in a record already: it stays as it is
  };

  using Values = std::array<Slot, slot_count>;
  /// Where something was typed.
  struct Place {
    kneerail::Uuid part;
    int spot = 1;
    std::size_t slot = 0;
  };

  void change(std::size_t slot, std::optional<std::int64_t> tenth_um);
  bool stand_at(const Place& place);
  void restore(const Values& values, const Place& place);
  void show_spot(int spot);
  void finish_current();
  void save_draft();
  void clear();
  void read_last(kneerail::Database& tables);
  void show_recorded(const std::vector<std::int64_t>& values, bool kept);
  void show_set(const std::vector<kneerail::CoatingOfVisit>& records);
  void answered(const Values& sent, int round, bool kept);
  void recorded(bool was_full, int round, bool kept);
  void move_on();
  void tell_slots();
  [[nodiscard]] std::vector<std::int64_t> values() const;
  [[nodiscard]] std::vector<std::int64_t> typed_values() const;
  [[nodiscard]] kneerail::cbor::Map body() const;
  [[nodiscard]] kneerail::Draft draft() const;
  [[nodiscard]] std::vector<std::int64_t> put_right(std::vector<std::int64_t> read) const;
  [[nodiscard]] bool is_far(std::int64_t tenth_um) const;
  [[nodiscard]] QString text_of(std::int64_t tenth_um) const;
  [[nodiscard]] std::int64_t resolution() const;

  WalkPen& pen_;
  std::optional<kneerail::SheetPart> part_;
  kneerail::Database* tables_ = nullptr;  ///< the screens' reader
  int spot_ = 1;
  std::array<Slot, slot_count> slots_;
  int current_ = -1;
  int under_probe_ = 0;
  bool under_probe_said_ = false;   ///< by a person, not preset
  bool drafted_ = false;            ///< a draft of this set is on the disk or on its way
  bool on_its_way_ = false;         ///< the record of this set
  bool recorded_ = false;           ///< the slots show what this visit has on record
  int round_ = 0;                   ///< of slots: an answer for an earlier one changes nothing
  std::vector<std::int64_t> last_;  ///< last visit's replicates, 0.1 µm
};
