#include "mobile/feel/tones.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace kneerail::feel {

namespace {

/// A tone with silence after it. It dies away like something struck.
struct Note {
  double hertz = 1200;
  int ms = 30;
  int rest_ms = 0;
  double loud = 0.5;  ///< of what the device can do
};

constexpr int rise_ms = 2;
constexpr double full = 32'767;

std::size_t samples(int ms) {
  return static_cast<std::size_t>(samples_per_second) * static_cast<std::size_t>(ms) / 1000;
}

void add(std::vector<std::int16_t>& sound, const Note& note) {
  const std::size_t count = samples(note.ms);
  const auto rise = static_cast<double>(samples(rise_ms));
  for (std::size_t i = 0; i < count; ++i) {
    const auto at = static_cast<double>(i);
    const auto left = static_cast<double>(count - 1 - i);
    const double fade = left / static_cast<double>(count);
    const double size = std::min(at / rise, 1.0) * fade * fade;
    const double wave = std::sin(2 * std::numbers::pi * note.hertz * at / samples_per_second);
    sound.push_back(static_cast<std::int16_t>(std::lround(full * note.loud * size * wave)));
  }
  sound.resize(sound.size() + samples(note.rest_ms));
}

std::vector<std::int16_t> played(std::initializer_list<Note> notes) {
  std::vector<std::int16_t> sound;
  for (const Note& note : notes) add(sound, note);
  return sound;
}

}  // namespace

std::vector<std::int16_t> tone(Event event) {
  switch (event) {
    case Event::kept:  // a short tick
      return played({{.hertz = 1200, .ms = 30}});
    case Event::part_done:  // two ticks rising
      return played({{.hertz = 1200, .ms = 30, .rest_ms = 50}, {.hertz = 1600, .ms = 40}});
    case Event::post_done:  // a low knock
      return played({{.hertz = 180, .ms = 90, .loud = 0.8}});
    case Event::cannot_wait:  // three knocks
      return played({{.hertz = 240, .ms = 70, .rest_ms = 60, .loud = 0.8},
                     {.hertz = 240, .ms = 70, .rest_ms = 60, .loud = 0.8},
                     {.hertz = 240, .ms = 70, .loud = 0.8}});
    case Event::far:  // a falling pair
    case Event::not_kept:
      return played({{.hertz = 900, .ms = 80, .rest_ms = 40}, {.hertz = 600, .ms = 120}});
    case Event::undone:
      break;
  }
  return {};
}

std::vector<int> pulses_ms(Event event) {
  constexpr int between_ms = 60;
  switch (event) {
    case Event::kept:
      return {15};
    case Event::part_done:
      return {15, between_ms, 15};
    case Event::post_done:
      return {25};
    case Event::cannot_wait:
      return {60, between_ms, 60, between_ms, 60};
    case Event::far:
    case Event::not_kept:
      return {60};
    case Event::undone:
      return {10};
  }
  return {};
}

}  // namespace kneerail::feel
