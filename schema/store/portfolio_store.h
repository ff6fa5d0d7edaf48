#pragma once

// The forecast's input from a register's tables.

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/forecast/portfolio.h"
#include "core/forecast/start_dates.h"
#include "schema/database.h"
#include "schema/store/instrument_store.h"
#include "schema/store/portfolio_tables.h"

namespace kneerail {

/// The whole input as it was known on a day: later readings, visits and works are not in it. What
/// is kept back has its reason in `left_out`: void, held, in_doubt (without a suggested shift),
/// paint_alone, layers_together, not_zinc, no_coating_model. Identifiers are import references,
/// else the record's own; a reading's is its record and the place in its list ("0190...-....3").
/// Rates are 20-year means, converted here from the first-year loss of the zone.
/// Errors: io, corrupt.
Result<forecast::Portfolio> read_portfolio(Database& tables, Date as_of,
                                           const PortfolioQuestion& question = {});

/// The same input site by site, with no more of it in memory than one site, and of each part where
/// it is. All sites are of one moment. Works, readings and visits of a site come out as from the
/// whole; reports do not come.
class PortfolioSites {
 public:
  /// `tables` outlives it; the question's sites are not looked at. Errors: io, corrupt.
  static Result<std::unique_ptr<PortfolioSites>> open(Database& tables, Date as_of,
                                                      const PortfolioQuestion& question = {});
  /// Of all sites (Part::site), ascending; of those without a part too.
  [[nodiscard]] std::vector<std::string> names() const;
  [[nodiscard]] bool has(const std::string& site) const { return ids_.contains(site); }
  /// When parts of all sites were put up.
  [[nodiscard]] const forecast::InstalledDates& installed() const { return installed_; }
  /// What people call them, by Part::site.
  [[nodiscard]] std::map<std::string, std::string> titles() const;
  /// One that names() has. Errors: io, corrupt.
  Result<forecast::Portfolio> read(const std::string& site);
  /// Ids of that site's parts alone, ascending; neither readings nor visits are looked at. Errors:
  /// io, corrupt.
  Result<std::vector<std::string>> part_ids(const std::string& site);

 private:
  PortfolioSites(Snapshot snapshot, Date as_of, PortfolioQuestion question,
                 std::unique_ptr<PortfolioTables> tables, InstrumentHistories instruments)
      : snapshot_(std::move(snapshot)),
        as_of_(as_of),
        question_(std::move(question)),
        tables_(std::move(tables)),
        instruments_(std::move(instruments)) {}
  Result<> find_components(Database& tables);

  Snapshot snapshot_;
  Date as_of_;
  PortfolioQuestion question_;
  std::unique_ptr<PortfolioTables> tables_;
  InstrumentHistories instruments_;
  std::map<Uuid, std::vector<Uuid>> components_;  ///< by site
  std::map<std::string, Uuid> ids_;               ///< of sites, by name
  forecast::InstalledDates installed_;
};

/// Why a reading of that quantity tells the forecast nothing about that part; empty when it does.
std::string_view reason_to_leave_out(const forecast::Part& part, forecast::Quantity quantity);

/// First maintenance is a limit of zinc, a steel rate one of a wall: what a part has no use for is
/// taken off.
void take_off_unused(forecast::Part& part);

/// A part without a rate of its own gets the middle of its category, a first-year rate, as a
/// 20-year mean.
void assume_rate(forecast::Part& part, const forecast::Settings& settings);

/// Whether a 20-year mean is within 1 % of the middle of the category, taken as a mean or as a
/// first-year rate.
bool is_category_rate(double mean_um_per_year, forecast::Category category,
                      const forecast::Settings& settings);

}  // namespace kneerail
