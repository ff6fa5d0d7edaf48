#pragma once

// Visits that give no number but a bound: zinc thinner than so much, softly.

#include <optional>

#include "core/forecast/coating_data.h"
#include "core/forecast/constants.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

/// Its likelihood is a floor plus P(thickness + normal error of that variance < limit).
struct ThicknessBound {
  double limit_um = 0;
  double variance = 0;
};

/// The bound a visit stands for; nothing where it is a number. `place` is that of the mean in
/// CoatingData::means.
inline std::optional<ThicknessBound> bound_of(const CoatingData& data, const Spreads& spreads,
                                              const Segment& segment, std::int32_t place) {
  if (data.means[static_cast<std::size_t>(place)].gone)
    return ThicknessBound{constant::gone_below_um, spreads.rest_um * spreads.rest_um +
                                                       data.replicate_sd_um * data.replicate_sd_um};
  if (read_on_rust(segment, place))
    return ThicknessBound{constant::rust_below_um, constant::rust_sd_um * constant::rust_sd_um};
  return std::nullopt;
}

}  // namespace kneerail::forecast
