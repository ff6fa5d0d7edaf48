#pragma once

// What entries change on a run's sheet. A walk makes an entry every few seconds: of a long run only
// the posts, bays and parts it is about are read again.

#include <vector>

#include "schema/store/register.h"
#include "schema/store/run_store.h"

namespace kneerail {

/// Places in a sheet that have to be read again.
struct RunTouched {
  bool all = false;  ///< everything: an entry whose reach is not known
  std::vector<int> parts;
  std::vector<int> bays;
  std::vector<int> posts;

  [[nodiscard]] bool none() const { return !all && parts.empty() && bays.empty() && posts.empty(); }
};

/// What these entries, which are in the tables, touch on a sheet: grades their part, hand loads
/// their bay, what was not reached its post, a void what the void record was about. Readings that
/// no sheet shows touch nothing. Errors: io, corrupt.
Result<RunTouched> touched_by(Database& tables, const RunSheet& sheet,
                              const std::vector<Entry>& entered);

/// The sheet as read_run() would give it now, of which only what is touched was read; the visit
/// stays the same. Errors: those of read_run().
Result<RunSheet> read_again(Database& tables, const RunSheet& before, const RunTouched& touched);

}  // namespace kneerail
