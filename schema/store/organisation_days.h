#pragma once

// Calendar days as the organisation reckons them: its record names a time zone.

#include <filesystem>
#include <string>

#include "core/base/result.h"
#include "core/base/time_zone.h"
#include "schema/database.h"
#include "schema/time_zone_file.h"

namespace kneerail {

struct OrganisationDays {
  TimeZone zone;
  std::string name = "UTC";
  std::string trouble;  ///< a sentence where the zone could not be had and UTC is used; else empty
};

/// The zone of the register's organisation, UTC where none is named. A zone that is not known or
/// damaged on this machine is no error: UTC is used, and `trouble` says so. Errors: io, corrupt of
/// the tables.
Result<OrganisationDays> organisation_days(Database& tables,
                                           const std::filesystem::path& zones = system_zones);

}  // namespace kneerail
