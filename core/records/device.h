#pragma once

// Kinds 62, 63, 80 and 90: devices come and go, say what their clocks do, and go on after a fork.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/records/office.h"

namespace kneerail {

enum class ClockWhy { start = 1, jump, hub_contact };

/// Written by the hub.
struct DeviceEnrolled {
  static constexpr int kind = 62;
  Uuid device;
  std::array<std::uint8_t, 32> public_key{};
  std::string name;
  bool operator==(const DeviceEnrolled&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.device);
    each(2, self.public_key);
    each(3, self.name);
  }
};

/// Written by the hub.
struct DeviceRevoked {
  static constexpr int kind = 63;
  Uuid device;
  std::string reason;
  std::vector<FeedSequence> last_seq_by_feed;
  bool operator==(const DeviceRevoked&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.device);
    each(2, self.reason);
    each(3, self.last_seq_by_feed);
  }
};

/// What the device's clocks showed at one moment of a segment.
struct ClockNote {
  static constexpr int kind = 80;
  int segment = 0;
  std::int64_t boot = 0;  ///< counts the device's starts
  std::int64_t monotonic_ms = 0;
  std::int64_t wall_ms = 0;
  ClockWhy why = ClockWhy::start;
  std::optional<Instant> hub_time;
  std::optional<std::int64_t> uncertainty_ms;  ///< half the round trip
  std::optional<std::string> program_version;
  bool operator==(const ClockNote&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.segment);
    each(2, self.boot);
    each(3, self.monotonic_ms);
    each(4, self.wall_ms);
    each(5, self.why);
    each(6, self.hub_time);
    each(7, self.uncertainty_ms);
    each(8, self.program_version);
  }
};

/// First record of a chain that follows a forked one.
struct ChainContinued {
  static constexpr int kind = 90;
  Uuid old_device;
  std::int64_t last_common_seq = 0;
  Digest digest_there{};
  bool operator==(const ChainContinued&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.old_device);
    each(2, self.last_common_seq);
    each(3, self.digest_there);
  }
};

extern const KindInfo device_enrolled_kind;
extern const KindInfo device_revoked_kind;
extern const KindInfo clock_kind;
extern const KindInfo chain_continued_kind;

}  // namespace kneerail
