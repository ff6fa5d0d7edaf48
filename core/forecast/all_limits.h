#pragma once

// Every limit of every part at once: the models of coatings, walls, set screws and grades fitted to
// one portfolio, and what they say together.

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/coating_model.h"
#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/screws/screw_forecast.h"
#include "core/forecast/wall/wall_paths.h"

namespace kneerail::forecast {

/// The coating's model, or why there is none; and the tables that walls are reckoned with, which
/// one part again would make anew each time.
struct FittedCoating {
  std::optional<CoatingModel> model;  ///< none: no part has a coating that is served
  std::string why_none;
  std::optional<WallPaths> wall_paths = {};  ///< none: made where they are needed
};

/// Errors: not_estimable (no part), cancelled, with the reason in words.
Result<FittedCoating> fit_any_coating(const Portfolio& portfolio, const RunOptions& options = {});
/// What was fitted; or, where that is not_estimable, why there is none. Errors: any other.
Result<FittedCoating> coating_or_why(Result<CoatingModel> model);
/// Errors: cancelled. Without a model there are no rows, and a note says why.
Result<CoatingForecast> report_any_coating(const FittedCoating& coating, const Portfolio& portfolio,
                                           const RunOptions& options = {});

/// What is fitted beside the coating. Walls have no model of their own: they lean on the coating's.
struct OtherModels {
  ScrewModel screws;
  GradeModel grades;
};

/// Errors: not_estimable (numerical), cancelled.
Result<OtherModels> fit_other_limits(const Portfolio& portfolio, const RunOptions& options = {});

struct OtherLimits {
  std::vector<LimitForecast> rows;  ///< of walls, screws and grades, by part id, then limit
  std::vector<LeftOut> left_out;
  std::vector<std::string> notes;
  std::vector<InspectorHabit> inspectors;
};

/// What the fitted models say of their portfolio. Errors: those of report_walls(), cancelled.
Result<OtherLimits> report_other_limits(const FittedCoating& coating, const OtherModels& others,
                                        const Portfolio& portfolio, const RunOptions& options = {});

struct AllLimits {
  CoatingForecast all;  ///< rows of every limit, by part id, then limit; left out: by part
  std::vector<InspectorHabit> inspectors;
};

/// By part, reading and reason: the order of what is left out of all limits.
void sort_left_out(std::vector<LeftOut>& left_out);

/// All of it, fitted and said. Errors: as above.
Result<AllLimits> forecast_all_limits(const Portfolio& portfolio, const RunOptions& options = {});

/// The rows of one part again, by limit, with readings that came after the fit: `one` holds it
/// alone, with its visits and works (part_story.h, only_part). What the parts share is held. A
/// limit whose fit has not met the part's place has a row without an answer that says so; with
/// `others` null only coatings and walls have rows. Errors: invalid_input when `one` does not hold
/// exactly one part.
Result<std::vector<LimitForecast>> all_limits_of_one_part(const FittedCoating& coating,
                                                          const OtherModels* others,
                                                          const Portfolio& one);

}  // namespace kneerail::forecast
