#include "core/forecast/start_dates.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/forecast/constants.h"

namespace kneerail::forecast {

namespace {

/// The points among those sorted dates that are long enough before; none: none are.
std::vector<Date> points_before(const std::vector<Date>& dates, Date first_seen) {
  const Date last{first_seen.days - constant::start_days_before};
  const auto end = std::lower_bound(dates.begin(), dates.end(), last);
  const auto count = static_cast<double>(end - dates.begin());
  std::vector<Date> points;
  if (count == 0) return points;
  for (const double level : constant::start_levels)
    points.push_back(dates[static_cast<std::size_t>(level * count)]);
  return points;
}

}  // namespace

namespace {

std::map<std::string, std::vector<Date>> dates_by_site(const Portfolio& portfolio) {
  std::map<std::string, std::vector<Date>> dates;
  for (const Part& part : portfolio.parts)
    if (const auto installed = put_up(part, portfolio.as_of))
      dates[part.site].push_back(*installed);
  return dates;
}

}  // namespace

InstalledDates::InstalledDates(const Portfolio& portfolio)
    : InstalledDates(dates_by_site(portfolio)) {}

InstalledDates::InstalledDates(std::map<std::string, std::vector<Date>> by_site)
    : by_site_(std::move(by_site)) {
  for (auto& [site, dates] : by_site_) {
    std::sort(dates.begin(), dates.end());
    all_.insert(all_.end(), dates.begin(), dates.end());
  }
  std::sort(all_.begin(), all_.end());
}

std::vector<Date> InstalledDates::likely_starts(const std::string& site, Date first_seen) const {
  const auto own = by_site_.find(site);
  if (own != by_site_.end())
    if (auto points = points_before(own->second, first_seen); !points.empty()) return points;
  if (auto points = points_before(all_, first_seen); !points.empty()) return points;
  std::vector<Date> points;
  for (const double years : constant::start_years_before)
    points.push_back(Date{first_seen.days - static_cast<std::int32_t>(years * days_per_year)});
  return points;
}

}  // namespace kneerail::forecast
