#include <algorithm>
#include <map>

#include "core/fold/folding.h"

// The register: a field's value is that of the head with the largest key; heads are the edits that
// no other edit had seen. Two heads with different values are a disagreement until a later edit
// names both or a person settles it.

namespace kneerail::fold {

namespace {

struct Edit {
  const Fact* from;
  std::int64_t field;
  cbor::Value value;
  std::vector<Uuid> bases;
  bool superseded = false;
  bool counts = true;
};

using Edits = std::map<std::int64_t, std::vector<Edit>>;  // by field

void add_edit(Edits& edits, Edit edit) {
  std::vector<Edit>& of_field = edits[edit.field];
  // A record that gives one field twice means the last.
  std::erase_if(of_field, [&edit](const Edit& other) { return other.from == edit.from; });
  of_field.push_back(std::move(edit));
}

void take_create(Edits& edits, const Fact& create) {
  const cbor::Value* fields = create.shown.find(3);
  if (fields == nullptr || fields->map() == nullptr) return;
  for (const auto& [key, value] : fields->map()->pairs()) {
    if (key.number() != nullptr) add_edit(edits, {&create, *key.number(), value, {}, false, true});
  }
}

void take_set(Edits& edits, const Fact& set) {
  const cbor::Value* list = set.shown.find(1);
  if (list == nullptr || list->array() == nullptr) return;
  for (const cbor::Value& one : *list->array()) {
    const cbor::Array* parts = one.array();
    if (parts == nullptr || parts->size() < 2 || (*parts)[0].number() == nullptr) continue;
    Edit edit{&set, *(*parts)[0].number(), (*parts)[1], {}, false, set.counts()};
    if (parts->size() > 2) edit.bases = ids_of((*parts)[2]);
    add_edit(edits, std::move(edit));
  }
}

void mark_superseded(std::vector<Edit>& edits) {
  for (Edit& edit : edits) {
    edit.superseded = std::any_of(edits.begin(), edits.end(), [&edit](const Edit& other) {
      return other.counts && other.from != edit.from &&
             std::find(other.bases.begin(), other.bases.end(), edit.from->id()) !=
                 other.bases.end();
    });
  }
}

std::vector<const Edit*> heads_of(const std::vector<Edit>& edits) {
  std::vector<const Edit*> heads;
  std::vector<const Edit*> counting;
  for (const Edit& edit : edits) {
    if (!edit.counts) continue;
    counting.push_back(&edit);
    if (!edit.superseded) heads.push_back(&edit);
  }
  return heads.empty() ? counting : heads;
}

/// The edit that is shown for one field; null when none counts.
const Edit* decide(Folding& folding, const Uuid& entity, const std::vector<Edit>& edits) {
  const std::vector<const Edit*> heads = heads_of(edits);
  if (heads.empty()) {
    folding.erase(table_disagreement,
                  {entity, std::int64_t{disagreement::field}, edits.front().field});
    return nullptr;
  }
  const Edit* winner =
      *std::max_element(heads.begin(), heads.end(),
                        [](const Edit* a, const Edit* b) { return a->from->key < b->from->key; });
  Disagreeing two{entity, disagreement::field, winner->field, winner->from->placed.feed,
                  {},     winner->from->id()};
  const bool equal = std::all_of(heads.begin(), heads.end(),
                                 [winner](const Edit* e) { return e->value == winner->value; });
  if (!equal) {
    for (const Edit* head : heads) two.records.push_back(head->from->id());
  }
  const auto named = put_disagreement(folding, two);
  for (const Edit* head : heads) {
    if (named == head->from->id()) winner = head;
  }
  return winner;
}

void put_edits(Folding& folding, const Uuid& entity, const Edits& edits) {
  std::set<std::pair<Uuid, std::int64_t>> now;
  for (const auto& [field, of_field] : edits) {
    for (const Edit& edit : of_field) {
      const MergeKey& key = edit.from->key;
      now.insert({edit.from->id(), field});
      folding.put(table_field_edit,
                  Row{edit.from->id(), field, entity, cbor::encode(edit.value), key.eff, key.l,
                      key.c, key.dev, edit.from->record().who, edit.from->time.t,
                      std::int64_t{edit.superseded ? 1 : 0}, std::int64_t{edit.counts ? 1 : 0}});
    }
  }
  for (const Row& row : folding.rows(table_field_edit, field_edit_by_entity, {entity})) {
    const Uuid record = id_in(row, at(field_edit_columns, "record"));
    const std::int64_t field = number_in(row, at(field_edit_columns, "field"));
    if (now.contains({record, field})) continue;
    folding.erase(table_field_edit, {record, field});
    if (!edits.contains(field)) {
      folding.erase(table_disagreement, {entity, std::int64_t{disagreement::field}, field});
    }
  }
}

void show(Row& row, int type, const Edit& edit, cbor::Map& rest) {
  const int column = entity_column(type, edit.field);
  Cell made;
  if (column >= 0) {
    made = cell_of(&edit.value, entity_columns[static_cast<std::size_t>(column)].type);
  }
  if (std::holds_alternative<std::monostate>(made)) {
    rest.set(edit.field, edit.value);
    return;
  }
  in(row, column) = std::move(made);
  const bool retired =
      life_state_field(type) == edit.field && number_in(row, at(entity_columns, "life_state")) == 2;
  if (retired) in(row, at(entity_columns, "retired_by")) = edit.from->id();
}

Row entity_row(const Fact& create) {
  Row row(std::size(entity_columns));
  const cbor::Map& body = create.shown;
  in(row, at(entity_columns, "id")) = create.id();
  in(row, at(entity_columns, "type")) = number_in(body, 1).value_or(0);
  in(row, at(entity_columns, "feed")) = create.placed.feed;
  in(row, at(entity_columns, "parent")) = cell(id_in(body, 2));
  in(row, at(entity_columns, "created_by")) = create.record().who;
  in(row, at(entity_columns, "created_t")) = create.time.t;
  in(row, at(entity_columns, "import_reference")) = cell_of(body.find(4), Type::text);
  in(row, at(entity_columns, "made_by")) = cell(number_in(body, 5));
  in(row, at(entity_columns, "held")) = std::int64_t{create.held() ? 1 : 0};
  in(row, at(entity_columns, "voided_by")) = cell(create.change.voided_by);
  in(row, at(entity_columns, "newer")) = std::int64_t{0};
  return row;
}

std::string text_in(const std::optional<Row>& row, int column) {
  if (!row) return {};
  const auto* text = std::get_if<std::string>(&in(*row, column));
  return text == nullptr ? std::string{} : *text;
}

/// What else is made from this entity's row.
void ask_dependents(Folding& folding, const std::optional<Row>& before, const Row& now) {
  const Uuid id = id_in(now, at(entity_columns, "id"));
  const std::string tag = text_in(now, at(entity_columns, "tag"));
  const std::string reference = text_in(now, at(entity_columns, "import_reference"));
  const std::string tag_before = text_in(before, at(entity_columns, "tag"));
  if (!tag_before.empty() && tag_before != tag) {
    folding.erase(table_disagreement, {id, std::int64_t{disagreement::one_tag}, std::int64_t{0}});
    folding.ask({.stage = Stage::tag, .text = tag_before});
  }
  if (!tag.empty()) folding.ask({.stage = Stage::tag, .text = tag});
  if (!reference.empty()) folding.ask({.stage = Stage::twice, .text = reference});
  folding.ask({.stage = Stage::retirement, .a = id});
  ask_coverage(folding, before, now);
  if (!before) ask_findings_under(folding, id);
  const auto parent = id_at(now, at(entity_columns, "parent"));
  switch (number_in(now, at(entity_columns, "type"))) {
    case code_of(EntityType::component):
      folding.ask({.stage = Stage::life, .a = id});
      ask_strikes_of_component(folding, id);
      folding.touch(id);
      break;
    case code_of(EntityType::bay):
      if (parent) ask_strikes_of_run(folding, *parent);
      break;
    case code_of(EntityType::component_type):
      for (const Row& row : folding.rows(table_entity, entity_by_component_type, {id})) {
        ask_strikes_of_component(folding, id_in(row, at(entity_columns, "id")));
      }
      break;
    default:
      break;
  }
}

}  // namespace

void derive_entity(Folding& folding, const Job& job) {
  std::optional<Fact> create;
  std::vector<Fact> sets;
  bool newer = false;
  for (const Row& row : folding.rows(table_fact, fact_by_subject, {job.a})) {
    const std::int64_t kind = number_in(row, at(fact_columns, "kind"));
    if (kind == kind::set) sets.push_back(folding.loaded(placed_of_fact(row)));
    if (kind >= kind::must_understand_min) newer = true;
  }
  create = folding.fact(job.a);
  if (create && create->kind() != kind::create) create.reset();

  Edits edits;
  if (create) take_create(edits, *create);
  for (const Fact& set : sets) take_set(edits, set);
  Row row = create ? entity_row(*create) : Row{};
  cbor::Map rest;
  for (auto& [field, of_field] : edits) {
    mark_superseded(of_field);
    const Edit* winner = decide(folding, job.a, of_field);
    if (create && winner != nullptr) {
      show(row, static_cast<int>(number_in(row, at(entity_columns, "type"))), *winner, rest);
    }
  }
  put_edits(folding, job.a, edits);
  if (!create) return;
  in(row, at(entity_columns, "newer")) = std::int64_t{newer ? 1 : 0};
  if (!rest.empty()) in(row, at(entity_columns, "rest")) = cbor::encode(cbor::Value(rest));
  const auto before = folding.row(table_entity, {job.a});
  // A winning edit may have another key or time and the same value.
  folding.put(table_entity, row);
  ask_dependents(folding, before, row);
}

void derive_twice(Folding& folding, const Job& job) {
  const std::vector<Row> all =
      folding.rows(table_entity, entity_by_import_reference, {Cell(job.text)});
  for (const Row& one : all) {
    const Uuid id = id_in(one, at(entity_columns, "id"));
    Disagreeing same{id, disagreement::entered_twice, 0, id_in(one, at(entity_columns, "feed")), {},
                     {}};
    for (const Row& other : all) {
      const bool alike =
          in(one, at(entity_columns, "parent")) == in(other, at(entity_columns, "parent")) &&
          in(one, at(entity_columns, "type")) == in(other, at(entity_columns, "type")) &&
          in(one, at(entity_columns, "feed")) == in(other, at(entity_columns, "feed"));
      if (alike) same.records.push_back(id_in(other, at(entity_columns, "id")));
    }
    put_disagreement(folding, same);
  }
}

namespace {

/// The record whose value of a field is shown; the create's own when no edit is known.
Uuid shown_edit(Folding& folding, const Row& entity, int field) {
  const Uuid id = id_in(entity, at(entity_columns, "id"));
  std::optional<std::pair<MergeKey, Uuid>> last;
  const auto disagreeing =
      folding.row(table_disagreement, {id, std::int64_t{disagreement::field}, std::int64_t{field}});
  if (disagreeing) {
    if (const auto winner = id_at(*disagreeing, at(disagreement_columns, "winner"))) return *winner;
  }
  for (const bool heads_only : {true, false}) {
    for (const Row& row :
         folding.rows(table_field_edit, field_edit_by_entity, {id, std::int64_t{field}})) {
      if (number_in(row, at(field_edit_columns, "counts")) == 0) continue;
      if (heads_only && number_in(row, at(field_edit_columns, "superseded")) != 0) continue;
      const Uuid record = id_in(row, at(field_edit_columns, "record"));
      const MergeKey key{number_in(row, at(field_edit_columns, "eff")),
                         number_in(row, at(field_edit_columns, "l")),
                         number_in(row, at(field_edit_columns, "c")),
                         id_in(row, at(field_edit_columns, "dev")), record};
      if (!last || last->first < key) last = {key, record};
    }
    if (last) return last->second;
  }
  return id;
}

}  // namespace

void derive_tag(Folding& folding, const Job& job) {
  struct Bound {
    Uuid entity;
    Uuid feed;
    Uuid edit;
  };
  std::vector<Bound> bound;
  for (const Row& row : folding.rows(table_entity, entity_by_tag, {Cell(job.text)})) {
    const Uuid id = id_in(row, at(entity_columns, "id"));
    folding.erase(table_disagreement, {id, std::int64_t{disagreement::one_tag}, std::int64_t{0}});
    if (folding.row(table_retirement, {id})) continue;
    const auto field = tag_field(static_cast<int>(number_in(row, at(entity_columns, "type"))));
    if (!field) continue;
    bound.push_back({id, id_in(row, at(entity_columns, "feed")), shown_edit(folding, row, *field)});
  }
  for (const Bound& one : bound) {
    Disagreeing same{one.entity, disagreement::one_tag, 0, one.feed, {}, {}};
    for (const Bound& other : bound) {
      if (other.feed == one.feed) same.records.push_back(other.edit);
    }
    put_disagreement(folding, same);
  }
}

}  // namespace kneerail::fold
