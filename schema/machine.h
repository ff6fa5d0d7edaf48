#pragma once

// The clock of the machine, for programs; tests and the simulator hand in their own. Random bytes
// of the machine: SecureRandom in schema/digest.h.

#include "core/base/world.h"

namespace kneerail {

/// The wall clock, and the time since boot with sleep counted (a tablet in a pocket sleeps).
class MachineClock final : public Clock {
 public:
  Instant now() override;
  std::int64_t monotonic_ms() override;
};

}  // namespace kneerail
