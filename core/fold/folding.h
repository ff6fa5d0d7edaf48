#pragma once

// The works of the incremental fold. Each record writes its own contribution (a row of fact or of
// reading) and then asks for the rows it belongs to; each of those is derived again, whole, from
// the contributions that the store's indexes find. So the order of arrival cannot matter. What is
// asked for waits in a set, in the order in which the derivations build on one another, and is made
// once however often it was asked for.

#include <compare>
#include <initializer_list>
#include <map>
#include <set>
#include <string>
#include <unordered_map>
#include <utility>

#include "core/fold/fold.h"
#include "core/fold/row_layout.h"
#include "core/fold/tally.h"

namespace kneerail::fold {

/// What is derived, in the order it is derived in: a later stage reads what an earlier one made.
enum class Stage {
  segments,     ///< a device, b feed
  visit_group,  ///< a visit
  change,       ///< a record
  entity,       ///< a entity
  retirement,   ///< a entity
  seen_after,   ///< a entity
  twice,        ///< text import reference
  tag,          ///< text code
  life,         ///< a component
  latest,       ///< a subject, n kind, m place
  visit_part,   ///< a visit, b person, c device
  stock,        ///< a depot, b component type
  plain,        ///< a record
  next_visits,  ///< a site
  object,       ///< text SHA-256
  strike,       ///< a strike
  closure,      ///< a closure
  gap,          ///< a strike
  finding,      ///< a finding
  coverage      ///< a post, b visit that stands for all joined to it
};

struct Job {
  Stage stage;
  Uuid a{};
  Uuid b{};
  Uuid c{};
  std::int64_t n = 0;
  std::int64_t m = 0;
  std::string text{};
  auto operator<=>(const Job&) const = default;
};

// Numbers of the indexes, in the order of tables.cpp.
inline constexpr int fact_by_subject = 0;
inline constexpr int fact_by_about = 1;
inline constexpr int fact_by_visit = 2;
inline constexpr int fact_by_segment = 3;
inline constexpr int entity_by_parent = 0;
inline constexpr int entity_by_tag = 1;
inline constexpr int entity_by_component_type = 2;
inline constexpr int entity_by_part_of = 3;
inline constexpr int entity_by_import_reference = 4;
inline constexpr int reading_by_subject = 0;
inline constexpr int reading_by_visit = 1;
inline constexpr int field_edit_by_entity = 0;
inline constexpr int coverage_by_post = 0;
inline constexpr int hold_by_feed = 1;
inline constexpr int object_use_by_kind = 0;

/// What a visit has something of.
struct Seen {
  Uuid subject;
  Uuid visit;
  bool operator==(const Seen&) const = default;
};
struct SeenHash {
  std::size_t operator()(const Seen& seen) const;
};
/// What came in of it, to be added to what is kept.
struct News {
  Tally tally;
  bool again = false;        ///< something else than one more reading: all is counted again
  bool not_reached = false;  ///< then it may be a run, and all of its posts
};
using AllNews = std::unordered_map<Seen, News, SeenHash>;

/// The store with the rules' questions on top of it, and the jobs that wait.
class Folding {
 public:
  Folding(TableStore& store, Touched* touched, Batch::Begins begins = Batch::Begins::with_rows)
      : store_(store), touched_(touched), began_empty_(begins == Batch::Begins::empty) {}

  void add(const PlacedRecord& placed);
  void run();
  /// Only what is derived before that stage.
  void run_before(Stage stage);
  /// Up to so many derivations; whether more wait.
  bool run_some(int most);
  void ask(Job job) { jobs_.insert(std::move(job)); }
  void touch(const Uuid& component);
  /// A visit has one more reading of a thing, or something else is new: the coverage of the post
  /// at which that stands is made again.
  News& news_of(const Seen& seen);
  /// The same for a row of coverage itself.
  News& news_of_row(const Uuid& post, const Uuid& visit);
  /// Whether no news was ever taken out: then nothing was lost on the way to a row.
  [[nodiscard]] bool all_news_waits() const { return all_news_waits_; }
  /// Whether every record in the store came through here.
  [[nodiscard]] bool began_empty() const { return began_empty_; }
  News take_news_of_row(const Uuid& post, const Uuid& visit);
  /// A record of a visit, made at t, came in: the visit's span reaches to it.
  void widen(const Uuid& visit, std::int64_t t);
  /// A record of a visit has another time now: its span is read again.
  void respan(const Uuid& visit);
  /// What was said about the span of a visit since this was last asked.
  struct Span {
    std::optional<std::int64_t> first_t;
    std::optional<std::int64_t> last_t;
    bool again = false;
  };
  Span take_span(const Uuid& visit);

  std::optional<Row> row(int table, std::initializer_list<Cell> key);
  std::vector<Row> rows(int table, int index, std::initializer_list<Cell> values);
  std::vector<Row> rows_of_key(int table, std::initializer_list<Cell> start);
  /// Writes the row unless it stands so already; whether it was written.
  bool put(int table, Row row);
  /// Whether there was a row.
  bool erase(int table, std::initializer_list<Cell> key);
  /// put() of a row that may be nothing: then erase().
  bool put_or_erase(int table, const std::optional<Row>& row, std::initializer_list<Cell> key);
  /// Writes without looking.
  void put_unseen(int table, Row row);

  Change change(const Uuid& record);
  ClockOffset clock(const Uuid& dev, const Uuid& feed, std::int64_t g);
  Fact loaded(PlacedRecord placed);
  std::optional<Fact> fact(const Uuid& id);
  std::vector<Fact> facts_of(const Uuid& subject, int kind);
  std::vector<Fact> facts_about(const Uuid& about, int kind);

 private:
  void derive(const Job& job);
  void add_fact(const PlacedRecord& placed);
  void note_writer(const PlacedRecord& placed);

  /// The last answer about tables that every record of a visit asks the same of.
  struct Recent {
    std::vector<Cell> key;
    std::optional<Row> row;
  };
  std::optional<Recent>* recent_of(int table);
  void forget_recent(int table);

  std::optional<Recent> recent_segment_;
  std::optional<Recent> recent_use_;
  std::optional<Recent> recent_part_;
  std::pair<Uuid, Uuid> last_writer_;  ///< person and feed, known to be noted
  TableStore& store_;
  Touched* touched_;
  std::set<Job> jobs_;
  std::map<Uuid, Span> spans_;
  std::pair<const Uuid, Span>* last_span_ = nullptr;
  bool began_empty_;
  bool all_news_waits_ = began_empty_;
  AllNews news_;
  AllNews::value_type* last_news_ = nullptr;
  std::map<std::pair<Uuid, Uuid>, News> row_news_;  ///< by post and visit
};

/// Whether what is told about a record replaces what is kept: a new stamp for the same place, or,
/// for a record that came under two chains, the place that the hub numbered first.
bool replaces(const PlacedRecord& kept, const PlacedRecord& told);

/// Asks for every row that a record other than a reading has a part in.
void refresh(Folding& folding, const PlacedRecord& placed);
/// The same for one that only adds to its row of coverage.
void refresh_but_coverage(Folding& folding, const PlacedRecord& placed);
/// Asks for what a settling of this subject may settle.
void resettle(Folding& folding, const Uuid& subject);

// clock_rules
void ensure_clock(Folding& folding, const PlacedRecord& placed);
void derive_segments(Folding& folding, const Job& job);
// correction_rules
void derive_change(Folding& folding, const Job& job);
struct Settlement {
  Uuid by;
  std::optional<Uuid> decision;
  std::optional<std::int64_t> code;
};
std::optional<Settlement> settlement(Folding& folding, const Uuid& subject,
                                     const std::vector<Uuid>& records);
struct Disagreeing {
  Uuid subject;
  int what = 0;
  std::int64_t detail = 0;
  Uuid feed;
  std::vector<Uuid> records;
  std::optional<Uuid> winner;
};
/// Writes the disagreement with its settling, or takes away one that is over (fewer than two
/// records). Returns the winner: what the settling names, else the one given.
std::optional<Uuid> put_disagreement(Folding& folding, const Disagreeing& disagreeing);
// register_rules
void derive_entity(Folding& folding, const Job& job);
void derive_twice(Folding& folding, const Job& job);
void derive_tag(Folding& folding, const Job& job);
// retirement_rules
void derive_retirement(Folding& folding, const Job& job);
void derive_seen_after(Folding& folding, const Job& job);
// visit_rules
void derive_visit_group(Folding& folding, const Job& job);
void derive_visit_part(Folding& folding, const Job& job);
void fill_visit(Folding& folding, const Fact& visit, Row& row);
void put_visit(Folding& folding, const Row& row);
Uuid one_visit(Folding& folding, const Uuid& visit);
/// The visits said to be one with this one, itself first.
std::vector<Uuid> group_of(Folding& folding, const Uuid& visit);
/// Asks for the visit part of a record that came after its seal.
void ask_after_seal(Folding& folding, const PlacedRecord& placed);
// reading_rules
void add_reading(Folding& folding, const PlacedRecord& placed);
/// Makes the row of a reading that is in again, from what others now say about it.
void refresh_reading(Folding& folding, const Row& row);
void derive_latest(Folding& folding, const Job& job);
// work_rules
void derive_life(Folding& folding, const Job& job);
/// Asks for the lives of a component and of what is welded into it.
void ask_lives(Folding& folding, const Uuid& component);
void ask_lives_of_work(Folding& folding, const Uuid& work);
void fill_work(Folding& folding, const Fact& work, Row& row);
// strike_rules
void derive_strike(Folding& folding, const Job& job);
void derive_gap(Folding& folding, const Job& job);
void ask_strikes_of_component(Folding& folding, const Uuid& component);
void ask_strikes_of_run(Folding& folding, const Uuid& run);
// closure_rules
void derive_closure(Folding& folding, const Job& job);
/// Standing closures that hold people back from this thing: its own, and those of what it is in.
bool barrier_around(Folding& folding, const Uuid& subject);
void ask_findings_under(Folding& folding, const Uuid& entity);
// finding_rules
void derive_finding(Folding& folding, const Job& job);
// coverage_rules
/// Asks for the coverage that this record has a part in.
void ask_seen(Folding& folding, const Record& record);
/// Gives the news to the rows of coverage that they are of, and asks for those.
void ask_coverage_of(Folding& folding, const AllNews& all);
void derive_coverage(Folding& folding, const Job& job);
/// Asks for the coverage of what this entity is part of: it is new, or its row is another.
void ask_coverage(Folding& folding, const std::optional<Row>& before, const Row& now);
/// Asks again for every row of coverage of what stands at this thing, in each visit that has one.
void ask_coverage_rows(Folding& folding, const Uuid& entity);
/// Every row of coverage of a visit, as counted or counted again.
void ask_coverage_of_visit(Folding& folding, const Uuid& visit, bool again);
/// The components that stand in a post or a bay.
std::vector<Row> parts_at(Folding& folding, const Uuid& post_or_bay);
// object_rules
/// Writes which objects a record names, and asks for their states.
void note_objects(Folding& folding, const PlacedRecord& placed);
/// Asks for every object that an erasure names: what keeps objects is another now.
void ask_erased_objects(Folding& folding);
void derive_object(Folding& folding, const Job& job);
// other_rules
void derive_plain(Folding& folding, const Job& job);
void derive_stock(Folding& folding, const Job& job);
void derive_next_visits(Folding& folding, const Job& job);

// Short ways into a row.
inline Cell& in(Row& row, int column) {
  return row[static_cast<std::size_t>(column)];
}
inline const Cell& in(const Row& row, int column) {
  return row[static_cast<std::size_t>(column)];
}
inline Uuid id_in(const Row& row, int column) {
  return std::get<Uuid>(in(row, column));
}
inline std::int64_t number_in(const Row& row, int column) {
  return number_of(in(row, column));
}

inline std::int64_t type_of(const Row& entity) {
  return number_in(entity, at(entity_columns, "type"));
}

}  // namespace kneerail::fold
