#pragma once

// The forecast as a person reads it and as a program reads it. Years count from the as-of date.

#include <cstddef>
#include <functional>
#include <optional>
#include <ostream>
#include <set>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/coating_forecast.h"
#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/portfolio.h"
#include "schema/store/later_visits.h"
#include "schema/store/place_store.h"

namespace kneerail::commands {

/// What there is to show. `site` limits what is shown, never what the forecast learns from.
struct ForecastView {
  const forecast::Portfolio& portfolio;
  const forecast::CoatingForecast& forecast;
  const Places& places;                                   ///< may lack some
  std::string site;                                       ///< Part::site, or empty for all
  std::optional<std::size_t> worst = {};                  ///< how many parts each list has
  bool track_record = false;                              ///< the whole table, not only its line
  std::vector<forecast::InspectorHabit> inspectors = {};  ///< where who leads them asks
  /// Issued earlier; none: not judged, or not asked for.
  std::optional<std::vector<forecast::TrackRecord>> reports = {};
  std::vector<std::string> report_notes = {};       ///< which of them were not judged
  std::optional<double> years_between_visits = {};  ///< where what to measure first is asked
  std::optional<Date> on = {};                      ///< where chances by a date are asked
  std::vector<LaterVisit> later_visits = {};        ///< left out: after the as-of date
  /// Of a piece of a forecast: limits of which some part of the whole has a reading.
  const std::set<forecast::Limit>* limits_read = nullptr;

  /// Of coatings and of what to measure first; of every other list.
  [[nodiscard]] std::size_t listed() const { return worst.value_or(20); }
  [[nodiscard]] std::size_t listed_of_others() const { return worst.value_or(5); }
};

/// The text with each identifier of a thing that has a name replaced by that name.
std::string with_names(const std::string& text, const Places& places);

/// Places in forecast.limits of the answered rows of that limit of what is shown, the worst first:
/// by the chance that it is reached within five years, then the median life, then the part's
/// identifier.
std::vector<std::size_t> worst_first(const ForecastView& view,
                                     forecast::Limit limit = forecast::Limit::coating_exhausted);

/// The same of grades: each part's row of the grade it is replaced at.
std::vector<std::size_t> worst_grades_first(const ForecastView& view);

/// The rows of a forecast in pieces, each a view of some parts with their rows and what was left
/// out of them; part ids ascend over all pieces. May be called again. Errors: those of where they
/// come from.
using ForecastPieces =
    std::function<Result<>(const std::function<void(const ForecastView& piece)>& each)>;

void print_text(const ForecastView& view, std::ostream& out);
void print_csv(const ForecastView& view, std::ostream& out);
void print_json(const ForecastView& view, std::ostream& out);
/// The same of pieces, one in memory at a time: `head` has what is said of the whole, and no rows.
Result<> print_csv(const ForecastView& head, const ForecastPieces& pieces, std::ostream& out);
Result<> print_json(const ForecastView& head, const ForecastPieces& pieces, std::ostream& out);

}  // namespace kneerail::commands
