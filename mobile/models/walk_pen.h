#pragma once

// The pen of the walk. It opens the visit with the first entry, puts entries and drafts on the
// disk, keeps what could not be written for another try, and remembers what can be taken back. An
// act counts as kept only when the disk has it.

#include <QDateTime>
#include <QObject>
#include <QTime>
#include <functional>
#include <optional>
#include <vector>

#include "core/base/time_zone.h"
#include "core/base/world.h"
#include "core/records/body.h"
#include "mobile/models/store_link.h"
#include "schema/store/visit_store.h"

class WalkPen : public QObject {
  Q_OBJECT

 public:
  /// Told once: whether the disk has it.
  using Told = std::function<void(bool kept)>;

  /// Entries that go to the disk together.
  struct Act {
    QString words;             ///< what Undo says it takes back
    kneerail::Uuid component;  ///< what it is about; zero: not one part
    std::vector<kneerail::Entry> entries;
    std::optional<kneerail::Draft> ended;  ///< the draft they come from
    Told told;                             ///< may be empty
    /// Its visit, where nothing on the disk opens it yet. The pen's own.
    std::optional<kneerail::Entry> opens = std::nullopt;
    kneerail::Uuid visit = {};  ///< the pen's own too
    /// Drafts whose records are among the entries under the ids that the drafts give them.
    std::vector<kneerail::Draft> also_ended = {};
    std::int64_t counts = 0;  ///< entries it adds to the visit; the pen's own
  };

  /// Whose entries they are, in which visit of which site.
  struct Hand {
    kneerail::Uuid site;
    kneerail::Uuid visit;
    kneerail::Uuid who;
    bool operator==(const Hand&) const = default;
  };

  /// Something typed that is not a record yet. `owner`: who typed it. The part it was typed on is
  /// chosen before it is taken or put back.
  struct Typed {
    const void* owner = nullptr;
    QString words;
    kneerail::Uuid component;
    std::function<void()> take_back;
    std::function<void()> put_back;
  };

  /// All outlive this. `random` makes identifiers.
  WalkPen(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
          QObject* parent = nullptr);

  /// The site that is walked: its visit that goes on, its rules; and people and instruments.
  kneerail::Result<> begin(const kneerail::Uuid& site);
  /// Another person has the tablet: their own visit goes on, or begins with their first entry.
  kneerail::Result<> choose_person(const kneerail::Uuid& person);
  /// Another gauge or wrench of its kind is in the hand.
  void choose_instrument(const kneerail::Uuid& instrument);

  [[nodiscard]] const kneerail::Uuid& site() const { return site_; }
  /// The visit that goes on, or the one that the first entry will open.
  [[nodiscard]] const kneerail::Uuid& visit() const { return visit_; }
  [[nodiscard]] bool visit_opened() const { return visit_opened_; }  ///< its opening is on the disk
  [[nodiscard]] const kneerail::WalkRules& rules() const { return rules_; }
  /// In service, the one that was chosen or the first of its kind; null: none.
  [[nodiscard]] const kneerail::KnownInstrument* instrument(kneerail::InstrumentKind kind) const;
  /// What calibrations and doubts say of readings, as the tables had it when the walk began.
  [[nodiscard]] const kneerail::ReadingsPutRight& put_right() const { return put_right_; }
  [[nodiscard]] const kneerail::KnownPerson* person() const;
  [[nodiscard]] Hand hand() const;
  /// In service; those who inspect first.
  [[nodiscard]] const std::vector<kneerail::KnownPerson>& people() const { return people_; }
  [[nodiscard]] std::vector<kneerail::KnownInstrument> instruments(
      kneerail::InstrumentKind kind) const;
  [[nodiscard]] std::int64_t entries_kept() const { return entries_kept_; }
  [[nodiscard]] bool writable() const { return store_.writable(); }
  /// When the disk last had something of this walk, by the organisation's clocks; invalid: not yet.
  [[nodiscard]] QTime kept_at() const;
  [[nodiscard]] kneerail::Instant now() const { return clock_.now(); }
  [[nodiscard]] std::int64_t monotonic_ms() const { return clock_.monotonic_ms(); }
  /// Day and time by the organisation's clocks, and back.
  [[nodiscard]] QDateTime local(kneerail::Instant at) const;
  [[nodiscard]] kneerail::Date today() const { return zone_.day(clock_.now()); }
  [[nodiscard]] kneerail::Instant instant(const QDateTime& local) const;
  [[nodiscard]] kneerail::Uuid mint();
  /// The screens' reader.
  [[nodiscard]] kneerail::Database& tables() { return store_.reader().tables(); }
  /// The file of an object of that SHA-256.
  [[nodiscard]] std::string object_place(const kneerail::Digest& sha) const {
    return store_.object_place(sha);
  }
  /// Beside the records, under the SHA-256 of each.
  void keep_objects(std::vector<kneerail::cbor::Bytes> objects, StoreLink::Kept told) {
    store_.keep_objects(std::move(objects), std::move(told));
  }

  /// One entry of this visit, by this person, with an identifier of its own.
  template <class Fields>
  [[nodiscard]] kneerail::Entry entry(const kneerail::Uuid& subject, const Fields& fields) {
    return entry(Fields::kind, subject, kneerail::to_body(fields));
  }
  [[nodiscard]] kneerail::Entry entry(int kind, const kneerail::Uuid& subject,
                                      kneerail::cbor::Map body);

  /// What that hand found out, however late it is written.
  [[nodiscard]] kneerail::Entry entry_by(const Hand& hand, int kind, const kneerail::Uuid& subject,
                                         kneerail::cbor::Map body);

  /// An act without entries is none.
  void write(Act act) { write_by(hand(), std::move(act)); }
  /// Of another visit than the one that goes on it cannot be taken back here.
  void write_by(const Hand& hand, Act act);
  /// One more value of something that is still typed.
  void save_draft(kneerail::Draft draft, Told told);
  void drop_draft(kneerail::Draft draft, Told told);
  /// Whether one of that kind about that subject could not be put or dropped as it was asked last.
  [[nodiscard]] bool draft_failed(int kind, const kneerail::Uuid& subject) const;
  /// The drafts that failed, as they were asked last.
  void put_drafts_again();

  /// Closes this person's part of the visit; the next entry opens a new one, and what was entered
  /// can no longer be taken back. `told` gets an empty text, or why not: nothing is sealed then.
  void seal(std::vector<std::uint8_t> signature, std::function<void(const QString& why_not)> told);

  void remember(Typed typed);
  /// Digits that never were a number are gone; Redo puts them back as digits.
  void took_back(Typed digits);
  /// A new number is begun: there is nothing to put back any more.
  void forget_redo();
  /// What that owner typed became a record, or was given up.
  void forget_typed(const void* owner);

  [[nodiscard]] QString undo_words() const;
  [[nodiscard]] QString redo_words() const;
  /// True: a record was taken back, so the log has both. Drafts and what never reached the disk
  /// leave nothing there.
  bool undo();
  void redo();

  /// What could not be written; empty when nothing waits.
  [[nodiscard]] const QString& trouble() const { return trouble_; }
  /// Acts wait for another try.
  [[nodiscard]] bool waits() const { return !failed_.empty(); }
  /// The entries of that kind about that subject that wait for another try, the first one first.
  [[nodiscard]] std::vector<const kneerail::Entry*> waiting_entries(
      int kind, const kneerail::Uuid& subject) const;
  void try_again();

 signals:
  /// An act is on the disk, with these entries.
  void kept(const kneerail::Uuid& component, const std::vector<kneerail::Entry>& entries);
  void givenUp(const kneerail::Uuid& component);    ///< an act that never reached the disk
  void takenBack(const kneerail::Uuid& component);  ///< what Undo or Redo is about
  void troubleChanged();
  void undoChanged();

 private:
  struct Step {
    std::optional<Act> act;  ///< none: something typed
    Typed typed;
    bool unfinished = false;  ///< digits: put back they are no step of their own
    [[nodiscard]] const QString& words() const { return act ? act->words : typed.words; }
  };

  /// A draft as it was asked last.
  struct AskedDraft {
    kneerail::Draft draft;
    bool wanted = true;  ///< else it is to go
    Told told;
    int on_their_way = 0;
    bool failed = false;
  };

  kneerail::Result<> find_visit();
  void send(Act act);
  void answered(const Act& act, const kneerail::Result<>& saved);
  [[nodiscard]] bool draft_failed() const;
  void ask_draft(kneerail::Draft draft, bool wanted, Told told);
  void answered_draft(const kneerail::Draft& draft, const Told& told,
                      const kneerail::Result<>& saved);
  void is_ended(const Act& act);
  void count(const Act& act);
  void read_instruments();
  void open_visit_first();
  void say(const kneerail::Error& error);
  void clear_trouble();
  bool take_back(const Act& act);
  [[nodiscard]] kneerail::Entry taking_back(const kneerail::Entry& entered);
  void drop_also_ended(const Act& act);
  void give_new_ids(std::vector<kneerail::Entry>& entries);
  [[nodiscard]] kneerail::Entry opening(const Hand& hand);
  [[nodiscard]] kneerail::Draft own(kneerail::Draft draft) const;

  StoreLink& store_;
  kneerail::Clock& clock_;
  kneerail::Random& random_;
  kneerail::Uuid site_;
  kneerail::Uuid visit_;
  bool visit_opened_ = false;
  kneerail::WalkRules rules_;
  std::vector<kneerail::KnownPerson> people_;
  std::vector<kneerail::KnownInstrument> instruments_;
  kneerail::ReadingsPutRight put_right_;
  kneerail::Uuid person_chosen_;  ///< zero: the first
  std::vector<kneerail::Uuid> instruments_chosen_;
  std::int64_t entries_kept_ = 0;
  kneerail::TimeZone zone_;  ///< the organisation's
  std::optional<kneerail::Instant> kept_at_;
  std::vector<Step> done_;
  std::vector<Step> undone_;
  std::vector<Act> failed_;
  std::vector<AskedDraft> drafts_;  ///< that the disk does not have as they were asked last
  QString trouble_;
};
