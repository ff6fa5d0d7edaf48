#pragma once

// The forecast of condition grades for a whole portfolio: when each part's true grade reaches the
// owner's grade to replace at and grade 5, what it likely is now beside what was seen, and the
// reason in words. Serves parts of every kind and material. Model: grade_model.h.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/coating_forecast.h"
#include "core/forecast/grade/grade_model.h"
#include "core/forecast/limit.h"

namespace kneerail::forecast {

/// The time to one grade for one part. Years count from the as-of date; negative: already past;
/// inf: no upper bound.
struct GradeForecast {
  std::int32_t part = 0;  ///< place in Portfolio::parts
  Limit limit = Limit::grade_5;
  std::array<double, 7> years{};    ///< 5, 10, 25, 50, 75, 90, 95 %; never falling
  std::array<double, 4> p_by{};     ///< chance by the as-of date, 1, 2 and 5 years after
  std::optional<double> p_on_date;  ///< by the date asked
  GradeChances now{};               ///< chances of the true grade on the as-of date
  int looks = 0;                    ///< grades of the current segment
  std::optional<int> seen;          ///< seen_last() of them
  std::optional<Date> seen_on;
  double own_share = 0;  ///< share of the speed's information from the part's own grades, 0 to 1
  std::string words;     ///< how well founded, in plain words
  std::string sentence;  ///< seen, likely now, and when the grade is reached with its 80 % interval
  std::vector<std::string> flags;
};

/// How an inspector's grades lie against everybody's. For who leads the inspectors, nobody else.
struct InspectorHabit {
  std::string inspector;
  int grades = 0;     ///< fresh ones
  double up = 0;      ///< share one grade too many
  double down = 0;    ///< share one grade too few
  std::string words;  ///< "I2 grades high: 1 in 6"; empty: like the others
};

struct GradeReport {
  std::vector<GradeForecast> rows;  ///< by part id; grade_5, and before it grade_G where G is less
  std::vector<InspectorHabit> habits;
  std::vector<LeftOut> left_out;
  std::vector<std::string> notes;
  GradeRates rates_per_year{};
};

struct GradeQuestion {
  std::optional<Date> by = {};  ///< a date to give the chance for
  Workers workers = {};
};

/// Errors: not_estimable (no part; numerical), cancelled, with the reason in words. The same
/// portfolio gives the same digits whatever the order of its rows and the number of threads.
Result<GradeReport> forecast_grades(const Portfolio& portfolio, const GradeQuestion& question = {});

/// What a fitted model says of its portfolio. Errors: cancelled.
Result<GradeReport> report_grades(const GradeModel& model, const Portfolio& portfolio,
                                  const GradeQuestion& question = {});

/// What report_grades() says of its model as a whole.
std::vector<InspectorHabit> inspector_habits(const GradeModel& model);
std::vector<std::string> grade_notes(const GradeModel& model);

/// One part again with grades that came after the fit; `one` holds it alone, with its visits and
/// works (part_story.h, only_part). What the parts share is held; an inspector the fit has not met
/// errs like all. Errors: not_found (a site or zone that the fit has not seen), invalid_input (more
/// than one part).
Result<std::vector<GradeForecast>> grades_of_one_part(const GradeModel& model, const Portfolio& one,
                                                      std::optional<Date> by = std::nullopt);

/// The same as a row among those of the other limits.
LimitForecast limit_row(GradeForecast grade);

/// The grade the owner replaces at on that site, 2 to 5: limit 6, else 5.
int replace_grade(const Portfolio& portfolio, const std::string& site);

}  // namespace kneerail::forecast
