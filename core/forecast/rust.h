#pragma once

// A gauge on rust reads rust. Where the zinc is gone and steel rusts, a coating gauge shows the
// thickness of the rust, often more than the zinc last had: taken as numbers such readings promise
// decades. A visit at which the part was graded 4 or 5, or its surface said to be rust, may have
// been read on rust; whether it was is weighed for each part against all its other readings.
//
//   pi_q      chance that a visit of worst grade q was read on rust: 0.01, 0.98, 0.98 for grades 3,
//             4, 5, as far as the owner's own data tie grades to thickness: within kind and age
//             band of 5 years, D_q = P(reading at q below one at grade 1 or 2) - P(above), times
//             n/(n+30), and pi_q <- max(0.002, pi_q * clamp((D_q - 0.30)/0.15, 0, 1)). A surface
//             said to be rust: 0.98; zinc: 0.002; no grade: 0.002.
//   K         hypothesis "the last K visits were read on rust", K up to 10, never past a visit at
//             grade 1 or 2. Visits before are numbers, the others bounds: zinc under 17 um (sd 8).
//   rho(y)    what a gauge shows on rust: 0.8 y/12^2 exp(-y/12) + 0.2/150 per um.
//   weight    evidence with K times the product of pi/(1-pi) rho(y) over the visits taken as rust.
//
// The fit takes the best K of each part, the forecast mixes the two best. A visit under 7 um is a
// bound already ("gone") and counts neither way.
//
// Limits: the sizes were chosen on invented portfolios; a rust that a brush took off before the
// reading, or thick paint over rust, is not described.

#include <array>

#include "core/forecast/coating_data.h"
#include "core/forecast/parallel.h"
#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

/// pi by grade; 0 for none and for grades 1 and 2.
std::array<double, 6> rust_chance(const CoatingData& data);

/// Notes the odds beside each visit mean and marks the segments to be weighed.
void note_rust_odds(CoatingData& data);

/// Before the first fit: the visits that were likelier than not read on rust are taken as such.
/// Whether any segment is to be weighed.
bool guess_rust(CoatingData& data);

/// Weighs the hypotheses of every marked segment. Returns how many segments' best K changed.
int weigh_rust(CoatingData& data, const SharedEffects& effects, const Workers& workers);

/// The same of one segment; whether its best K changed.
bool weigh_rust(CoatingData& data, const SharedEffects& effects, Segment& segment);

}  // namespace kneerail::forecast
