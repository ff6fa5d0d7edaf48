#pragma once

// Plain words for a grade forecast.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/forecast/grade/grade_forecast.h"

namespace kneerail::forecast {

/// What is known of the part beside the looks of its current segment.
struct GradeKnown {
  bool start = true;     ///< its start
  bool earlier = false;  ///< grades from before it was renewed
};

/// How well founded.
std::string grade_basis_words(std::span<const GradeLook> looks, const GradeKnown& known);

/// "seen 3 on 2025-05-22; likely 3 (71 %), 4 (22 %)": the likeliest, and the next where it has a
/// tenth or more.
std::string grade_now_words(const GradeForecast& row);

/// The whole sentence: seen and likely, chance within five years, when, and the words.
std::string grade_sentence(const GradeForecast& row, bool owner_set_grade);

std::vector<std::string> grade_flags(std::span<const GradeLook> looks, const GradePart& part);

/// "I2 grades high: 1 in 6", where an inspector's share is half as much again as everybody's and
/// more than chance explains (two standard deviations); empty else.
std::string habit_words(const std::string& inspector, const InspectorCounts& counts,
                        const GradeErrors& own, const GradeErrors& everybody);

}  // namespace kneerail::forecast
