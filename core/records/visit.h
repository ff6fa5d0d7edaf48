#pragma once

// Kinds 9 to 14: events, and the visits that answer them. A visit is closed by seals, one for each
// person's part on each device.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/records/body.h"
#include "core/records/provenance.h"

namespace kneerail {

enum class EventKind {
  ice = 1,
  flood,
  impact,
  crowd,
  other,
  storm,
  near_miss,
  accident,
  damage_on_purpose
};
enum class VisitKind {
  routine = 1,
  detailed,
  after_an_event,
  after_work,
  before_opening,
  strike,
  re_erect
};
enum class Surface { dry = 1, damp, wet, ice };
enum class WhyNotReached { locked = 1, water, blocked, unsafe, no_time, struck, other };
inline constexpr std::string_view not_reached_words[] = {"locked",  "water",  "blocked", "unsafe",
                                                         "no time", "struck", "other"};

/// Mark of a flood or of ice, mm up from the deck.
struct EventMark {
  Place place;
  std::int64_t up_mm = 0;
  bool operator==(const EventMark&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.place);
    each(self.up_mm);
  }
};

/// Subject site or run. It asks for a visit out of turn.
struct Event {
  static constexpr int kind = 9;
  EventKind what = EventKind::other;
  Instant from;
  std::optional<Instant> until;
  std::optional<std::vector<cbor::Value>> where;  ///< places and component ids
  std::optional<std::string> note;
  std::optional<EventMark> mark;
  std::optional<Uuid> told;
  Provenance provenance;
  bool operator==(const Event&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.what);
    each(2, self.from);
    each(3, self.until);
    each(4, self.where);
    each(5, self.note);
    each(6, self.mark);
    each(7, self.told);
    Provenance::keys(self.provenance, each);
  }
};

struct Conditions {
  Surface surface = Surface::dry;
  std::optional<int> wind_beaufort;
  std::optional<std::int64_t> air_tenth_celsius;
  bool operator==(const Conditions&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.surface);
    each(self.wind_beaufort);
    each(self.air_tenth_celsius);
  }
};

/// What the device had of the hub's when the visit began: last hub sequences.
struct Aboard {
  std::int64_t site_hseq = 0;
  std::int64_t organisation_hseq = 0;
  bool operator==(const Aboard&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.site_hseq);
    each(self.organisation_hseq);
  }
};

/// Subject site; the record's id is the visit.
struct VisitOpened {
  static constexpr int kind = 10;
  VisitKind kind_of_visit = VisitKind::routine;
  std::optional<std::string> name;
  std::optional<std::vector<Uuid>> runs_meant;
  std::optional<Conditions> conditions;
  std::optional<Uuid> event;
  std::optional<Aboard> aboard;
  std::optional<std::string> program_version;
  Provenance provenance;
  bool operator==(const VisitOpened&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.kind_of_visit);
    each(2, self.name);
    each(3, self.runs_meant);
    each(4, self.conditions);
    each(5, self.event);
    each(6, self.aboard);
    each(7, self.program_version);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject visit.
struct VisitJoined {
  static constexpr int kind = 11;
  std::optional<std::string> task;
  std::optional<Aboard> aboard;
  std::optional<std::string> program_version;
  Provenance provenance;
  bool operator==(const VisitJoined&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.task);
    each(6, self.aboard);
    each(7, self.program_version);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject component, post or run.
struct NotReached {
  static constexpr int kind = 12;
  Uuid visit;
  WhyNotReached reason = WhyNotReached::other;
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const NotReached&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.reason);
    each(3, self.note);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject visit. Closes one person's part on one device.
struct Sealed {
  static constexpr int kind = 13;
  std::int64_t first_seq = 1;
  std::int64_t last_seq = 1;
  Digest chain_digest{};  ///< at last_seq
  std::map<std::int64_t, std::int64_t> count_by_kind;
  int not_reached_count = 0;
  std::optional<Digest> signature_picture;
  std::array<std::uint8_t, 64> signature{};  ///< Ed25519
  std::array<std::uint8_t, 8> key_id{};
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const Sealed&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.first_seq);
    each(2, self.last_seq);
    each(3, self.chain_digest);
    each(4, self.count_by_kind);
    each(5, self.not_reached_count);
    each(6, self.signature_picture);
    each(7, self.signature);
    each(8, self.key_id);
    each(9, self.note);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject visit. Says that the two are one.
struct SameVisit {
  static constexpr int kind = 14;
  Uuid other_visit;
  Provenance provenance;
  bool operator==(const SameVisit&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.other_visit);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo event_kind;
extern const KindInfo visit_opened_kind;
extern const KindInfo visit_joined_kind;
extern const KindInfo not_reached_kind;
extern const KindInfo sealed_kind;
extern const KindInfo same_visit_kind;

}  // namespace kneerail
