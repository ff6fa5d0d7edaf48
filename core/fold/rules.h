#pragma once

// What both folds share: the numbers of kinds and codes, the merge key, a record as it is shown,
// and rules of one line that there is only one way to write. Everything that decides between
// records is written twice, once in the rule files and once in the naive fold.

#include <compare>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/fold/tables.h"
#include "core/records/entities.h"
#include "core/records/record.h"

namespace kneerail::fold {

namespace kind {
inline constexpr int create = 1;
inline constexpr int set = 2;
inline constexpr int event = 9;
inline constexpr int visit_opened = 10;
inline constexpr int visit_joined = 11;
inline constexpr int not_reached = 12;
inline constexpr int sealed = 13;
inline constexpr int same_visit = 14;
inline constexpr int grade = 20;
inline constexpr int coating = 21;
inline constexpr int torque = 22;
inline constexpr int wall = 23;
inline constexpr int hand_load = 24;
inline constexpr int geometry = 25;
inline constexpr int gate_check = 26;
inline constexpr int finding = 30;
inline constexpr int photograph = 31;
inline constexpr int marks_set = 32;
inline constexpr int made_safe = 33;
inline constexpr int finding_ended = 34;
inline constexpr int next_step = 35;
inline constexpr int hazard_raised = 36;
inline constexpr int closure_look = 37;
inline constexpr int told = 38;
inline constexpr int told_answered = 39;
inline constexpr int work = 40;
inline constexpr int same_work = 41;
inline constexpr int closed = 42;
inline constexpr int strike_opened = 45;
inline constexpr int strike_step = 46;
inline constexpr int opened = 47;
inline constexpr int strike_hours = 48;
inline constexpr int instrument_check = 50;
inline constexpr int calibration = 51;
inline constexpr int doubt = 52;
inline constexpr int stock_moved = 55;
inline constexpr int report = 56;
inline constexpr int next_visit = 57;
inline constexpr int read_by = 58;
inline constexpr int role_given = 60;
inline constexpr int role_taken = 61;
inline constexpr int competence = 64;
inline constexpr int correction = 70;
inline constexpr int voided = 71;
inline constexpr int settled = 72;
inline constexpr int clock = 80;
inline constexpr int object_erased = 85;
inline constexpr int hold = 86;
inline constexpr int hold_ended = 87;
inline constexpr int must_understand_min = 500;
}  // namespace kind

/// A code as the records write it.
template <class Code>
constexpr std::int64_t code_of(Code code) {
  return static_cast<std::int64_t>(code);
}

/// Column `what` of table disagreement. field: detail is the field; correction: the body key.
namespace disagreement {
enum : int {
  field = 1,
  entered_twice,
  seen_after_retired,
  one_tag,
  two_grades,
  replaced_twice,
  next_visit,
  counted_twice,
  correction,
  marks
};
}  // namespace disagreement

/// How sure a time is: column t_quality.
namespace quality {
enum : int { measured = 1, assumed, uncertain, provisional, as_stated };
}  // namespace quality

/// Larger wins, between records that did not see each other. The id makes the order total whatever
/// a device wrote.
struct MergeKey {
  std::int64_t eff = 0;  ///< min(l, received); l while unsent
  std::int64_t l = 0;
  std::int64_t c = 0;
  Uuid dev;
  Uuid record;
  auto operator<=>(const MergeKey&) const = default;
};

MergeKey merge_key(const PlacedRecord& placed);

/// Order of inspection: corrected time first, then the merge key.
struct TimedKey {
  std::int64_t t = 0;
  MergeKey key;
  auto operator<=>(const TimedKey&) const = default;
};

/// What other records say about one record.
struct Change {
  std::optional<Uuid> voided_by;
  std::optional<Uuid> corrected_by;
  std::optional<Uuid> released_by;
  cbor::Map corrected;  ///< {body key: value} as shown
};

struct ClockOffset {
  std::int64_t offset_ms = 0;
  int quality = quality::provisional;
  std::optional<std::int64_t> uncertainty_ms;
  std::optional<std::int64_t> lower_ms;
  std::optional<std::int64_t> upper_ms;
  bool operator==(const ClockOffset&) const = default;
};

struct Timed {
  std::int64_t t = 0;
  int quality = quality::provisional;
};

/// A record with everything the rules ask of it.
struct Fact {
  PlacedRecord placed;
  cbor::Map shown;  ///< body with corrections
  Change change;
  Timed time;
  MergeKey key;

  [[nodiscard]] const Record& record() const { return placed.record; }
  [[nodiscard]] const Uuid& id() const { return placed.record.id; }
  [[nodiscard]] int kind() const { return placed.record.kind; }
  /// Waits for review. A void or a settling is not released: whoever may release it writes it
  /// again. So what counts is decided in this order: voids, settlings, corrections, the rest.
  [[nodiscard]] bool held() const {
    const bool released = change.released_by && kind() != kind::voided && kind() != kind::settled;
    return placed.stamp && (placed.stamp->flags & 1) != 0 && !released;
  }
  /// Neither void nor held for review. A void is not undone.
  [[nodiscard]] bool counts() const {
    return (!change.voided_by || kind() == kind::voided) && !held();
  }
  [[nodiscard]] TimedKey timed_key() const { return {time.t, key}; }
};

/// Whether the writer of one record may have had the other on the tablet, where no base list says
/// so: earlier on the same chain, or at the hub before this one was written.
bool may_have_seen(const Fact& later, const Fact& earlier);

bool is_reading(int kind);
/// Kinds below 500 that this program does not know, and those that only travel, make no rows.
bool makes_rows(int kind);

/// The second thing a record names, by kind; nothing when it names none.
std::optional<Uuid> about_of(const PlacedRecord& placed);
/// The visit a record belongs to.
std::optional<Uuid> visit_of(const Record& record);

/// Whether a correction may change what is shown under this body key. It never touches hazard
/// flags, what a closure is, or seals; nothing that is itself about records; and not which visit,
/// strike, life or parent a record belongs to: that is voided and entered again.
bool correctable(int kind, std::int64_t key);
cbor::Map corrected_body(const Record& record, const cbor::Map& corrected);

/// Raw clock plus offset, cut to the contacts around it; or the time the record states.
Timed time_of(const Record& record, const cbor::Map& shown, const ClockOffset& clock);

/// The field of an entity type that says whether it is in service; nothing where it has none.
std::optional<int> life_state_field(int type);
std::optional<int> tag_field(int type);

// Reading a body.
std::optional<std::int64_t> number_in(const cbor::Map& body, std::int64_t key);
std::optional<Uuid> id_in(const cbor::Map& body, std::int64_t key);
bool truth_in(const cbor::Map& body, std::int64_t key);
/// The identifiers of a list, in its order; empty when there is no list.
std::vector<Uuid> ids_in(const cbor::Map& body, std::int64_t key);
std::vector<Uuid> ids_of(const cbor::Value& list);
/// The numbers of a list, in its order.
std::vector<std::int64_t> numbers_in(const cbor::Map& body, std::int64_t key);

}  // namespace kneerail::fold
