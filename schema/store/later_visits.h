#pragma once

// The visits that a forecast from a day in the past leaves out, because they came after it.

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "schema/database.h"

namespace kneerail {

/// All visits of one site on one day.
struct LaterVisit {
  std::string site;  ///< as in forecast::Part::site
  Date day;
  std::int64_t readings = 0;  ///< that count: neither void nor held
};

/// Ascending by day, then site; where nothing is later, three questions say so. Errors: io,
/// corrupt.
Result<std::vector<LaterVisit>> visits_after(Database& tables, Date as_of);

}  // namespace kneerail
