#pragma once

// What a hand feels and an ear hears of an event on the walk: short tones made here, and how long
// the device shakes. Nothing is told by them alone; each event shows on the screen too.

#include <cstdint>
#include <vector>

namespace kneerail::feel {

enum class Event { kept, part_done, post_done, cannot_wait, far, not_kept, undone };

inline constexpr int samples_per_second = 22'050;

/// One channel, 16 bits, samples_per_second; begins and ends at nothing, so that it does not click.
/// Empty: the event is silent.
std::vector<std::int16_t> tone(Event event);

/// Milliseconds on, off, on ...
std::vector<int> pulses_ms(Event event);

}  // namespace kneerail::feel
