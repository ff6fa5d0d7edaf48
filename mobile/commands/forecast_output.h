#pragma once

// The forecast as a person reads it and as a program reads it. Years count from the as-of date.

#include <cstddef>
#include <map>
#include <ostream>
#include <string>
#include <vector>

#include "core/forecast/coating_forecast.h"
#include "core/forecast/portfolio.h"

namespace kneerail::commands {

/// Where a part is, in words.
struct Place {
  std::string site;
  std::string run;
  std::string post;  ///< label of its post, or of the post before its bay
  std::string part;  ///< "fitting, cross"
  double chainage_m = 0;
};

/// What there is to show. `site` limits what is shown, never what the forecast learns from.
struct ForecastView {
  const forecast::Portfolio& portfolio;
  const forecast::CoatingForecast& forecast;
  const std::map<std::string, Place>& places;       ///< by Part::id; may lack some
  const std::map<std::string, std::string>& sites;  ///< name by Part::site
  std::string site;                                 ///< Part::site, or empty for all
  std::size_t worst = 20;                           ///< how many parts the text lists
  bool track_record = false;                        ///< the whole table, not only its line
};

/// "already past", "under a month", "7 months", "3 years": rounded down, months under two years,
/// never a date. "no end in sight" for the unbounded.
std::string life_words(double years);
/// "3 years (80 % interval: 7 months to 9 years)".
std::string life_with_interval(const forecast::LimitForecast& limit);

/// Places in forecast.limits of the answered "coating gone" rows of what is shown, the worst first:
/// by the chance that the coating is gone within five years, then the median life, then the part's
/// identifier.
std::vector<std::size_t> worst_first(const ForecastView& view);

void print_text(const ForecastView& view, std::ostream& out);
void print_csv(const ForecastView& view, std::ostream& out);
void print_json(const ForecastView& view, std::ostream& out);

}  // namespace kneerail::commands
