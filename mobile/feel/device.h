#pragma once

// What a machine has beside its screen: a loudspeaker, something that shakes, a light that goes
// out by itself. The one below has nothing of it: for desktops, tests, and where a part is missing.

#include <cstdint>
#include <memory>
#include <vector>

namespace kneerail::feel {

class Device {
 public:
  virtual ~Device() = default;
  /// One channel, 16 bits, samples_per_second of tones.h. Does not wait for its end.
  virtual void play(const std::vector<std::int16_t>& /*sound*/) {}
  /// Milliseconds on, off, on ...
  virtual void shake(const std::vector<int>& /*pulses_ms*/) {}
  /// The screen stays lit while this is so.
  virtual void keep_awake(bool /*awake*/) {}
};

/// This machine's: its loudspeaker where the library kneerail_sound lies beside the program and can
/// be loaded. That happens on a thread of its own; until then, and where it cannot be, nothing is
/// heard. Nothing shakes and nothing keeps awake: no device that can was there to try it on.
std::unique_ptr<Device> device_of_machine();

/// Whether that library is there to be loaded, and a screen whose person can hear it.
bool sound_is_there();

}  // namespace kneerail::feel
