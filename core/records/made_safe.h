#pragma once

// Kinds 33, 37, 42 and 47: what holds people back from a hazard or a gap, whether it still stands,
// and that people may pass again. Made safe is not ended.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class Measure { closed_off = 1, propped, taped, struck, reported, guarded, closed_below };
enum class HowItStands { in_place = 1, put_back, gone, not_seen };
enum class WhyClosed { storm = 1, event, work, crowd, accident, order, strike, other };
enum class OpenedOn { pushed_and_looked = 1, looked, not_looked, closed_by_mistake };

/// Subject finding.
struct MadeSafe {
  static constexpr int kind = 33;
  std::vector<Measure> measures;
  std::optional<std::vector<Uuid>> told_to;
  std::optional<Instant> when;
  std::optional<std::string> note;
  std::optional<std::string> told_to_in_words;  ///< an office, not a name
  std::optional<Instant> look_again_by;
  Provenance provenance;
  bool operator==(const MadeSafe&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.measures);
    each(2, self.told_to);
    each(3, self.when);
    each(4, self.note);
    each(5, self.told_to_in_words);
    each(6, self.look_again_by);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject finding or closure.
struct ClosureLook {
  static constexpr int kind = 37;
  HowItStands how = HowItStands::in_place;
  std::optional<Instant> look_again_by;
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const ClosureLook&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.how);
    each(2, self.look_again_by);
    each(3, self.note);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject run or bay; the record's id is the closure.
struct Closed {
  static constexpr int kind = 42;
  WhyClosed why = WhyClosed::other;
  Instant from;
  std::optional<Instant> until_meant;
  ClosedByWhat by_what = ClosedByWhat::boards;
  std::optional<Instant> look_again_by;
  std::optional<Uuid> belongs_to;  ///< event, work, told or strike; always when why is strike
  Provenance provenance;
  bool operator==(const Closed&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.why);
    each(2, self.from);
    each(3, self.until_meant);
    each(4, self.by_what);
    each(5, self.look_again_by);
    each(6, self.belongs_to);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject strike or closure.
struct Opened {
  static constexpr int kind = 47;
  OpenedOn on_what = OpenedOn::looked;
  std::optional<Uuid> visit;
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const Opened&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.on_what);
    each(2, self.visit);
    each(3, self.note);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo made_safe_kind;
extern const KindInfo closure_look_kind;
extern const KindInfo closed_kind;
extern const KindInfo opened_kind;

}  // namespace kneerail
