#pragma once

// What the rows of one part say together: which limit governs it, how likely it stops holding
// people within the horizon, and when it comes due by the owner's chance; and which part goes
// first.
//
// Governing is the limit with the earliest median. A structural limit is one by which the part no
// longer holds what leans on it: wall, torque, and the grade it is replaced at. The chances of one
// part's limits are dependent, so they are never added or multiplied: the largest counts.

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/forecast/coating_forecast.h"
#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

struct PartOutlook {
  std::int32_t part = 0;  ///< place in Portfolio::parts
  /// Places in the rows. Governing: none where no row has a median. The runner-up: its median is
  /// within a fifth of the governing one's.
  std::optional<std::size_t> governing;
  std::optional<std::size_t> runner_up;
  double governing_years = 0;  ///< its median, from the as-of date; negative: past
  /// The largest chance of a structural limit within the horizon of the settings, and whose.
  double structural_chance = 0;
  std::optional<std::size_t> structural;
  std::vector<std::size_t> structural_rows;  ///< all of them
  /// Seen last, on that day, at the grade its owner replaces at or a worse one.
  std::optional<Date> seen_past;
  int seen_grade = 0;
  /// The first day a limit is reached with the owner's chance, and which. None where no chance is
  /// set for the part's consequence, or no figure gets there.
  std::optional<Date> due;
  std::optional<std::size_t> due_row;
  /// "governed by set screws, as likely as not in about 4 years; condition grade 5 close behind;
  /// due 2028-03-01 for set screws by the owner's chance of 5 %"; "no chance is set, so no date";
  /// of a part seen at the grade to replace at "seen at grade 5 on 2026-05-12: act on it; due
  /// 2026-06-30 ...".
  std::string words;
};

/// In words: "coating gone", "set screws".
std::string limit_name(Limit limit);

/// One for each part that has an answered row, the one that goes first in front: by the structural
/// chance, then the governing median, then the identifier. A limit of which no part has a reading
/// is left out, as its rows say only what was assumed; but never the wall of bare steel.
std::vector<PartOutlook> part_outlooks(const Portfolio& portfolio,
                                       const std::vector<LimitForecast>& rows);

/// Limits of which some part has a reading.
std::set<Limit> limits_read(const std::vector<LimitForecast>& rows);

/// The same of some rows of a larger whole, of which `read` are the limits read.
std::vector<PartOutlook> part_outlooks(const Portfolio& portfolio,
                                       const std::vector<LimitForecast>& rows,
                                       const std::set<Limit>& read);

}  // namespace kneerail::forecast
