#pragma once

// The gauge in the hand, looked at by itself: zeroed on the bare plate, or read on a foil of known
// thickness. What the foil says is typed once; the next check of that gauge has it already. A
// reading is on the disk, as a draft, before its slot is drawn as kept; Keep, or leaving, makes the
// check one record, and the age of the zero counts from there.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QString>
#include <array>
#include <optional>
#include <vector>

#include "mobile/models/walk_pen.h"

class GaugeCheck : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by WalkModel")
  Q_PROPERTY(What what READ what NOTIFY changed)
  Q_PROPERTY(bool offered READ offered NOTIFY changed)     ///< there is a gauge, and it can be kept
  Q_PROPERTY(QString title READ title NOTIFY changed)      ///< "Gauge CG-0417 · check foil"
  Q_PROPERTY(QString facts READ facts NOTIFY changed)      ///< the cell's full text, in sentences
  Q_PROPERTY(QString asks READ asks NOTIFY changed)        ///< what to do now, in a sentence
  Q_PROPERTY(QString summary READ summary NOTIFY changed)  ///< "mean 50.8 µm · 0.8 more"
  Q_PROPERTY(QString foilWords READ foil_words NOTIFY changed)  ///< "foil of 50.0 µm"; empty: none
  Q_PROPERTY(bool hasReading READ holds_reading NOTIFY changed)  ///< finished or begun
  /// By the gauge's stated error, until a person says otherwise.
  Q_PROPERTY(bool inOrder READ in_order NOTIFY changed)

 public:
  enum What { Nothing, Zero, Foil };  ///< by the records' codes
  Q_ENUM(What)
  enum Role { TextRole = Qt::UserRole, GhostRole, CurrentRole, KeptRole, NotKeptRole, SpokenRole };

  explicit GaugeCheck(WalkPen& pen, QObject* parent = nullptr);

  /// The first slot of a foil's check is the foil's own value.
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  /// text, ghost, spoken (strings); current, kept, notKept (truths).
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  [[nodiscard]] What what() const { return what_; }
  [[nodiscard]] bool offered() const { return pen_.writable() && gauge() != nullptr; }
  /// Past the instrument's own hours, else the rule set's, else a working day's.
  [[nodiscard]] bool old() const;
  [[nodiscard]] QString caption() const;     ///< "Gauge CG-0417 · zeroed"; old: "Gauge CG-0417"
  [[nodiscard]] QString cell_words() const;  ///< "2 h 10 min ago", "zero it soon"
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString facts() const;
  [[nodiscard]] QString asks() const;
  [[nodiscard]] QString summary() const;
  [[nodiscard]] QString foil_words() const;
  [[nodiscard]] bool has_reading() const { return !readings().empty(); }
  [[nodiscard]] bool holds_reading() const;
  [[nodiscard]] bool in_order() const { return said_.value_or(judged()); }
  [[nodiscard]] bool has_not_kept() const;
  /// Digits of a number that is not finished; empty: none.
  [[nodiscard]] QString pending() const;
  /// They go; Redo puts them back.
  void take_back_pending();
  /// A number as the gauge types it, "50.8" or "-0.4": to the next reading. False: none waits, or
  /// no record can hold it.
  bool typed(const QString& number);
  /// What was read becomes a record. Nothing read: the check was none.
  void close();
  /// Sends a draft again that could not be written.
  void try_again();

  Q_INVOKABLE void begin(What what);
  Q_INVOKABLE void digit(int digit);
  Q_INVOKABLE void sign();  ///< under zero, and back
  Q_INVOKABLE void backspace();
  Q_INVOKABLE void nextSlot();
  Q_INVOKABLE void chooseSlot(int slot);
  Q_INVOKABLE void sayInOrder(bool inOrder);
  Q_INVOKABLE void keep();
  /// Somebody looks: ages are said as of now.
  Q_INVOKABLE void refresh() { emit changed(); }

 signals:
  void changed();
  void readingKept();  ///< the disk has one more
  void closed();       ///< back to the walk
  void notInOrder();   ///< that is on record now

 private:
  struct Slot {
    std::optional<std::int64_t> tenth_um = std::nullopt;
    QString digits = {};  ///< still typed
    bool under_zero = false;
    bool kept = false;
    bool not_kept = false;
  };
  static constexpr std::size_t slot_count = 4;  ///< the foil's value, and three readings
  using Slots = std::array<Slot, slot_count>;

  [[nodiscard]] const kneerail::KnownInstrument* gauge() const;
  [[nodiscard]] std::int64_t step(std::size_t slot) const;
  [[nodiscard]] std::size_t first_reading() const { return what_ == Foil ? 1 : 0; }
  [[nodiscard]] std::vector<std::int64_t> readings() const;
  [[nodiscard]] std::optional<std::int64_t> reference() const;
  [[nodiscard]] std::optional<double> off_tenth_um() const;
  [[nodiscard]] bool judged() const;
  [[nodiscard]] QString text(std::optional<std::int64_t> tenth_um, std::size_t slot) const;
  [[nodiscard]] std::int64_t good_for_hours() const;
  [[nodiscard]] QString age_words(kneerail::Instant since) const;
  [[nodiscard]] std::int64_t typed_value(const Slot& slot, std::size_t place) const;
  void end();
  void finish_current();
  void change(std::size_t slot, std::optional<std::int64_t> tenth_um);
  void restore(const Slots& values, std::size_t slot);
  void move_on();
  void save_draft();
  void answered(const Slots& sent, int round, bool kept);
  void tell();
  [[nodiscard]] kneerail::cbor::Map body() const;
  [[nodiscard]] kneerail::Draft draft() const;

  WalkPen& pen_;
  What what_ = Nothing;
  kneerail::Uuid gauge_;  ///< the one that is checked
  Slots slots_;
  int current_ = -1;
  std::optional<bool> said_;  ///< by a person
  bool drafted_ = false;
  int round_ = 0;  ///< of checks: an answer for an earlier one changes nothing
};
