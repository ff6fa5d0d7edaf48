#include "schema/store/place_store.h"

#include <optional>
#include <unordered_map>

#include "core/records/cbor.h"
#include "core/records/entities.h"
#include "schema/store/register_things.h"

namespace kneerail {

namespace {

constexpr int type_site = 2;
constexpr int type_run = 4;
constexpr int type_bay = 6;
constexpr int type_component = 7;
constexpr int type_instrument = 9;
constexpr int field_bay_from_post = 1;
constexpr int field_role = 1;
constexpr int field_place = 3;
constexpr int field_what_it_does = 1;
constexpr int field_serial = 2;

struct NamedThing {
  std::int64_t type = 0;
  Uuid feed;
  Uuid parent;
  std::string reference;  ///< import reference, else the identifier in text
  std::string name;
  std::string label;
  std::int64_t chainage_mm = 0;
  std::int64_t role = 0;
  Uuid component_type;
  cbor::Map rest;
};

using NamedThings = std::unordered_map<Uuid, NamedThing>;

cbor::Map map_of(std::span<const std::uint8_t> bytes) {
  const auto value = cbor::decode(bytes);
  if (!value || (*value).map() == nullptr) return {};
  return *(*value).map();
}

Result<NamedThings> read_things(Database& tables) {
  auto select = tables.prepare(
      "SELECT id, type, feed, parent, import_reference, name, label, chainage_mm, role, "
      "component_type, rest FROM entity");
  if (!select) return select.error();
  NamedThings things;
  while (true) {
    const auto more = select->step();
    if (!more) return more.error();
    if (!*more) return things;
    NamedThing thing;
    const Uuid id = select->uuid(0);
    thing.type = select->number(1);
    thing.feed = select->uuid(2);
    thing.parent = select->uuid(3);
    thing.reference = select->is_null(4) ? to_text(id) : std::string(select->text(4));
    thing.name = select->text(5);
    thing.label = select->text(6);
    thing.chainage_mm = select->number(7);
    thing.role = select->number(8);
    thing.component_type = select->uuid(9);
    thing.rest = map_of(select->bytes(10));
    things.emplace(id, std::move(thing));
  }
}

const NamedThing* find(const NamedThings& things, const Uuid& id) {
  const auto found = things.find(id);
  return found == things.end() ? nullptr : &found->second;
}

std::string part_words(const NamedThings& things, const NamedThing& part) {
  std::string words = word_of_code(EntityType::component, field_role, part.role);
  const NamedThing* type = find(things, part.component_type);
  const cbor::Value* what = type == nullptr ? nullptr : type->rest.find(field_what_it_does);
  if (what == nullptr || what->number() == nullptr) return words;
  const std::string does =
      word_of_code(EntityType::component_type, field_what_it_does, *what->number());
  if (!does.empty() && words.find(does) == std::string::npos) words += ", " + does;
  return words;
}

/// The post a part stands at, or the one before its bay.
const NamedThing* post_of(const NamedThings& things, const NamedThing& part) {
  const NamedThing* parent = find(things, part.parent);
  if (parent == nullptr || parent->type != type_bay) return parent;
  const cbor::Value* from = parent->rest.find(field_bay_from_post);
  const auto id = from == nullptr ? std::nullopt : from->uuid();
  const NamedThing* post = id ? find(things, *id) : nullptr;
  return post != nullptr ? post : parent;
}

/// Its name, or what it is called in the file it came from.
std::string name_of(const NamedThing& thing) {
  return thing.name.empty() ? thing.reference : thing.name;
}

/// What people call it where they see its identifier now; empty when it has no name.
std::string shown_name(const NamedThing& thing) {
  if (thing.type != type_instrument) return thing.name;
  const cbor::Value* serial = thing.rest.find(field_serial);
  return serial == nullptr || serial->text() == nullptr ? std::string() : *serial->text();
}

PartPlace place_of(const NamedThings& things, const NamedThing& part) {
  PartPlace place;
  place.part = part_words(things, part);
  if (const NamedThing* site = find(things, part.feed)) place.site = name_of(*site);
  const NamedThing* post = post_of(things, part);
  if (post == nullptr) return place;
  place.post = post->label;
  std::int64_t along_mm = 0;
  if (const cbor::Value* at = part.rest.find(field_place);
      at != nullptr && at->array() != nullptr) {
    const cbor::Array& pair = *at->array();
    if (!pair.empty() && pair[0].number() != nullptr) along_mm = *pair[0].number();
  }
  place.chainage_m = static_cast<double>(post->chainage_mm + along_mm) / 1000;
  const NamedThing* run = find(things, post->parent);
  if (run != nullptr && run->type == type_run) place.run = name_of(*run);
  return place;
}

}  // namespace

Result<Places> read_places(Database& tables) {
  const auto things = read_things(tables);
  if (!things) return fail(things.error(), "Reading where the parts are: ");
  Places places;
  for (const auto& [id, thing] : *things) {
    if (const std::string name = shown_name(thing); !name.empty()) {
      places.names.emplace(to_text(id), name);
    }
    if (thing.type == type_site) places.sites.emplace(thing.reference, name_of(thing));
    if (thing.type == type_component) {
      places.parts.emplace(thing.reference, place_of(*things, thing));
    }
  }
  return places;
}

}  // namespace kneerail
