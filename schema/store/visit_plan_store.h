#pragma once

// What bears on the day of a site's next visit (core/forecast/decisions/next_visit.h): the last
// visit, the owner's longest interval, events nobody has come for, the day agreed.

#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/base/time_zone.h"
#include "core/forecast/decisions/next_visit.h"
#include "schema/database.h"
#include "schema/store/site_store.h"

namespace kneerail {

/// One for each site of the register, as visits and rules are known on that day; the day agreed and
/// what lies ahead are of today. Only a routine or detailed visit of the whole, or of a run it
/// names, begins its interval anew. An event is answered by a visit
/// made after it began that names it, is one after an event, or is complete; one that lies ahead by
/// a visit that names it. Errors: io, corrupt.
Result<std::vector<forecast::SiteVisits>> read_site_visits(Database& tables, const TimeZone& zone,
                                                           Date as_of);
/// The same of bands that were read already (read_sites()), in their order.
Result<std::vector<forecast::SiteVisits>> read_site_visits(Database& tables, const TimeZone& zone,
                                                           Date as_of,
                                                           const std::vector<SiteBand>& bands);

}  // namespace kneerail
