#pragma once

// A run that is laid out by rule and not in the register yet: as a draft of this device, and as the
// entries that bring run, posts, bays and parts into the register together.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/layout/laid_run.h"
#include "schema/database.h"
#include "schema/store/register.h"
#include "schema/store/settings.h"
#include "schema/store/site_store.h"

namespace kneerail {

/// What the sentence says. The identifier is the run's own, from its first word.
struct NewRun {
  Uuid run;
  Uuid site;
  Uuid zone;
  std::string name;
  layout::RunRule rule;
  std::optional<std::int64_t> drop_mm;
  std::optional<WhoIsBehind> behind;
  std::optional<WhatIsBelow> below;
  bool operator==(const NewRun&) const = default;
};

/// What of the register it is fitted into.
struct RunSurroundings {
  Uuid organisation;
  std::string site_name;
  std::vector<SiteZone> zones;                           ///< of the site, by name
  std::vector<std::string> runs;                         ///< names that are taken
  std::vector<std::string> labels;                       ///< of the site's posts
  std::int64_t last_order = 0;                           ///< of its runs
  std::vector<std::pair<layout::LaidType, Uuid>> types;  ///< component types there are
};
/// Errors: not_found (no such site), io, corrupt.
Result<RunSurroundings> read_surroundings(Database& tables, const Uuid& site);

/// Everything of the run, for one Register::save: types that the register lacks, the run, its
/// posts, bays and parts. A type that it has is used as it is. Errors: invalid_input (the rule, a
/// name that is missing or taken, no zone, a number that a post of the site bears already), with
/// what to change.
Result<std::vector<Entry>> entries_of(const NewRun& run, const RunSurroundings& around,
                                      const Uuid& who, const std::function<Uuid()>& mint);

/// The draft for a site as this device remembers it; nothing where there is none, it cannot be read
/// or its run came into the register.
std::optional<NewRun> kept_draft(Database& tables, const Uuid& site);
Settings draft_settings(const NewRun& run);
/// So that there is none for that site.
Settings no_draft(const Uuid& site);

}  // namespace kneerail
