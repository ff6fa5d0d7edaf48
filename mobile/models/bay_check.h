#pragma once

// The Bay pad: what a bay does when a person pushes it, its height and gaps where they look worst
// beside the rule that the owner chose, and whether a gate shuts. A push is a record at once, a
// number when it is finished. What is outside the rule, gives or moves is a finding too. The rows
// are what is measured: height, gap, gap below.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <array>
#include <optional>
#include <vector>

#include "core/records/finding.h"
#include "mobile/models/typed_slot.h"
#include "mobile/models/walk_pen.h"
#include "schema/store/bay_store.h"
#include "schema/store/run_store.h"

class FindingPen;

class BayCheck : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by WalkModel")
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "Bay 31 to 32 · rails · drop 3.2 m"
  Q_PROPERTY(QString ruleWords READ rule_words NOTIFY changed)  ///< "rule: public bridge"
  Q_PROPERTY(int felt READ felt NOTIFY changed)  ///< by the records' codes; 0: not pushed yet
  Q_PROPERTY(bool feltNotKept READ felt_not_kept NOTIFY changed)
  Q_PROPERTY(QString feltWords READ felt_words NOTIFY changed)  ///< "gives"; empty: not yet
  Q_PROPERTY(QString lastFeltWords READ last_felt_words NOTIFY changed)  ///< of the last visit
  Q_PROPERTY(QString asks READ asks NOTIFY changed)  ///< what a person is asked; empty: nothing
  Q_PROPERTY(bool tightens READ tightens NOTIFY changed)   ///< it gives, and has screws to tighten
  Q_PROPERTY(int measuring READ measuring NOTIFY changed)  ///< row that is typed into; -1: none
  // Of a gate, by the records' codes; 0: not said.
  Q_PROPERTY(bool gate READ is_gate NOTIFY changed)
  Q_PROPERTY(int closes READ closes NOTIFY changed)
  Q_PROPERTY(int latches READ latches NOTIFY changed)
  Q_PROPERTY(int opensAway READ opens_away NOTIFY changed)

 public:
  static constexpr int measure_count = 3;
  enum Measure { Height, Gap, GapBelow };
  Q_ENUM(Measure)
  enum GateQuestion { ClosesByItself = 2, Latches, OpensAway };  ///< keys of the record
  Q_ENUM(GateQuestion)
  enum Role {
    NameRole = Qt::UserRole,
    TextRole,
    LimitRole,
    GhostRole,
    CurrentRole,
    KeptRole,
    OutsideRole,
    NotKeptRole,
    SpokenRole
  };

  /// Both outlive this.
  BayCheck(WalkPen& pen, FindingPen& finding, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  /// name, text, limit, ghost, spoken (strings); current, kept, outside, notKept (truths).
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  /// What is chosen of that run now; bay -1: none, then the post tells whether the hand is still at
  /// the screws of the bay before. A bay that gave is a finding once it is left.
  struct Chosen {
    int bay = -1;
    int post = -1;
  };
  void show(const kneerail::RunSheet& sheet, Chosen chosen);
  /// Where the bay was touched: there a gap is ringed. Else in its middle.
  void touched_at(const kneerail::PlaceOnPart& place) { touched_ = place; }
  /// As if the bay had just been chosen: another visit is at it.
  void begin();
  /// A number that was begun is finished as it stands, and the bay is left.
  void close();
  /// Digits of a number that is not finished; empty: none.
  [[nodiscard]] QString pending() const;
  /// They go; Redo puts them back.
  void take_back_pending();

  [[nodiscard]] bool offered() const { return bay_.has_value() && pen_.writable(); }
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString rule_words() const;
  [[nodiscard]] int felt() const;
  [[nodiscard]] bool felt_not_kept() const { return push_.state == TypedSlot::State::not_kept; }
  [[nodiscard]] QString felt_words() const;
  [[nodiscard]] QString last_felt_words() const;
  [[nodiscard]] QString asks() const;
  [[nodiscard]] bool tightens() const { return given_ && offered() && !screwed_.empty(); }
  [[nodiscard]] int measuring() const { return measuring_; }
  [[nodiscard]] bool is_gate() const;
  [[nodiscard]] int closes() const { return gate_answer(ClosesByItself); }
  [[nodiscard]] int latches() const { return gate_answer(Latches); }
  [[nodiscard]] int opens_away() const { return gate_answer(OpensAway); }

  Q_INVOKABLE void push(int felt);
  Q_INVOKABLE void measure(int row);  ///< its digits are typed from now on; -1: none
  Q_INVOKABLE void digit(int digit);
  Q_INVOKABLE void backspace();
  Q_INVOKABLE void nextSlot();
  Q_INVOKABLE void answerGate(int question, int answer);

 signals:
  void changed();
  void pushKept();
  void measureKept(bool outside);
  /// What cannot wait is begun as a finding: what was done is asked now.
  void findingWanted();
  /// A finding was made by itself: "F-3: Gap 112 mm. The chosen rule says at most 100".
  void foundByItself(const QString& words);

 private:
  using State = TypedSlot::State;
  struct Limit {
    std::optional<std::int64_t> mm;
    bool least = false;
  };
  /// A bay that gave: its finding is a draft until the bay is left or made firm.
  struct Given {
    kneerail::Uuid run;
    kneerail::Uuid bay;
    int from = -1;  ///< places of its posts
    int to = -1;
    kneerail::Draft draft;
    int number = 0;
  };

  void take(const kneerail::RunSheet& sheet, const kneerail::SheetBay& bay);
  void read_bay();
  void read_now();
  void read_gate(const kneerail::BayLooks& looks);
  void settle_given();
  void begin_given();
  void drop_given();
  void keep_given();
  void finish_measure();
  void write_measure(std::size_t row, std::int64_t mm);
  void set_gate(kneerail::cbor::Map said);
  void write_gate();
  void propose_for_gate();
  [[nodiscard]] QString limit_text(std::size_t row) const;
  [[nodiscard]] kneerail::Entry outside_finding(std::size_t row, std::int64_t mm);
  [[nodiscard]] kneerail::Draft gate_draft() const;
  [[nodiscard]] int gate_answer(int key) const;
  [[nodiscard]] bool is_left(const kneerail::RunSheet& sheet, Chosen chosen) const;
  [[nodiscard]] bool found(kneerail::FindingKind what) const;
  [[nodiscard]] Limit limit_of(std::size_t row) const;
  [[nodiscard]] bool is_outside(std::size_t row, std::int64_t mm) const;
  [[nodiscard]] QString outside_words(std::size_t row, std::int64_t mm) const;
  [[nodiscard]] kneerail::PlaceOnPart place_of(std::size_t row, std::int64_t mm) const;
  void tell();

  WalkPen& pen_;
  FindingPen& finding_;
  kneerail::Uuid run_;
  std::optional<kneerail::SheetBay> bay_;
  std::vector<kneerail::FindingKind> found_;  ///< what findings of the bay that stand say
  QString name_;                              ///< "Bay 118 to 119"
  std::int64_t from_mm_ = 0;
  std::int64_t to_mm_ = 0;
  std::int64_t high_mm_ = 0;
  std::vector<kneerail::Uuid> screwed_;  ///< parts that hold it and have screws
  kneerail::BayRules rules_;
  kneerail::BayLooks last_;
  std::optional<kneerail::PlaceOnPart> touched_;
  TypedSlot push_;  ///< by the records' codes
  std::array<TypedSlot, measure_count> slots_;
  int measuring_ = -1;
  kneerail::cbor::Map gate_;  ///< what was said of it, as its record has it
  bool gate_typed_ = false;   ///< more than its record says: a draft
  std::optional<Given> given_;
  std::vector<kneerail::BayQuestion> given_kept_;  ///< bays and visits whose finding was sent
};
