#include "core/records/registers.h"

#include "core/base/text.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view entity_words[] = {
    "organisation", "site",           "zone",       "run",    "post",     "bay",
    "component",    "component type", "instrument", "person", "rule set", "depot"};
constexpr std::string_view made_by_words[] = {"laid out by rule", "imported", "typed"};

constexpr FieldInfo create_fields[] = {
    must(code(1, "type", entity_words)),
    id(2, "parent"),
    must(FieldInfo{.key = 3, .name = "fields", .shape = Shape::map}),
    text(4, "import reference", 80),
    code(5, "made by", made_by_words),
};

constexpr FieldInfo change_parts[] = {
    must(count(1, "field", 1, 999)),
    must(any(2, "value")),
    must(ids(3, "values seen")),
};
constexpr FieldInfo one_change = tuple(0, "change", change_parts);
constexpr FieldInfo set_fields[] = {must(list(1, "changes", 1, 100, one_change))};

// A wall that does not fit in its tube, where one record says both.
std::string wall_rule(const cbor::Map& fields) {
  const cbor::Value* diameter = fields.find(component_type_field::tube_diameter);
  const cbor::Value* wall = fields.find(component_type_field::tube_wall);
  if (diameter == nullptr || wall == nullptr) return {};
  if (wall_fits(*diameter->number(), *wall->number())) return {};
  return "a wall of " + quantity_text(*wall->number(), Unit::tenth_mm) +
         " does not fit in a tube of " + quantity_text(*diameter->number(), Unit::tenth_mm);
}

std::string access_rule(const cbor::Map& fields) {
  const cbor::Value* hours = fields.find(run_field::hours_of_access);
  if (hours == nullptr) return {};
  for (const cbor::Value& one : *hours->array()) {
    const cbor::Array& parts = *one.array();
    if (*parts[1].number() >= *parts[2].number()) return "hours of access begin before they end";
  }
  return {};
}

std::string create_rule(const Record& record) {
  if (record.subject != record.id) return "what is created is its own subject";
  const int type = static_cast<int>(*record.body.find(1)->number());
  const EntityInfo* entity = entity_info(type);
  if (entity->parent.empty() == record.body.has(2))
    return record.body.has(2) ? "an organisation has no parent" : "the parent is missing";
  const cbor::Map& fields = *record.body.find(3)->map();
  for (const auto& [key, value] : fields.pairs()) {
    if (key.number() == nullptr) return "a field without a number";
    const FieldInfo* one = entity->fields.find(*key.number());
    if (one == nullptr) continue;
    if (auto good = check_field(*one, value, entity->name); !good) return good.error().message;
  }
  if (type == static_cast<int>(EntityType::component_type)) return wall_rule(fields);
  if (type == static_cast<int>(EntityType::run)) return access_rule(fields);
  return {};
}

}  // namespace

constexpr KindInfo create_kind{.kind = 1,
                               .name = "create",
                               .subject = "itself",
                               .feed = FeedOf::either,
                               .fields = fields(create_fields),
                               .rule = create_rule};
constexpr KindInfo set_kind{.kind = 2,
                            .name = "set",
                            .subject = "any thing",
                            .feed = FeedOf::either,
                            .fields = fields(set_fields)};

}  // namespace kneerail
