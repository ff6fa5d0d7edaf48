#pragma once

// Kind 21: the coating's thickness at one spot, every replicate as the gauge showed it.

#include <optional>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class Layer { all_together = 1, zinc_alone, paint_alone };
enum class UnderProbe { bright_zinc = 1, dull_zinc, rust, paint };

/// Subject component.
struct CoatingReading {
  static constexpr int kind = 21;
  Uuid visit;
  Uuid instrument;
  std::vector<std::int64_t> replicates_tenth_um;
  int spot = 1;
  std::optional<Material> base_metal;
  std::optional<std::int64_t> surface_tenth_celsius;
  std::optional<Layer> layer;
  std::optional<UnderProbe> under_probe;  ///< absent: not said
  ReadingNote note;
  bool operator==(const CoatingReading&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.instrument);
    each(3, self.replicates_tenth_um);
    each(4, self.spot);
    each(5, self.base_metal);
    each(6, self.surface_tenth_celsius);
    each(7, self.layer);
    each(8, self.under_probe);
    ReadingNote::keys(self.note, each);
  }
};

extern const KindInfo coating_reading_kind;

}  // namespace kneerail
