#pragma once

// The Torque pad: one set screw after the other. A click without movement is a bound, a click that
// moved is about where the slide stands; the values are the register's, set by the owner.

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <optional>
#include <vector>

#include "core/records/torque_reading.h"
#include "mobile/models/walk_pen.h"
#include "schema/store/run_store.h"

class TorqueCheck : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by WalkModel")
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "Screw 1 of 3, register says 24 N·m"
  Q_PROPERTY(QString lastWords READ last_words NOTIFY changed)  ///< "last visit: clicked at 24"
  Q_PROPERTY(
      QString doneWords READ done_words NOTIFY changed)  ///< kept for this screw in this visit
  Q_PROPERTY(
      QString clickedWords READ clicked_words NOTIFY changed)  ///< "Clicked at 24, did not move"
  Q_PROPERTY(QString clickedSecond READ clicked_second NOTIFY changed)  ///< "held at least 24 N·m"
  Q_PROPERTY(QString movedSecond READ moved_second NOTIFY changed)  ///< "then tight again at 24"
  Q_PROPERTY(qreal target READ target NOTIFY changed)            ///< N·m; 0: none in the register
  Q_PROPERTY(qreal lowest READ lowest NOTIFY changed)            ///< N·m; 0: none
  Q_PROPERTY(bool moving READ moving NOTIFY changed)             ///< the slide is up
  Q_PROPERTY(qreal movedAbout READ moved_about NOTIFY changed)   ///< N·m; -1: no mark yet
  Q_PROPERTY(bool wrenchAsked READ wrench_asked NOTIFY changed)  ///< first say what it is set at
  Q_PROPERTY(QString wrenchQuestion READ wrench_question NOTIFY changed)
  Q_PROPERTY(
      QString nextScrewWords READ next_screw_words NOTIFY changed)  ///< "2 of 3"; empty: last

 public:
  TorqueCheck(WalkPen& pen, QObject* parent = nullptr);

  /// The part that is chosen now; null: none.
  void show(const kneerail::SheetPart* part, kneerail::Database& tables);
  /// What was begun for a screw becomes a record: it moved, about where the slide stands.
  void close();
  /// Read again what is on record.
  void refresh();
  /// These entries of the walk are on the disk.
  void kept(const std::vector<kneerail::Entry>& entries);

  [[nodiscard]] bool offered() const { return part_ && offered_on(*part_); }
  [[nodiscard]] bool offered_on(const kneerail::SheetPart& part) const;
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString last_words() const;
  [[nodiscard]] QString done_words() const;
  [[nodiscard]] QString clicked_words() const;
  [[nodiscard]] QString clicked_second() const;
  [[nodiscard]] QString moved_second() const;
  [[nodiscard]] qreal target() const;
  [[nodiscard]] qreal lowest() const;
  [[nodiscard]] bool moving() const { return moving_; }
  [[nodiscard]] qreal moved_about() const;
  [[nodiscard]] bool wrench_asked() const;
  [[nodiscard]] QString wrench_question() const;
  [[nodiscard]] QString next_screw_words() const;

  /// The wrench is set at this part's target.
  Q_INVOKABLE void wrenchIsSet();
  Q_INVOKABLE void clicked();
  Q_INVOKABLE void moved();
  Q_INVOKABLE void movedAt(qreal torqueNm);
  Q_INVOKABLE void seized();
  Q_INVOKABLE void noScrew();
  /// The next screw of this part; false at the last.
  Q_INVOKABLE bool nextScrew();

 signals:
  void changed();
  void lastScrewDone();  ///< its record is on the disk

 private:
  void write(kneerail::TorqueReading reading, const QString& words);
  void answered(const kneerail::Uuid& part, int screw, bool kept);
  void set_slide(bool moving, std::int64_t about);
  void remember_slide(const QString& words, bool moving, std::int64_t about);
  [[nodiscard]] bool ready() const { return offered() && !wrench_asked() && !on_its_way_; }
  [[nodiscard]] kneerail::TorqueReading reading() const;
  [[nodiscard]] kneerail::TorqueReading moved_reading() const;
  [[nodiscard]] kneerail::Draft draft() const;
  [[nodiscard]] std::optional<std::int64_t> wrench_set() const;
  void choose_screw(int screw);
  [[nodiscard]] std::int64_t target_tenths() const;
  [[nodiscard]] QString target_words() const;

  /// What a person said the wrench is set at; of one wrench and visit.
  struct WrenchSet {
    kneerail::Uuid wrench;
    kneerail::Uuid visit;
    std::int64_t tenth_nm = 0;
  };

  /// What the last record of that visit by that wrench says it is set at. Zero: not read yet.
  struct WrenchKept {
    kneerail::Uuid wrench;
    kneerail::Uuid visit;
    std::optional<std::int64_t> tenth_nm;
  };

  void read_wrench();

  WalkPen& pen_;
  std::optional<kneerail::SheetPart> part_;
  kneerail::Database* tables_ = nullptr;  ///< the screens' reader
  int screw_ = 1;
  bool moving_ = false;
  std::int64_t moved_about_ = -1;  ///< 0.1 N·m; -1: no mark
  bool on_its_way_ = false;        ///< the record of this screw
  std::optional<WrenchSet> wrench_said_;
  WrenchKept wrench_kept_;
  std::optional<kneerail::LastTorque> last_;
  std::optional<kneerail::LastTorque> now_;
};
