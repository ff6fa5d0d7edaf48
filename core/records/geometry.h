#pragma once

// Kind 25: a height, spacing or gap, measured.

#include <optional>

#include "core/records/provenance.h"

namespace kneerail {

enum class Measured { rail_height = 1, post_spacing, gap_below, gap_between, opening };

/// Subject run, bay or post.
struct Geometry {
  static constexpr int kind = 25;
  Uuid visit;
  Measured what = Measured::rail_height;
  std::int64_t measure_mm = 0;
  std::optional<std::int64_t> limit_mm;  ///< as it was at the time
  std::optional<Uuid> rule_set;
  std::optional<Uuid> instrument;
  ReadingNote note;
  bool operator==(const Geometry&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.what);
    each(3, self.measure_mm);
    each(4, self.limit_mm);
    each(5, self.rule_set);
    each(6, self.instrument);
    ReadingNote::keys(self.note, each);
  }
};

extern const KindInfo geometry_kind;

}  // namespace kneerail
