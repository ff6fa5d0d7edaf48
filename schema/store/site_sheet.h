#pragma once

// The sheet of a site: its name, zones, depot, rule set and people to tell, as a person says them,
// what its runs are, and the entries that put what was said into the register: of a new site all at
// once, of one that is there what has changed.

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/records/body.h"
#include "schema/store/register.h"
#include "schema/store/site_store.h"

namespace kneerail {

/// Somebody who comes into the register with the site.
struct NewPerson {
  Uuid id;
  std::string initials;
  std::optional<Digest> particulars;  ///< of the object with name and number
  bool operator==(const NewPerson&) const = default;
};

struct SaidSite {
  Uuid id;
  std::string owner;  ///< said where the register has no organisation yet
  std::string name;
  std::vector<SiteZone> zones;
  std::optional<Uuid> depot;
  std::optional<Uuid> rule_set;
  std::vector<Uuid> people;  ///< to tell, in order
  // Not in the register yet; what the site does not name stays out.
  std::vector<std::pair<Uuid, std::string>> new_depots;
  std::vector<NewPerson> new_people;
};

struct SheetPerson {
  Uuid id;
  std::string initials;
  std::optional<Digest> particulars;
};

/// A zone's rate as the register has it, thousandths of a µm of zinc in the first year.
struct SheetRate {
  Uuid zone;
  std::int64_t first_year_zinc_nm = 0;
  std::optional<LossFrom> from;
};

/// What a walker should know of a run before going there.
struct SheetRun {
  Uuid id;
  std::string name;
  std::string zone;
  std::optional<std::int64_t> height_mm;
  std::optional<std::int64_t> drop_mm;
  std::optional<WhoIsBehind> behind;
  std::optional<WhatIsBelow> below;
  bool seasonal = false;
  std::string access_note;
};

struct SiteFacts {
  Uuid organisation;              ///< zero: the register has none yet
  std::optional<SaidSite> there;  ///< none: the site is new
  std::vector<SheetRate> rates;
  std::vector<SheetRun> runs;
  std::vector<SheetPerson> people;  ///< in service, by initials
  std::vector<std::pair<Uuid, std::string>> depots;
  std::vector<std::pair<Uuid, std::string>> rule_sets;
  std::vector<std::string> names;  ///< of the other sites
};

/// `site`: zero for a new one. Errors: not_found (no such site), io, corrupt.
Result<SiteFacts> read_site_facts(Database& tables, const Uuid& site);

struct SiteWriter {
  Uuid who;               ///< zero: nobody said
  std::string time_zone;  ///< IANA name of a new organisation's
  std::function<Uuid()> mint;
};
/// For one Register::save; none where nothing was changed. Errors: invalid_input, with what to
/// change, io.
Result<std::vector<Entry>> entries_of(const SaidSite& site, const SiteFacts& facts,
                                      Database& tables, const SiteWriter& writer);

}  // namespace kneerail
