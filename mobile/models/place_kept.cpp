#include "mobile/models/place_kept.h"

#include "mobile/models/id_settings.h"

namespace kneerail {

namespace {

constexpr const char* pad_name = "walk_pad";

std::string name_of(const char* what) {
  return std::string("walk_") + what;
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
  each_id(place, [&](const char* what, Uuid& id) { id = id_of_settings(name_of(what), read); });
  place.pad = static_cast<int>(read(pad_name));
  return place;
}

Settings settings_of(const PlaceKept& place) {
  Settings settings{{pad_name, place.pad}};
  each_id(place, [&](const char* what, const Uuid& id) { add_id(settings, name_of(what), id); });
  return settings;
}

}  // namespace kneerail
