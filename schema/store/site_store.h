#pragma once

// The sites of a register as a list of bands shows them: what stands there, how it was graded last,
// what is closed or down, when somebody was there and when somebody is to come again. Counted in
// SQL, so that a register of many parts is never read whole.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/result.h"
#include "core/base/time_zone.h"
#include "core/records/codes.h"
#include "core/records/entities.h"
#include "schema/database.h"
#include "schema/store/run_store.h"

namespace kneerail {

struct SiteZone {
  Uuid id;
  std::string name;
  int category = 0;  ///< of ISO 9223 as the records have it, 1 is C1; 0: not said
  Exposure exposure = Exposure::unknown;
};

/// What a run's parts were graded last: how many at each grade. grades[0] counts the parts that
/// nobody has graded.
using GradeCounts = std::array<std::int64_t, 6>;

struct SiteRun {
  Uuid id;
  std::string name;
  std::string reference;       ///< what the forecast's input calls it
  std::int64_t length_mm = 0;  ///< from its first post to its last
  int posts = 0;
  std::int64_t parts = 0;  ///< of which so many are
  std::int64_t fittings = 0;
  GradeCounts grades{};
  std::optional<Consequence> consequence;
  std::optional<std::int64_t> longest_interval_days;  ///< limit 7 for its use and its air
};

/// Parts that are down for a season and not back yet.
struct SiteStrike {
  Uuid run;
  std::string run_name;
  Date since;
  std::optional<Date> re_erect_by;
  std::int64_t posts_to_put_back = 0;
  std::int64_t screws_to_sign = 0;
  bool gap_open = false;  ///< a bay of it is down with nothing that closes it
};

struct SiteBand {
  Uuid id;
  std::string name;
  std::string reference;            ///< what the forecast's input calls it
  std::vector<SiteZone> zones;      ///< by name
  std::vector<SiteRun> runs;        ///< by their order, then by code and name
  std::vector<SiteStrike> strikes;  ///< that have not been opened to people
  std::int64_t posts = 0;
  std::int64_t parts = 0;
  std::int64_t fittings = 0;
  std::int64_t hazards_open = 0;    ///< cannot wait, and not made safe
  std::int64_t bays_closed = 0;     ///< by a closure or by a finding that was closed off
  std::optional<Date> last_visit;   ///< when its last record was made
  std::optional<Date> next_agreed;  ///< the agreement that counts
  std::array<std::optional<double>, 4> chance;  ///< limit 14 by Consequence; [0] is not used
};

/// All sites in the order they came into the register; empty where there is none. Retired, held and
/// void things are left out. Days are those of the zone. Errors: io, corrupt.
Result<std::vector<SiteBand>> read_sites(Database& tables, const TimeZone& zone);

/// One run with only what a small elevation shows: posts, bays, findings, the heights of its rails,
/// and the parts last graded 3 or more. A post's own parts cannot be found in it. Errors: not_found
/// (no such run), io, corrupt.
Result<RunSheet> read_band(Database& tables, const Uuid& run);

}  // namespace kneerail
