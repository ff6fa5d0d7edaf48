#include "schema/store/organisation_days.h"

#include <utility>

#include "core/records/entities.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {

Result<OrganisationDays> organisation_days(Database& tables, const std::filesystem::path& zones) {
  auto organisations = things_of_type(tables, static_cast<int>(EntityType::organisation));
  if (!organisations) return fail(organisations.error());
  OrganisationDays days;
  for (const Thing& organisation : *organisations) {
    const std::string named = text_in(organisation.rest, organisation_field::time_zone);
    if (named.empty()) continue;
    auto zone = read_time_zone(named, zones);
    if (zone) {
      days.zone = std::move(*zone);
      days.name = named;
      return days;
    }
    days.trouble = "Days are those of UTC: " + zone.error().message +
                   ". Install the package tzdata, or set the time zone of the organisation again. "
                   "Nothing that was saved depends on it.";
    return days;
  }
  return days;
}

}  // namespace kneerail
