#pragma once

// The forecast of wall_limit: when a tube's wall is down to the limit set for it, zinc first, then
// steel from outside, and rust inside the hollow from the first year beside them (wall_law.h for
// the model, its sources and limits). Only post and rail tubes have a row; where no model serves
// the wall the row says so: paint on steel, aluminium, stainless.
//
// Where neither the age nor the wall of a tube is known, chances at dates are said and no years.
// The limit is the larger of the owner's (the part's own, or a share of its nominal) and the least
// wall that carries its load (least_wall.h in core/structure), as far as they are known. From one
// place read at or under it the chance is at least that of this place. Where a new tube does not
// pass: "no reserve; refer to an engineer". A tube that is dented, oval or holed is not projected.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/coating_model.h"
#include "core/forecast/parallel.h"
#include "core/forecast/wall/wall_paths.h"

namespace kneerail::forecast {

struct WallForecast {
  std::int32_t part = 0;  ///< place in Portfolio::parts
  bool answered = false;
  bool has_years = true;
  std::array<double, 7> years{};  ///< 5, 10, 25, 50, 75, 90, 95 %; never falling
  std::array<double, 4> p_by{};   ///< by the as-of date, 1, 2 and 5 years after; never falling
  std::optional<double> p_on;     ///< by the date asked, where one was
  int readings_used = 0;          ///< days on which a gauge read this tube
  double own_share = 0;           ///< of its coating's row
  double wall_now_mm = 0;         ///< mean
  double zinc_gone_now = 0;       ///< chance
  double open_chance = 0;         ///< that its hollow rusts
  std::array<double, 3> steel_um_per_year{};  ///< outside; 10, 50, 90 %; 20-year mean
  std::string words;                          ///< how well founded
  std::string sentence;                       ///< the reason, from its numbers
  std::vector<std::string> flags;
};

struct WallForecasts {
  std::vector<WallForecast> tubes;  ///< by part id
  std::vector<LeftOut> left_out;    ///< wall readings not used, with their reason
};

/// A row for every post and rail tube. `coating` is the model fitted to that portfolio, or null
/// where no part has a coating it serves: bare steel is answered all the same. The same portfolio
/// gives the same digits whatever the order of its rows and the number of threads. Errors:
/// invalid_input for a steel exponent outside 0.5 to 1; cancelled when the workers were stopped.
/// `on`: a date to give the chance for; `kept`: tables that may be at hand (WallQuestions).
Result<WallForecasts> report_walls(const CoatingModel* coating, const Portfolio& portfolio,
                                   const Workers& workers, std::optional<Date> on = {},
                                   const WallPaths* kept = nullptr);

/// The same, fitting the coating first. Errors as there and as fit_coating_model().
Result<WallForecasts> forecast_walls(const Portfolio& portfolio, const RunOptions& options = {});

/// The row among those of the other limits.
LimitForecast limit_row(const WallForecast& tube);

}  // namespace kneerail::forecast
