#pragma once

// From a portfolio to what the coating model sees: which parts it serves, which readings it uses,
// and a reason for every one that it does not.

#include <array>
#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/corrosion/category.h"
#include "core/forecast/coating_data.h"

namespace kneerail::forecast {

/// Why the coating model has no number for a part, as a sentence; empty when it serves the part.
std::string why_not_served(const Part& part);

/// The thickness a given number says; nothing for what is no thickness of a coating.
std::optional<double> thickness_um(std::optional<double> given);

/// The rate given for the part or its zone, um a year, where it is one: not of another size than
/// metals lose, and not more than ten times outside the class that is given beside it.
std::optional<double> taken_rate(const Part& part);

/// The code under which such a part's coating readings are left out.
std::string left_out_reason(const Part& part);

/// ln of the part's mean rate before any reading, um per year over the first 20 years: its own, or
/// the middle of its class (ISO 9223:2012, table 2, geometric mean of the bounds) times H(20)/20.
std::optional<double> ln_prior_rate(const Part& part, const corrosion::AttackPath& path);

/// Bounds of a class's first-year zinc loss, um (ISO 9223:2012, table 2; C1 from 0.05).
corrosion::RateBand class_bounds(Category category);
std::string to_text(Category category);

/// What a whole portfolio tells and one of its parts alone cannot: sd of a replicate and of one
/// area, how well classes are known, and the chance of rust under the gauge by grade.
struct LearntBefore {
  double replicate_sd_um;
  double area_sd_um;
  double class_ratio;
  std::array<double, 6> rust_chance;
};
LearntBefore learnt_from(const CoatingData& data);

/// Sessions, visit means, segments; what a portfolio tells of gauges, areas, classes and grades is
/// estimated unless given.
/// Errors: not_estimable when the model serves no part; invalid_input for a path exponent outside
/// 0.5 to 1.
Result<CoatingData> prepare_coating(const Portfolio& portfolio,
                                    std::optional<LearntBefore> known = std::nullopt);

/// Raises the counts of sessions per zone to those of a larger portfolio of the same sites.
void note_zone_sessions(const CoatingData& larger, CoatingData& data);

}  // namespace kneerail::forecast
