#pragma once

// Invented portfolios of condition grades with known truth, for the tests of the grade forecast:
// parts that go from grade to grade at speeds of their own, and inspectors who are at times one
// grade off. Everything comes from one seed.

#include <array>
#include <cstdint>
#include <vector>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

struct GradeRecipe {
  std::uint64_t seed = 1;
  int sites = 3;
  int zones = 3;         ///< per site
  int parts = 60;        ///< per zone
  int days = 5;          ///< visit days per site, two years apart, the last half a year ago
  double graded = 0.75;  ///< chance that a part is graded on a day
  std::array<double, 4> rates{0.14, 0.11, 0.09, 0.10};  ///< per year, of the middle part
  double part_sd = 0.45;                                ///< of ln speed
  double zone_sd = 0.3;
  double site_sd = 0.2;
  double spray = 0.3;                  ///< added to ln speed in the spray
  std::vector<double> up{0.05, 0.02};  ///< by inspector: one grade too many
  std::vector<double> down{0.04, 0.05};
  double copied = 0;  ///< chance that a look says the last grade again
  double unknown_start = 0.2;
  double replaced = 0.02;  ///< chance that a part was replaced in its life, and that is known
};

struct GradeTruth {
  std::array<double, 4> years_to{};  ///< grades 2 to 5, from the as-of date; negative: past
  int now = 1;
  double ln_speed = 0;  ///< against the middle part
};

struct MadeGrades {
  Portfolio portfolio;
  std::vector<GradeTruth> truth;  ///< by place in portfolio.parts
};

MadeGrades made_grades(const GradeRecipe& recipe);

}  // namespace kneerail::forecast
