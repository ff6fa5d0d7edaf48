#pragma once

// Kinds 40 and 41: work done on a part, and that two records tell of one job. The id of a replace
// or cut-out is the id of the new life.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class WorkAction {
  retorque = 1,
  touch_up,
  replace,
  cut_out_and_weld_in,
  regalvanise,
  repaint,
  clean,
  refix_base,
  other
};

/// Whether the part that was there is gone afterwards.
constexpr bool starts_new_life(WorkAction action) {
  return action == WorkAction::replace || action == WorkAction::cut_out_and_weld_in;
}

/// Subject component or run.
struct WorkDone {
  static constexpr int kind = 40;
  std::optional<Uuid> visit;
  WorkAction action = WorkAction::other;
  std::optional<Uuid> life_before;
  std::optional<std::int64_t> as_left_tenth_nm;
  std::optional<Uuid> instrument;
  std::optional<Uuid> new_component_type;
  std::optional<std::int64_t> new_coating_nominal_tenth_um;
  std::optional<std::string> batch;
  std::optional<Date> day_done;
  std::optional<std::string> note;
  std::optional<std::int64_t> cost_hundredth;  ///< 1/100 of the organisation's currency
  std::optional<int> screw;
  std::optional<int> people;
  std::optional<int> minutes;
  std::optional<Uuid> finding;
  std::optional<Uuid> depot;           ///< the part came from
  std::optional<std::string> done_by;  ///< a crew or firm, not a name
  std::optional<std::vector<Digest>> papers;
  std::optional<SamePart> same_part;
  std::optional<std::string> old_part_kept_at;
  Provenance provenance;
  bool operator==(const WorkDone&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.action);
    each(3, self.life_before);
    each(4, self.as_left_tenth_nm);
    each(5, self.instrument);
    each(6, self.new_component_type);
    each(7, self.new_coating_nominal_tenth_um);
    each(8, self.batch);
    each(9, self.day_done);
    each(10, self.note);
    each(11, self.cost_hundredth);
    each(12, self.screw);
    each(13, self.people);
    each(14, self.minutes);
    each(15, self.finding);
    each(16, self.depot);
    each(17, self.done_by);
    each(18, self.papers);
    each(19, self.same_part);
    each(20, self.old_part_kept_at);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject work.
struct SameWork {
  static constexpr int kind = 41;
  Uuid other_work;
  Provenance provenance;
  bool operator==(const SameWork&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.other_work);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo work_done_kind;
extern const KindInfo same_work_kind;

}  // namespace kneerail
