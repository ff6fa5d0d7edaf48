#include "schema/store/register_things.h"

#include <set>
#include <span>
#include <unordered_set>
#include <utility>

namespace kneerail {
namespace {

constexpr std::string_view columns =
    "SELECT id, type, feed, parent, import_reference, name, chainage_mm, role, component_type, "
    "date_in_service, coating_nominal_tenth_um, rest, part_of, code FROM ";
constexpr std::string_view that_count =
    "type = ?2 AND held = 0 AND voided_by IS NULL "
    "AND NOT EXISTS (SELECT 1 FROM retirement r WHERE r.entity = entity.id) ORDER BY id";

std::optional<std::int64_t> number_or_none(const Statement& row, int column) {
  return row.is_null(column) ? std::nullopt : std::optional(row.number(column));
}

Result<Thing> thing_of(const Statement& row) {
  Thing thing;
  thing.id = row.uuid(0);
  thing.type = static_cast<int>(row.number(1));
  thing.feed = row.uuid(2);
  if (!row.is_null(3)) thing.parent = row.uuid(3);
  if (!row.is_null(4)) thing.reference = row.text(4);
  if (!row.is_null(5)) thing.name = row.text(5);
  thing.chainage_mm = number_or_none(row, 6);
  thing.role = number_or_none(row, 7);
  if (!row.is_null(8)) thing.component_type = row.uuid(8);
  thing.date_in_service = number_or_none(row, 9);
  thing.coating_nominal_tenth_um = number_or_none(row, 10);
  if (!row.is_null(11)) {
    auto rest = cbor::decode(row.bytes(11));
    if (!rest) return fail(rest.error(), "The row of " + to_text(thing.id) + ": ");
    if (const auto* map = rest->map()) thing.rest = *map;
  }
  if (!row.is_null(12)) thing.part_of = row.uuid(12);
  if (!row.is_null(13)) thing.code = row.text(13);
  return thing;
}

Result<std::vector<Thing>> things_of(Statement& rows) {
  std::vector<Thing> things;
  while (true) {
    auto more = rows.step();
    if (!more) return fail(more.error());
    if (!*more) return things;
    auto thing = thing_of(rows);
    if (!thing) return fail(thing.error());
    things.push_back(std::move(*thing));
  }
}

Result<std::vector<Thing>> given_things(Database& tables, int type, const std::vector<Uuid>& ids,
                                        std::string_view from) {
  if (ids.empty()) return std::vector<Thing>();
  auto rows = tables.prepare(std::string(with_given) + std::string(columns) + std::string(from) +
                             std::string(that_count));
  if (!rows) return fail(rows.error());
  const auto bytes = bytes_of_ids(ids);
  rows->bind_in_place(1, std::span(bytes)).bind(2, std::int64_t{type});
  return things_of(*rows);
}

}  // namespace

std::optional<std::int64_t> Thing::number(int field) const {
  const auto* value = rest.find(field);
  if (value == nullptr || value->number() == nullptr) return std::nullopt;
  return *value->number();
}

std::optional<Uuid> Thing::id_field(int field) const {
  const auto* value = rest.find(field);
  return value == nullptr ? std::nullopt : value->uuid();
}

std::string Thing::text() const {
  return reference.empty() ? to_text(id) : reference;
}

Result<std::vector<Thing>> things_of_type(Database& tables, int type) {
  auto rows = tables.prepare(std::string(columns) + "entity WHERE " + std::string(that_count));
  if (!rows) return fail(rows.error());
  rows->bind(2, std::int64_t{type});
  return things_of(*rows);
}

std::vector<std::uint8_t> bytes_of_ids(const std::vector<Uuid>& ids) {
  std::vector<std::uint8_t> bytes;
  for (const Uuid& id : ids) bytes.insert(bytes.end(), id.bytes.begin(), id.bytes.end());
  return bytes;
}

Result<std::vector<Thing>> things_among(Database& tables, int type, const std::vector<Uuid>& ids) {
  return given_things(tables, type, ids,
                      "given CROSS JOIN entity ON entity.id = given.asked WHERE ");
}

Result<std::vector<Thing>> things_under(Database& tables, int type,
                                        const std::vector<Uuid>& parents) {
  return given_things(tables, type, parents,
                      "given CROSS JOIN entity ON entity.parent = given.asked WHERE ");
}

Result<std::vector<Uuid>> without_own_reference(Database& tables) {
  auto rows = tables.prepare(
      "SELECT id, type, import_reference FROM entity WHERE import_reference IN (SELECT "
      "import_reference FROM entity WHERE import_reference IS NOT NULL GROUP BY import_reference "
      "HAVING count(*) > 1) AND held = 0 AND voided_by IS NULL AND NOT EXISTS (SELECT 1 FROM "
      "retirement r WHERE r.entity = entity.id) ORDER BY id");
  if (!rows) return fail(rows.error());
  std::set<std::pair<std::int64_t, std::string>> taken;
  std::vector<Uuid> without;
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return without;
    if (!taken.emplace(rows->number(1), rows->text(2)).second) without.push_back(rows->uuid(0));
  }
}

Things::Things(std::vector<Thing> things) : things_(std::move(things)) {
  std::unordered_set<std::string> references;
  for (std::size_t i = 0; i < things_.size(); ++i) {
    places_[things_[i].id] = i;
    auto& reference = things_[i].reference;
    if (!reference.empty() && !references.insert(reference).second) reference.clear();
  }
}

const Thing* Things::find(const Uuid& id) const {
  const auto found = places_.find(id);
  return found == places_.end() ? nullptr : &things_[found->second];
}

std::string Things::text(const Uuid& id) const {
  if (id.is_zero()) return {};
  const Thing* thing = find(id);
  return thing == nullptr ? to_text(id) : thing->text();
}

Result<Things> load_things(Database& tables, int type) {
  auto things = things_of_type(tables, type);
  if (!things) return fail(things.error());
  return Things(std::move(*things));
}

std::string word_of_code(EntityType type, int field, std::int64_t code) {
  const EntityInfo* entity = entity_info(static_cast<int>(type));
  const FieldInfo* info = entity == nullptr ? nullptr : entity->fields.find(field);
  const auto word = info == nullptr ? std::nullopt : info->words.word(code);
  return word ? std::string(*word) : std::string();
}

}  // namespace kneerail
