#pragma once

// All models of the forecast fitted to one portfolio, the rows they say, and the fit of one site
// taken out of that of all. A site's rows hang on what all sites share and on the site's own
// readings alone: from the site's part of the fit and the site's portfolio they come out to the
// last bit as from the whole. So a forecast can be made site by site, in any number of processes,
// with no more in memory than the largest site.

#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/all_limits.h"

namespace kneerail::forecast {

struct PortfolioFit {
  FittedCoating coating;
  OtherModels others;
  std::vector<SessionReport> sessions;  ///< of the coating's sessions
};

/// Errors: cancelled; not_estimable where nothing can be said (no part, numerical); and
/// invalid_input for a setting out of range.
Result<PortfolioFit> fit_portfolio(const Portfolio& portfolio, const RunOptions& options);

/// The models, with what they say of sessions.
PortfolioFit fit_of_all(FittedCoating coating, OtherModels others);

/// What the forecast says of the whole, beside its rows.
struct ForecastHead {
  std::vector<SessionReport> sessions;
  std::vector<TrackRecord> track_record;
  std::vector<std::string> notes;        ///< of coatings
  std::vector<std::string> screw_notes;  ///< said where a screw is answered
  std::vector<std::string> grade_notes;
  std::vector<InspectorHabit> inspectors;
  double largest_move = 0;
};
ForecastHead head_of(const PortfolioFit& fit);

/// Notes of the whole: those of set screws where one is answered.
std::vector<std::string> notes_of(const ForecastHead& head, bool screws_answered);

/// The rows of parts, by part id, then limit; and what the models left out, by part, reading and
/// reason. What the portfolio had left out before is not among it.
struct ForecastRows {
  std::vector<LimitForecast> limits;
  std::vector<LeftOut> left_out;
};

/// The rows of the fitted portfolio; or of one site, where both are of that site alone. Errors:
/// cancelled, invalid_input; corrupt where the fit is of other parts.
Result<ForecastRows> rows_of(const PortfolioFit& fit, const Portfolio& portfolio,
                             const RunOptions& options);

/// The same to the last bit, where its coatings and the others were said already.
ForecastRows rows_said(const PortfolioFit& fit, const Portfolio& portfolio,
                       std::vector<LimitForecast> coatings, OtherLimits others);

/// The rows of one part again with readings that came after the fit, what parts share held: as
/// all_limits_of_one_part(). Errors: as there.
Result<ForecastRows> rows_of_one_part(const PortfolioFit& fit, const Portfolio& one);

/// The forecast as one, as forecast_all_limits() makes it; `left_out_before` is the portfolio's.
AllLimits put_together(const ForecastHead& head, ForecastRows rows,
                       const std::vector<LeftOut>& left_out_before);

/// From places of parts in the portfolio of a fit to their places in that of one site.
using PlaceInSite = std::function<std::int32_t(std::int32_t)>;
/// The fit of one site alone, but for what was left out of it; without what only the whole needs:
/// track record and dates of installation.
PortfolioFit fit_of_site(const PortfolioFit& fit, const std::string& site,
                         const PlaceInSite& places);

}  // namespace kneerail::forecast
