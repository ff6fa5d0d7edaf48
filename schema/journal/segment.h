#pragma once

// Clock segments: stretches in which the wall clock ran evenly. A new one begins at boot, and when
// the wall clock and the time since boot disagree by more than two seconds. Every record names the
// segment it was written in, and the first record of a segment in a feed is preceded by a clock
// record (kind 80), so that a wrong clock can be put right later.

#include <cstdint>

#include "core/base/result.h"
#include "core/base/world.h"
#include "core/records/record.h"
#include "schema/database.h"

namespace kneerail {

struct ClockSegment {
  enum class Why { start = 1, jump = 2 };

  std::int64_t g = 0;
  std::int64_t boot = 0;     ///< counted here, from 1
  std::int64_t base_ms = 0;  ///< wall clock minus time since boot
  std::int64_t last_monotonic_ms = 0;
  Why why = Why::start;
  bool stored = false;

  /// Looks at the clocks; true when a new segment has begun, which is to be stored then.
  bool look(Clock& clock);
  /// The clock record that tells of it. The body only: envelope and place are the saving's.
  [[nodiscard]] cbor::Map told(Clock& clock) const;

  static Result<ClockSegment> read(Database& database, Clock& clock);
  Result<> write(Database& database);
};

}  // namespace kneerail
