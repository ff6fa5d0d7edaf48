#pragma once

// A run of the register as a change of it needs it, and the entries that make a change: what goes
// is retired and keeps its history, what comes is created, all in one save.

#include <functional>
#include <string>
#include <vector>

#include "core/layout/run_change.h"
#include "schema/store/register.h"

namespace kneerail {

struct StandingSheet {
  Uuid run;
  Uuid site;  ///< also its feed
  Uuid organisation;
  Uuid gate_type;  ///< a component type a gate's leaf can be of; zero: there is none
  layout::StandingRun standing;
  std::vector<std::string> labels;  ///< of all posts of the site, retired ones too
};
/// Errors: not_found (no such run), io, corrupt.
Result<StandingSheet> read_standing(Database& tables, const Uuid& run);

/// For one Register::save. Errors: io, corrupt.
Result<std::vector<Entry>> entries_of(const layout::RunChange& change, const StandingSheet& sheet,
                                      Database& tables, const Uuid& who,
                                      const std::function<Uuid()>& mint);

/// The records whose values of a field stand now: what a change of it is made on. Errors: io.
Result<std::vector<Uuid>> seen_values(Database& tables, const Uuid& thing, int field);

}  // namespace kneerail
