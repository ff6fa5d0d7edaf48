#pragma once

// Kind 23: the wall of a tube at one clock position, every replicate as the gauge showed it.

#include <optional>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

inline constexpr int clock_not_stated = 12;

/// Subject component.
struct WallReading {
  static constexpr int kind = 23;
  Uuid visit;
  Uuid instrument;
  std::vector<std::int64_t> replicates_hundredth_mm;
  int clock_position = clock_not_stated;  ///< 0 (twelve o'clock) to 11; 12 not stated
  std::optional<int> sound_m_per_s;
  std::optional<std::int64_t> height_above_base_mm;
  std::optional<bool> inside_the_hollow;
  ReadingNote note;
  bool operator==(const WallReading&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.instrument);
    each(3, self.replicates_hundredth_mm);
    each(4, self.clock_position);
    each(5, self.sound_m_per_s);
    each(6, self.height_above_base_mm);
    each(7, self.inside_the_hollow);
    ReadingNote::keys(self.note, each);
  }
};

extern const KindInfo wall_reading_kind;

}  // namespace kneerail
