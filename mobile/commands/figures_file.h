#pragma once

// A CSV file of figures that a register has no record of:
//
//   figure,of,value,unit
//   hours,Tube 48.3 x 4.0 galvanized,1.5,h
//   on_order,Three-way tee 48.3,4,pieces
//   discount_rate,,3,%
//
// What the register has a record of is the register's: the file fills gaps; a row that is not used
// is named.

#include <ostream>
#include <string>

#include "core/base/result.h"
#include "core/forecast/decisions/owner_figures.h"
#include "mobile/commands/forecast_input.h"

namespace kneerail::commands {

/// `of` names a component type by its name or reference, or a site; empty: every site. A figure of
/// a type is in money of the currency, days, h or pieces; of a site in money, h, years or %. Rows
/// that are not used are named on `notes`. Errors: io; invalid_input with the line and what is
/// wrong: nothing of the file is then used.
Result<> add_figures_of(const std::string& file, const ForecastInput& input,
                        forecast::OwnerFigures& figures, std::ostream& notes);

}  // namespace kneerail::commands
