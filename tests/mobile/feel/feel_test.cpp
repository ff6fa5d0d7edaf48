// What is heard and felt of an event: the tones themselves, and who wants to hear them.

#include <QCoreApplication>
#include <QLibrary>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <span>

#include "mobile/feel/feel.h"
#include "mobile/feel/tones.h"

using namespace kneerail::feel;

namespace {

struct Heard {
  std::vector<std::vector<std::int16_t>> tones;
  std::vector<std::vector<int>> pulses;
};

class Listening : public Device {
 public:
  explicit Listening(Heard& heard) : heard_(heard) {}
  void play(const std::vector<std::int16_t>& sound) override { heard_.tones.push_back(sound); }
  void shake(const std::vector<int>& pulses_ms) override { heard_.pulses.push_back(pulses_ms); }

 private:
  Heard& heard_;
};

/// By how often it goes through nothing.
double hertz(std::span<const std::int16_t> sound) {
  int crossings = 0;
  for (std::size_t i = 1; i < sound.size(); ++i)
    crossings += (sound[i - 1] < 0) != (sound[i] < 0) ? 1 : 0;
  return crossings / 2.0 * samples_per_second / static_cast<double>(sound.size());
}

constexpr Event events[] = {Event::kept, Event::part_done, Event::post_done, Event::cannot_wait,
                            Event::far,  Event::not_kept,  Event::undone};

}  // namespace

TEST_CASE("a kept reading is a short tick of 1.2 kHz", "[feel]") {
  const auto tick = tone(Event::kept);
  CHECK(tick.size() == samples_per_second * 30 / 1000);
  CHECK(hertz(tick) == Approx(1200).epsilon(0.05));
}

TEST_CASE("a part that is done rises, a reading out of reason falls", "[feel]") {
  const auto first_and_last = [](const std::vector<std::int16_t>& sound) {
    constexpr std::size_t piece = samples_per_second * 25 / 1000;
    return std::pair(hertz(std::span(sound).first(piece)), hertz(std::span(sound).last(piece)));
  };
  const auto [low, high] = first_and_last(tone(Event::part_done));
  CHECK(low * 1.2 < high);
  const auto [before, after] = first_and_last(tone(Event::far));
  CHECK(after * 1.2 < before);
  CHECK(hertz(tone(Event::post_done)) < 250);
}

TEST_CASE("no tone clicks, none is too loud, and none is long", "[feel]") {
  for (const Event event : events) {
    const auto sound = tone(event);
    if (sound.empty()) continue;
    CHECK(std::abs(int{sound.front()}) < 200);
    CHECK(std::abs(int{sound.back()}) < 200);
    CHECK(*std::max_element(sound.begin(), sound.end()) < 0.9 * 32'767);
    CHECK(*std::max_element(sound.begin(), sound.end()) > 0.2 * 32'767);
    CHECK(sound.size() < samples_per_second / 3);
  }
  CHECK(tone(Event::undone).empty());
}

TEST_CASE("every event shakes, and sounds only where sounds are wanted", "[feel]") {
  Heard heard;
  Tokens tokens;
  Feel feel(std::make_unique<Listening>(heard), tokens);
  for (const char* what :
       {"kept", "far", "partDone", "postDone", "cannotWait", "notKept", "undone", "other"})
    feel.felt(QLatin1String(what));
  CHECK(heard.tones.size() == 6);
  CHECK(heard.pulses.size() == 7);
  CHECK(heard.pulses[2] == std::vector<int>{15, 60, 15});
  tokens.set_sounds(false);
  feel.felt(QStringLiteral("kept"));
  CHECK(heard.tones.size() == 6);
  CHECK(heard.pulses.size() == 8);
}

TEST_CASE("a machine without a loudspeaker plays nothing and waits for nothing", "[feel]") {
  const auto device = device_of_machine();
  device->play(tone(Event::kept));
  device->shake({15});
  device->keep_awake(true);
}

TEST_CASE("the library of sounds opens, plays and closes, heard or not", "[feel]") {
  QLibrary library(QCoreApplication::applicationDirPath() + "/libkneerail_sound.so");
  if (!library.load()) return;  // built without QtMultimedia
  const auto open = reinterpret_cast<bool (*)()>(library.resolve("kneerail_sound_open"));
  const auto play =
      reinterpret_cast<void (*)(const std::int16_t*, int)>(library.resolve("kneerail_sound_play"));
  const auto close = reinterpret_cast<void (*)()>(library.resolve("kneerail_sound_close"));
  REQUIRE(open != nullptr);
  REQUIRE(play != nullptr);
  REQUIRE(close != nullptr);
  const auto tick = tone(Event::kept);
  open();
  play(tick.data(), static_cast<int>(tick.size()));
  play(tick.data(), static_cast<int>(tick.size()));
  close();
  play(tick.data(), static_cast<int>(tick.size()));  // after its end: nothing
}
