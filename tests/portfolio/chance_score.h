#pragma once

// How chances of reaching a limit stand against what came: Brier and log score, the skill of the
// log score against saying the base rate of all, and how far what was said lies from what came in
// five bins of it.

#include <string>
#include <vector>

#include "core/forecast/grade/grade_forecast.h"
#include "tests/portfolio/world.h"

namespace kneerail::portfolio_test {

struct SaidChance {
  double said = 0;
  bool came = false;
};

struct ChanceScores {
  std::size_t parts = 0;
  double said = 0;  ///< mean
  double came = 0;  ///< share
  double brier = 0;
  double log_skill = 0;  ///< 0: no better than the base rate; 1: perfect
  double apart = 0;      ///< mean distance of said and came over the bins
};

/// Of at least one part.
ChanceScores scores_of(const std::vector<SaidChance>& chances);

struct ChanceStratum {
  std::string name;
  std::vector<SaidChance> chances;
};

/// Chances of grade 5 within five years: of all parts; of those not there yet, given that they are
/// not; and of these by grades seen.
void add_grades(const World& world, const forecast::GradeReport& report,
                std::vector<ChanceStratum>& strata);

std::string chance_head();
std::string line(const std::string& name, const ChanceScores& scores);

}  // namespace kneerail::portfolio_test
