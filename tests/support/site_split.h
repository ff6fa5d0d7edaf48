#pragma once

// A portfolio and its fit taken apart site by site, all in memory: what the forecast that reads a
// register as a stream is judged by.

#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/forecast/whole/portfolio_fit.h"

namespace kneerail::forecast {

/// `portfolio` outlives it.
class SiteSplit {
 public:
  explicit SiteSplit(const Portfolio& portfolio);

  /// Names of the sites, ascending, and how many parts each has.
  [[nodiscard]] std::vector<std::pair<std::string, std::int64_t>> sites() const;
  /// That site alone: its parts, their readings, visits and works in the order they had, its
  /// limits, and what was left out of it.
  [[nodiscard]] Portfolio portfolio_of(const std::string& site) const;
  /// The fit of that site alone, for rows_of() with portfolio_of(); without what only the whole
  /// needs: track record and dates of installation.
  [[nodiscard]] PortfolioFit fit_of(const PortfolioFit& fit, const std::string& site) const;

 private:
  [[nodiscard]] std::vector<LeftOut> left_out_of(const std::vector<LeftOut>& by_part,
                                                 const std::string& site) const;
  struct Lists {  ///< places in the portfolio, ascending
    std::vector<std::int32_t> parts;
    std::vector<std::int32_t> readings;
    std::vector<std::int32_t> works;
    std::vector<std::int32_t> left_out;
  };
  const Portfolio& portfolio_;
  std::map<std::string, Lists> sites_;
  std::vector<std::int32_t> place_in_site_;
};

}  // namespace kneerail::forecast
