#pragma once

// The walls of a tube as they were read last, one for each clock position.

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/wall_reading.h"
#include "schema/database.h"

namespace kneerail {

/// The last record at one clock position, as it was read.
struct LastWall {
  int clock_position = clock_not_stated;
  std::vector<std::int64_t> replicates_hundredth_mm;
  std::optional<int> sound_m_per_s;
  std::optional<std::int64_t> height_above_base_mm;
  std::optional<bool> inside_the_hollow;
};

struct WallQuestion {
  Uuid part;
  Uuid life;
  std::optional<Uuid> visit;  ///< only of that one; none: of any other than `not_of_visit`
  Uuid not_of_visit;
};
/// By clock position; void and held ones say nothing. Errors: io, corrupt.
Result<std::vector<LastWall>> last_walls(Database& tables, const WallQuestion& question);

}  // namespace kneerail
