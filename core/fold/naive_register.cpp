#include <algorithm>

#include "core/fold/naive.h"

namespace kneerail::fold::naive {

namespace {

struct Edit {
  const Fact* by = nullptr;
  cbor::Value value;
  std::vector<Uuid> seen;
};

/// What one record gives to one field; the last word of a record that gives it twice.
std::optional<Edit> edit_of(const Fact& fact, std::int64_t field) {
  std::optional<Edit> edit;
  if (fact.kind() == kind::create) {
    const cbor::Value* fields = fact.shown.find(3);
    const cbor::Value* value =
        fields != nullptr && fields->map() != nullptr ? fields->map()->find(field) : nullptr;
    if (value != nullptr) edit = Edit{&fact, *value, {}};
    return edit;
  }
  const cbor::Value* list = fact.shown.find(1);
  if (list == nullptr || list->array() == nullptr) return edit;
  for (const cbor::Value& one : *list->array()) {
    if (one.array() == nullptr || one.array()->size() < 2) continue;
    const std::int64_t* named = (*one.array())[0].number();
    if (named == nullptr || *named != field) continue;
    edit = Edit{&fact, (*one.array())[1], {}};
    if (one.array()->size() > 2) edit->seen = ids_of((*one.array())[2]);
  }
  return edit;
}

bool edit_counts(const Edit& edit) {
  return edit.by->kind() == kind::create || edit.by->counts();
}

bool superseded(const Edit& edit, const std::vector<Edit>& all) {
  for (const Edit& other : all) {
    if (other.by != edit.by && edit_counts(other) && contains(other.seen, edit.by->id())) {
      return true;
    }
  }
  return false;
}

void put_edit(const World& world, const Uuid& entity, std::int64_t field, const Edit& edit,
              bool seen) {
  const MergeKey& key = edit.by->key;
  Row row(std::size(field_edit_columns));
  row[at(field_edit_columns, "record")] = edit.by->id();
  row[at(field_edit_columns, "field")] = field;
  row[at(field_edit_columns, "entity")] = entity;
  row[at(field_edit_columns, "value")] = cbor::encode(edit.value);
  row[at(field_edit_columns, "eff")] = key.eff;
  row[at(field_edit_columns, "l")] = key.l;
  row[at(field_edit_columns, "c")] = key.c;
  row[at(field_edit_columns, "dev")] = key.dev;
  row[at(field_edit_columns, "who")] = edit.by->record().who;
  row[at(field_edit_columns, "t")] = edit.by->time.t;
  row[at(field_edit_columns, "superseded")] = std::int64_t{seen ? 1 : 0};
  row[at(field_edit_columns, "counts")] = std::int64_t{edit_counts(edit) ? 1 : 0};
  world.put(table_field_edit, row);
}

/// The edit shown, after writing down every edit and what disagrees.
const Edit* shown_edit(const World& world, const Uuid& entity, std::int64_t field,
                       const std::vector<Edit>& all) {
  std::vector<const Edit*> heads;
  std::vector<const Edit*> counting;
  for (const Edit& edit : all) {
    const bool seen = superseded(edit, all);
    put_edit(world, entity, field, edit, seen);
    if (edit_counts(edit)) counting.push_back(&edit);
    if (edit_counts(edit) && !seen) heads.push_back(&edit);
  }
  if (heads.empty()) heads = counting;
  const Edit* winner = nullptr;
  for (const Edit* head : heads) {
    if (winner == nullptr || head->by->key > winner->by->key) winner = head;
  }
  if (winner == nullptr) return nullptr;
  std::vector<Uuid> ids;
  bool differ = false;
  for (const Edit* head : heads) {
    ids.push_back(head->by->id());
    differ = differ || head->value != winner->value;
  }
  if (!differ) ids.clear();
  const auto named = clash(
      world, {entity, disagreement::field, field, winner->by->placed.feed, ids, winner->by->id()});
  for (const Edit* head : heads) {
    if (head->by->id() == named) winner = head;
  }
  return winner;
}

std::set<std::int64_t> fields_of(const Facts& records) {
  std::set<std::int64_t> fields;
  for (const Fact* fact : records) {
    if (const cbor::Value* made = fact->shown.find(3); fact->kind() == kind::create) {
      if (made == nullptr || made->map() == nullptr) continue;
      for (const auto& [key, value] : made->map()->pairs()) {
        if (key.number() != nullptr) fields.insert(*key.number());
      }
    } else if (const cbor::Value* list = fact->shown.find(1);
               list != nullptr && list->array() != nullptr) {
      for (const cbor::Value& one : *list->array()) {
        const bool whole = one.array() != nullptr && one.array()->size() >= 2;
        if (whole && (*one.array())[0].number() != nullptr) {
          fields.insert(*(*one.array())[0].number());
        }
      }
    }
  }
  return fields;
}

Row bare_entity(const World& world, const Fact& create) {
  Row row(std::size(entity_columns));
  bool newer = false;
  for (const Fact& fact : world.facts) {
    if (fact.record().subject == create.id() && fact.kind() >= kind::must_understand_min) {
      newer = true;
    }
  }
  row[at(entity_columns, "id")] = create.id();
  row[at(entity_columns, "type")] = number_in(create.shown, 1).value_or(0);
  row[at(entity_columns, "feed")] = create.placed.feed;
  row[at(entity_columns, "parent")] = cell(id_in(create.shown, 2));
  row[at(entity_columns, "created_by")] = create.record().who;
  row[at(entity_columns, "created_t")] = create.time.t;
  row[at(entity_columns, "import_reference")] = cell_of(create.shown.find(4), Type::text);
  row[at(entity_columns, "made_by")] = cell(number_in(create.shown, 5));
  row[at(entity_columns, "held")] = std::int64_t{create.held() ? 1 : 0};
  row[at(entity_columns, "voided_by")] = cell(create.change.voided_by);
  row[at(entity_columns, "newer")] = std::int64_t{newer ? 1 : 0};
  return row;
}

void put_entity(World& world, const Uuid& entity) {
  const Fact* create = world.find(entity);
  if (create != nullptr && create->kind() != kind::create) create = nullptr;
  Facts records = world.of(kind::set, entity);
  if (create != nullptr) records.push_back(create);
  Row row = create == nullptr ? Row{} : bare_entity(world, *create);
  const int type =
      create == nullptr ? 0 : static_cast<int>(number_in(create->shown, 1).value_or(0));
  cbor::Map rest;
  for (const std::int64_t field : fields_of(records)) {
    std::vector<Edit> edits;
    for (const Fact* fact : records) {
      if (auto edit = edit_of(*fact, field)) edits.push_back(*std::move(edit));
    }
    const Edit* shown = shown_edit(world, entity, field, edits);
    if (shown == nullptr || create == nullptr) continue;
    world.edit_shown[{entity, static_cast<int>(field)}] = shown->by->id();
    const int column = entity_column(type, field);
    const Cell value =
        column < 0 ? Cell()
                   : cell_of(&shown->value, entity_columns[static_cast<std::size_t>(column)].type);
    if (value == Cell()) {
      rest.set(field, shown->value);
      continue;
    }
    row[static_cast<std::size_t>(column)] = value;
    if (life_state_field(type) == field && value == Cell(std::int64_t{2})) {
      world.retired_by[entity] = shown->by->id();
      row[at(entity_columns, "retired_by")] = shown->by->id();
    }
  }
  if (create == nullptr) return;
  if (!rest.empty()) row[at(entity_columns, "rest")] = cbor::encode(cbor::Value(rest));
  world.put(table_entity, row);
  world.entities[entity] = row;
}

bool same_cells(const Row& a, const Row& b, std::initializer_list<int> columns) {
  for (const int column : columns) {
    if (a[static_cast<std::size_t>(column)] != b[static_cast<std::size_t>(column)]) return false;
  }
  return true;
}

void put_entered_twice(const World& world) {
  for (const auto& [id, entity] : world.entities) {
    if (entity[at(entity_columns, "import_reference")] == Cell()) continue;
    std::vector<Uuid> same;
    for (const auto& [other, row] : world.entities) {
      if (same_cells(entity, row,
                     {at(entity_columns, "import_reference"), at(entity_columns, "parent"),
                      at(entity_columns, "type"), at(entity_columns, "feed")})) {
        same.push_back(other);
      }
    }
    clash(world, {id,
                  disagreement::entered_twice,
                  0,
                  std::get<Uuid>(entity[at(entity_columns, "feed")]),
                  same,
                  {}});
  }
}

}  // namespace

void put_register(World& world) {
  std::set<Uuid> ids;
  for (const Fact& fact : world.facts) {
    if (fact.kind() == kind::create) ids.insert(fact.id());
    if (fact.kind() == kind::set) ids.insert(fact.record().subject);
  }
  for (const Uuid& id : ids) put_entity(world, id);
  put_entered_twice(world);
}

namespace {

/// The nearest thing upwards that is retired itself.
std::optional<Uuid> retired_with(const World& world, const Uuid& entity) {
  for (const Uuid& above : world.upwards(entity)) {
    if (world.retired_by.contains(above)) return above;
  }
  return std::nullopt;
}

void put_seen_after(const World& world, const Uuid& entity, const Fact& retirement) {
  std::vector<Uuid> records{retirement.id()};
  for (const Fact& fact : world.facts) {
    const bool seeing = is_reading(fact.kind()) || fact.kind() == kind::finding ||
                        fact.kind() == kind::work || fact.kind() == kind::strike_step;
    if (!seeing || fact.record().subject != entity || !fact.counts()) continue;
    const bool same_chain = fact.placed.feed == retirement.placed.feed &&
                            fact.placed.device == retirement.placed.device;
    const bool knew = same_chain && retirement.placed.seq < fact.placed.seq;
    if (fact.time.t > retirement.time.t && !knew) records.push_back(fact.id());
  }
  clash(world, {entity, disagreement::seen_after_retired, 0, retirement.placed.feed, records,
                retirement.id()});
}

void put_tags(const World& world) {
  const auto bound = [&world](const Uuid& id, const Row& row) -> std::optional<Uuid> {
    const auto field = tag_field(static_cast<int>(number_of(row[at(entity_columns, "type")])));
    if (!field || row[at(entity_columns, "tag")] == Cell() || retired_with(world, id)) return {};
    return world.edit_shown.at({id, *field});
  };
  for (const auto& [id, row] : world.entities) {
    if (!bound(id, row)) continue;
    std::vector<Uuid> edits;
    for (const auto& [other, other_row] : world.entities) {
      if (!same_cells(row, other_row, {at(entity_columns, "tag"), at(entity_columns, "feed")})) {
        continue;
      }
      if (const auto edit = bound(other, other_row)) edits.push_back(*edit);
    }
    clash(
        world,
        {id, disagreement::one_tag, 0, std::get<Uuid>(row[at(entity_columns, "feed")]), edits, {}});
  }
}

}  // namespace

void put_retirements(World& world) {
  for (const auto& [id, row] : world.entities) {
    const auto with = retired_with(world, id);
    if (!with) continue;
    const Uuid by = world.retired_by.at(*with);
    const Fact* retirement = world.find(by);
    world.put(table_retirement, Row{id, *with, by, retirement->time.t});
    put_seen_after(world, id, *retirement);
  }
  put_tags(world);
}

}  // namespace kneerail::fold::naive
