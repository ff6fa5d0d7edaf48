#pragma once

// Kinds 45, 46 and 48: a run is taken down and put up again, part by part and screw by screw. It
// is open to people when a person says so (47) and no step is missing.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class StrikeReason { season = 1, ice, flood, event, access, repair };
enum class StrikeStepKind { down = 1, back, torque_signed, looked_at };
enum class HowTightened {
  clicked_did_not_move = 1,
  moved_tight_now,
  other_value,
  will_not_tighten
};

/// Subject run.
struct StrikeOpened {
  static constexpr int kind = 45;
  StrikeReason reason = StrikeReason::season;
  std::optional<Date> re_erect_by;
  std::optional<ClosedByWhat> gap_closed_by;
  std::vector<Uuid> components;
  Provenance provenance;
  bool operator==(const StrikeOpened&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.reason);
    each(2, self.re_erect_by);
    each(3, self.gap_closed_by);
    each(4, self.components);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject component or bay.
struct StrikeStep {
  static constexpr int kind = 46;
  Uuid strike;
  StrikeStepKind step = StrikeStepKind::down;
  std::optional<std::int64_t> as_left_tenth_nm;
  std::optional<Uuid> instrument;
  std::optional<int> screw;
  std::optional<std::string> stored_at;
  std::optional<HowTightened> how;
  std::optional<SamePart> same_part;
  Provenance provenance;
  bool operator==(const StrikeStep&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.strike);
    each(2, self.step);
    each(3, self.as_left_tenth_nm);
    each(4, self.instrument);
    each(5, self.screw);
    each(6, self.stored_at);
    each(7, self.how);
    each(8, self.same_part);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject strike.
struct StrikeHours {
  static constexpr int kind = 48;
  int people = 1;
  int minutes = 0;
  std::optional<std::string> task;
  std::optional<Date> day;
  Provenance provenance;
  bool operator==(const StrikeHours&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.people);
    each(2, self.minutes);
    each(3, self.task);
    each(4, self.day);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo strike_opened_kind;
extern const KindInfo strike_step_kind;
extern const KindInfo strike_hours_kind;

}  // namespace kneerail
