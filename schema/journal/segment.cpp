#include "schema/journal/segment.h"

#include <algorithm>
#include <cstdlib>

#include "core/records/hybrid_clock.h"
#include "schema/journal/journal.h"

namespace kneerail {
namespace {

constexpr std::int64_t segment_max = 65'535;  // the envelope's limit; the last one then stays

enum Key : int { key_segment = 1, key_boot, key_monotonic, key_wall, key_why };

std::int64_t base_of(Clock& clock) {
  return clock.now().ms - clock.monotonic_ms();
}

}  // namespace

bool ClockSegment::look(Clock& clock) {
  const std::int64_t monotonic = clock.monotonic_ms();
  const std::int64_t base = clock.now().ms - monotonic;
  const bool same = std::abs(base - base_ms) <= jump_ms_max && monotonic >= last_monotonic_ms;
  // A slow drift is no jump: the next look compares with this one.
  base_ms = base;
  last_monotonic_ms = monotonic;
  if (same) return false;
  g = std::min(g + 1, segment_max);
  why = Why::jump;
  stored = false;
  return true;
}

cbor::Map ClockSegment::told(Clock& clock) const {
  cbor::Map body;
  body.set(key_segment, g);
  body.set(key_boot, boot);
  body.set(key_monotonic, std::max<std::int64_t>(0, clock.monotonic_ms()));
  body.set(key_wall, clock.now().ms);
  body.set(key_why, static_cast<int>(why));
  return body;
}

Result<ClockSegment> ClockSegment::read(Database& database, Clock& clock) {
  ClockSegment segment;
  bool known = true;
  for (auto [name, number] :
       {std::pair{"segment", &segment.g}, std::pair{"segment_boot", &segment.boot},
        std::pair{"segment_base_ms", &segment.base_ms},
        std::pair{"segment_monotonic_ms", &segment.last_monotonic_ms}}) {
    auto found = read_setting(database, name);
    if (!found) return fail(found.error());
    known = known && *found;
    *number = found->value_or(0);
  }
  const std::int64_t monotonic = clock.monotonic_ms();
  const bool same_boot = known && monotonic >= segment.last_monotonic_ms &&
                         std::abs(base_of(clock) - segment.base_ms) <= jump_ms_max;
  segment.stored = same_boot;
  segment.base_ms = base_of(clock);
  segment.last_monotonic_ms = monotonic;
  if (same_boot) return segment;
  // What happened while the program was not running cannot be told from a boot, and a boot is the
  // more careful answer: nothing is reckoned across it.
  segment.g = std::min(segment.g + 1, segment_max);
  segment.boot += 1;
  return segment;
}

Result<> ClockSegment::write(Database& database) {
  for (const auto& [name, number] : {std::pair{"segment", g}, std::pair{"segment_boot", boot},
                                     std::pair{"segment_base_ms", base_ms},
                                     std::pair{"segment_monotonic_ms", last_monotonic_ms}}) {
    if (auto done = write_setting(database, name, number); !done) return done;
  }
  stored = true;
  return Done{};
}

}  // namespace kneerail
