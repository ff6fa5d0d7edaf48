#pragma once

// The forecast's input from a register's tables.

#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/forecast/portfolio.h"
#include "schema/database.h"
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
