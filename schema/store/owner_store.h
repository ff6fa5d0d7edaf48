#pragma once

// What a register says of its owner's money, stock and seasons, for decisions: prices and lead
// times of component types, limits 12, 15 and 16, the shelves of the depots, what strikes took and
// what work took.

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/base/time_zone.h"
#include "core/forecast/decisions/owner_figures.h"
#include "schema/database.h"

namespace kneerail {

/// As it is known on that day, days being those of the organisation's zone, but prices and what is
/// on the shelf are of today; names are those of the forecast's input. Money is in the
/// organisation's currency. Hours of a replacement are the median of people times minutes of five
/// or more replacements of the type on record; hours of a strike the mean of all that have some.
/// Nothing is assumed: what no record says is absent. Errors: io, corrupt.
Result<forecast::OwnerFigures> read_owner_figures(Database& tables, const TimeZone& zone,
                                                  Date as_of);

}  // namespace kneerail
