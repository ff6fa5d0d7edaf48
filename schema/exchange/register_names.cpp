#include "schema/exchange/register_names.h"

#include <utility>

#include "core/records/entities.h"

namespace kneerail::exchange {

Result<RegisterNames> RegisterNames::load(Database& tables) {
  auto rows = tables.prepare(
      "SELECT id, type, feed, import_reference FROM entity WHERE voided_by IS NULL ORDER BY id");
  if (!rows) return fail(rows.error());
  RegisterNames names;
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return names;
    const Uuid id = rows->uuid(0);
    const int type = static_cast<int>(rows->number(1));
    const bool is_site = type == static_cast<int>(EntityType::site);
    names.add(id, {type, is_site ? id : rows->uuid(2),
                   rows->is_null(3) ? std::string() : std::string(rows->text(3))});
  }
}

void RegisterNames::add(const Uuid& id, Named named) {
  if (!named.reference.empty()) by_reference_.try_emplace({named.type, named.reference}, id);
  things_[id] = std::move(named);
}

const RegisterNames::Named* RegisterNames::find(const Uuid& id) const {
  const auto found = things_.find(id);
  return found == things_.end() ? nullptr : &found->second;
}

std::optional<Uuid> RegisterNames::thing(int type, std::string_view reference) const {
  if (const auto own = uuid_from_text(reference)) return own;
  if (type != 0) {
    const auto found = by_reference_.find(std::pair(type, std::string(reference)));
    return found == by_reference_.end() ? std::nullopt : std::optional(found->second);
  }
  std::optional<Uuid> only;
  for (const auto& [key, id] : by_reference_) {
    if (key.second != reference) continue;
    if (only) return std::nullopt;
    only = id;
  }
  return only;
}

std::string RegisterNames::reference(const Uuid& id) const {
  const Named* named = find(id);
  if (named == nullptr || named->reference.empty()) return to_text(id);
  return thing(named->type, named->reference) == id ? named->reference : to_text(id);
}

}  // namespace kneerail::exchange
