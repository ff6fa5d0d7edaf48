#pragma once

// Corrosivity categories of ISO 9223:2012: which first-year rates belong to which, and how far off
// a rate taken from one may be.

#include <optional>
#include <string_view>

#include "core/corrosion/metal.h"

namespace kneerail::corrosion {

/// `beyond` is worse than CX: outside the scheme, never to be clipped into it.
enum class CorrosivityCategory { c1, c2, c3, c4, c5, cx, beyond };

/// "C1" ... "CX", ">CX".
std::string_view to_text(CorrosivityCategory category);

/// First-year rates of a category, um/a: above `low`, up to and including `high`.
struct RateBand {
  double low_um;
  double high_um;
};

/// Table 2. Nothing for aluminium (its column is in g/m2, its attack local), copper, or `beyond`.
/// C1 starts at 0.
std::optional<RateBand> first_year_band(Metal metal, CorrosivityCategory category);

/// The category of a first-year rate, um/a; nothing where first_year_band() has nothing.
std::optional<CorrosivityCategory> category_of(Metal metal, double first_year_rate_um);

/// Middle of a category on the logarithmic scale, sqrt(low high), um/a: zinc C3 1.212. C1 has no
/// lower bound; half its upper one stands in for it (our choice).
std::optional<double> middle_first_year_um(Metal metal, CorrosivityCategory category);

/// Spread of an estimated first-year rate about the truth as standard deviation of its logarithm:
/// ln 1.5 for steel, zinc and copper (-33 % to +50 %), ln 2 for aluminium (-50 % to +100 %).
/// Source: ISO 9223:2012, Annex A: the log-normal form; its Table A.1 from memory.
double estimate_ln_sd(Metal metal);
/// The same of any interval low..high given as factors on the rate: (ln high - ln low) / 2.
double ln_sd_of_interval(double low_factor, double high_factor);

}  // namespace kneerail::corrosion
