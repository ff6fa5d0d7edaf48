#include "mobile/models/place_kept.h"

namespace kneerail {

namespace {

constexpr const char* pad_name = "walk_pad";

// An identifier is two settings: its first and its last eight bytes.
std::string name_of(const char* what, std::size_t half) {
  return std::string("walk_") + what + (half == 0 ? "_first" : "_last");
}

std::int64_t half_of(const Uuid& id, std::size_t half) {
  std::uint64_t bits = 0;
  for (std::size_t i = 0; i < 8; ++i) bits = bits << 8 | id.bytes[half * 8 + i];
  return static_cast<std::int64_t>(bits);
}

void set_half(Uuid& id, std::size_t half, std::int64_t value) {
  auto bits = static_cast<std::uint64_t>(value);
  for (std::size_t i = 8; i-- > 0; bits >>= 8)
    id.bytes[half * 8 + i] = static_cast<std::uint8_t>(bits & 0xff);
}

template <class Place, class Action>
void each_id(Place& place, Action action) {
  action("run", place.run);
  action("at", place.at);
  action("person", place.person);
  action("gauge", place.gauge);
  action("wrench", place.wrench);
}

}  // namespace

PlaceKept place_kept(Database& tables) {
  PlaceKept place;
  const auto read = [&](const std::string& name) {
    const auto value = setting(tables, name);
    return value ? value->value_or(0) : 0;
  };
  each_id(place, [&](const char* what, Uuid& id) {
    for (std::size_t half = 0; half < 2; ++half) set_half(id, half, read(name_of(what, half)));
  });
  place.pad = static_cast<int>(read(pad_name));
  return place;
}

Settings settings_of(const PlaceKept& place) {
  Settings settings{{pad_name, place.pad}};
  each_id(place, [&](const char* what, const Uuid& id) {
    for (std::size_t half = 0; half < 2; ++half)
      settings.emplace_back(name_of(what, half), half_of(id, half));
  });
  return settings;
}

}  // namespace kneerail
