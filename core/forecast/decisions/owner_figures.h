#pragma once

// What the owner set, paid and counted, for decisions: prices, lead times, costs, stock, seasons.
// Every figure has its unit in its name; what is absent is not known, is never taken for 0, and is
// named in words where it is missing. Filled from a register's tables (schema/store/owner_store)
// and from a file of the owner's own.

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

namespace kneerail::forecast {

struct TypeFigures {
  std::string name;           ///< the owner's
  std::string kind_and_size;  ///< "three-way tee, 48.3 mm"
  std::optional<double> price;
  std::optional<double> lead_time_days;
  std::optional<double> hours_per_replacement;  ///< of work, all people together
  int works_behind_hours = 0;                   ///< 0: the owner's word
  std::int64_t struck = 0;                      ///< how often one of it was taken down
  std::int64_t replaced_at_re_erecting = 0;     ///< and so often another one came back
};

/// In money of the currency; chances and rates as shares, 0.03 for 3 %.
struct SiteFigures {
  std::optional<double> spare_chance;   ///< limit 12
  std::optional<double> discount_rate;  ///< limit 15, a year
  std::optional<double> cost_of_visit;  ///< limit 16
  std::optional<double> cost_of_hour;
  std::optional<double> cost_of_closed_day;
  std::optional<double> years_between_visits;  ///< the shortest of the longest intervals, limit 7
  std::optional<double> strikes_per_year;      ///< absent: none was ever struck
  std::optional<double> hours_per_strike;      ///< of work, all people together
};

struct OwnerFigures {
  std::string currency;                       ///< empty: not said
  std::map<std::string, TypeFigures> types;   ///< by Part::component_type
  std::map<std::string, SiteFigures> sites;   ///< by Part::site
  std::map<std::string, std::string> depots;  ///< name, by Part::depot
  /// By depot and type: counted on the shelf; ordered and not there yet.
  std::map<std::pair<std::string, std::string>, std::int64_t> on_shelf;
  std::map<std::pair<std::string, std::string>, std::int64_t> on_order;
  std::set<std::string> seasonal_runs;  ///< Part::run of those that are struck for a season
  /// By Part::run, of those that were struck with a list of what came down: the types on it.
  std::map<std::string, std::set<std::string>> struck_types;
};

}  // namespace kneerail::forecast
