#pragma once

// The fit of a portfolio that comes site by site: what each site tells the fit is kept, its
// readings are not. To the last bit the fit of the whole portfolio (portfolio_fit.h).

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/coating_gathering.h"
#include "core/forecast/whole/portfolio_fit.h"

namespace kneerail::forecast {

/// What the models left out of one site's readings, by part, reading and reason.
struct LeftOutOfSite {
  std::vector<LeftOut> coating;
  std::vector<LeftOut> screws;
  std::vector<LeftOut> grades;
};

/// A fit whose parts have their places within the portfolios of their sites.
class SiteFits {
 public:
  SiteFits(PortfolioFit all, std::map<std::string, LeftOutOfSite> left_out)
      : all_(std::move(all)), left_out_(std::move(left_out)) {}

  [[nodiscard]] ForecastHead head() const { return head_of(all_); }
  /// The fit of that site alone, for rows_of() with its portfolio.
  [[nodiscard]] PortfolioFit of(const std::string& site) const;

 private:
  PortfolioFit all_;
  std::map<std::string, LeftOutOfSite> left_out_;
};

/// The fit of a portfolio that is handed over site by site, in any order of sites: to the last bit
/// that of the whole. It keeps visit means, tightenings and looks (about 1 kB a part), not the
/// readings, so that these may come as a stream.
class FitBySite {
 public:
  /// With the dates of all sites: those of neighbours stand in for unknown ones.
  explicit FitBySite(InstalledDates installed);
  /// A site once, with all of its parts. Errors: invalid_input for a setting out of range.
  Result<> add(const std::string& site, const Portfolio& portfolio);
  /// Errors: as fit_portfolio().
  Result<SiteFits> fit(const RunOptions& options) &&;

 private:
  InstalledDates installed_;
  std::size_t parts_ = 0;
  std::vector<GatheredCoating> coating_;
  std::vector<ScrewData> screws_;
  std::vector<GradeData> grades_;
  std::map<std::string, LeftOutOfSite> left_out_;
};

}  // namespace kneerail::forecast
