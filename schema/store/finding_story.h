#pragma once

// What became of findings, record by record: who was told and when, who has read of it, the day it
// was to be mended by before, when people were last seen to be held back. And who is to be told.

#include <optional>
#include <string>
#include <vector>

#include "schema/store/finding_store.h"

namespace kneerail {

/// Fills told, read, mend_by_before, and when what holds people back was done or seen to stand: to
/// tell somebody is neither. Errors: io, corrupt.
Result<> add_stories(Database& tables, std::vector<KeptFinding>& findings);

struct PersonToTell {
  Uuid id;
  std::string initials;
  std::optional<Digest> particulars;
};
/// As the site's register has them; where it names none, its duty holder. Errors: io, corrupt.
Result<std::vector<PersonToTell>> people_to_tell(Database& tables, const Uuid& site);

/// Whether that person is a lead or duty holder of that site on a day. Errors: io, corrupt.
Result<bool> answers_for(Database& tables, const Uuid& person, const Uuid& site, Date day);

}  // namespace kneerail
