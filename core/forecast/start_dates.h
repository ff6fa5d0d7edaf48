#pragma once

// When a part may have been put up whose date nobody knows: the dates its neighbours were.

#include <concepts>
#include <map>
#include <string>
#include <type_traits>
#include <vector>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// Known installation dates of the portfolio, by site.
class InstalledDates {
 public:
  InstalledDates() = default;  ///< none known
  explicit InstalledDates(const Portfolio& portfolio);
  /// Of dates by site, none after the as-of day (put_up).
  explicit InstalledDates(std::map<std::string, std::vector<Date>> by_site);

  /// Equally likely start dates of a part of that site first looked at on a day, ascending: the 10,
  /// 30, 50, 70 and 90 % points of the site's known dates more than 30 days before, else of the
  /// whole portfolio's, else 20, 10, 5 and 2 years before.
  [[nodiscard]] std::vector<Date> likely_starts(const std::string& site, Date first_seen) const;

 private:
  template <class Archive, class T>
  requires std::same_as<std::remove_const_t<T>, InstalledDates>
  friend void fields(Archive& archive, T& dates) { archive(dates.by_site_, dates.all_); }

  std::map<std::string, std::vector<Date>> by_site_;
  std::vector<Date> all_;
};

}  // namespace kneerail::forecast
