#pragma once

// Kind 22: the torque left in one set screw. A click is a bound or a rough value, never an exact
// one: without movement "at least" what the wrench was set at; with movement "about" what the slide
// showed, or "at most" the set value when it showed none.

#include <optional>

#include "core/records/provenance.h"

namespace kneerail {

enum class Censoring { exact, about, at_least, at_most, not_measurable };
enum class TorqueMethod { click_no_movement = 1, click_moved, breakaway_read, marked_line_turn };
enum class WhyNotMeasurable { seized = 1, no_screw, head_damaged, out_of_reach };

/// Subject component.
struct TorqueReading {
  static constexpr int kind = 22;
  Uuid visit;
  Uuid instrument;
  int screw = 1;
  std::optional<std::int64_t> as_found_tenth_nm;  ///< absent only when not measurable
  Censoring censoring = Censoring::exact;
  TorqueMethod method = TorqueMethod::breakaway_read;
  std::optional<std::int64_t> as_left_tenth_nm;
  std::optional<std::int64_t> target_tenth_nm;
  std::optional<WhyNotMeasurable> why_not;
  std::optional<std::int64_t> wrench_set_tenth_nm;  ///< the value it clicks at
  ReadingNote note;
  bool operator==(const TorqueReading&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.instrument);
    each(3, self.screw);
    each(4, self.as_found_tenth_nm);
    each(5, self.censoring);
    each(6, self.method);
    each(7, self.as_left_tenth_nm);
    each(8, self.target_tenth_nm);
    each(9, self.why_not);
    each(10, self.wrench_set_tenth_nm);
    ReadingNote::keys(self.note, each);
  }
};

extern const KindInfo torque_reading_kind;

}  // namespace kneerail
