#pragma once

// How the open finding is ended: mended on the spot or by others, looked at again, or raised by
// mistake. What could not wait is ended on something: pushed and looked, looked, papers. A mending
// of a part starts that part's history again. Only this takes the board off.

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "core/records/finding.h"
#include "core/records/work.h"
#include "mobile/models/walk_model.h"
#include "schema/store/finding_store.h"

class FindingEnding : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by FindingsModel")
  Q_PROPERTY(bool mends READ mends NOTIFY changed)  ///< it is about a part: kinds of work count
  Q_PROPERTY(int work READ work NOTIFY changed)     ///< by the records' codes; 0: none
  Q_PROPERTY(int how READ how NOTIFY changed)       ///< by the records' codes; 0: not said
  Q_PROPERTY(int by READ by NOTIFY changed)         ///< place among `hands`
  Q_PROPERTY(QList<QString> hands READ hands NOTIFY changed)  ///< "MO, on the spot", "own crew"
  Q_PROPERTY(bool asksByWhom READ asks_by_whom NOTIFY changed)
  Q_PROPERTY(bool asksOnWhat READ asks_on_what NOTIFY changed)
  Q_PROPERTY(int onWhat READ on_what NOTIFY changed)  ///< by the records' codes; 0: not said
  Q_PROPERTY(
      QString missing READ missing NOTIFY changed)   ///< what is still to be said; empty: none
  Q_PROPERTY(QString says READ says NOTIFY changed)  ///< "replaced by own crew, pushed and looked"

 public:
  /// Both outlive this.
  explicit FindingEnding(WalkModel& walk, QObject* parent = nullptr);

  /// The finding that is open, or null; `life`: the one its part is in now.
  void show(const kneerail::KeptFinding* finding, std::optional<kneerail::Uuid> life);

  [[nodiscard]] bool mends() const { return life_.has_value(); }
  [[nodiscard]] int work() const { return said_.work; }
  [[nodiscard]] int how() const { return said_.how; }
  [[nodiscard]] int by() const { return said_.by; }
  [[nodiscard]] QList<QString> hands() const;
  [[nodiscard]] bool asks_by_whom() const;
  [[nodiscard]] bool asks_on_what() const;
  [[nodiscard]] int on_what() const { return said_.on_what; }
  [[nodiscard]] QString missing() const;
  [[nodiscard]] QString says() const;

  /// That kind of work mended it, by the records' codes.
  Q_INVOKABLE void chooseWork(int work);
  /// Ended without a work: repaired (what is no part), re-assessed, raised by mistake.
  Q_INVOKABLE void chooseHow(int how);
  Q_INVOKABLE void chooseBy(int place);
  Q_INVOKABLE void chooseOnWhat(int on);
  /// Nothing happens while something is missing.
  Q_INVOKABLE void end();

 signals:
  void changed();

 private:
  struct Said {
    int work = 0;
    int how = 0;
    int by = 0;
    int on_what = 0;
  };

  [[nodiscard]] kneerail::HowEnded ended() const;
  [[nodiscard]] kneerail::WorkDone work_done() const;

  WalkModel& walk_;
  std::optional<kneerail::KeptFinding> finding_;
  std::optional<kneerail::Uuid> life_;
  Said said_;
};
