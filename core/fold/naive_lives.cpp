#include <algorithm>

#include "core/fold/naive.h"

// The judge's lives of components, and which works are one job.

namespace kneerail::fold::naive {

namespace {

struct Life {
  Uuid id;
  std::int64_t t;
  MergeKey key;
  std::int64_t action;
  Uuid before;
  bool written_twice_may_be;  ///< a replacement that names the life before
  bool doubtful;
  std::optional<Uuid> type;
  std::optional<std::int64_t> coating;
  Uuid current;
};

bool elsewhere(const cbor::Map& body, std::int64_t key) {
  const auto same_part = number_in(body, key);
  return same_part == 1 || same_part == 3;
}

/// What the records of a component say began a life, in the order it began; the first life is not
/// among them.
std::vector<Life> begun(const World& world, const Uuid& component,
                        const std::optional<Uuid>& section) {
  std::vector<Life> lives;
  std::map<Uuid, Uuid> named;
  for (const Fact& fact : world.facts) {
    const Uuid& subject = fact.record().subject;
    if (!fact.counts()) continue;
    if (fact.kind() == kind::strike_step && subject == component && elsewhere(fact.shown, 8)) {
      lives.push_back({fact.id(),
                       fact.time.t,
                       fact.key,
                       work_action::came_back,
                       {},
                       false,
                       true,
                       {},
                       {},
                       fact.id()});
    }
    if (fact.kind() != kind::work) continue;
    const std::int64_t action = number_in(fact.shown, 2).value_or(0);
    const bool cut_out = action == work_action::cut_out;
    const bool renewed = cut_out || action == work_action::replace;
    const bool other = elsewhere(fact.shown, 19);
    const bool own = subject == component && (renewed || other);
    const bool with_section = subject != component && section == subject && cut_out;
    if (!own && !with_section) continue;
    Life life{fact.id(), work_day_ms(fact.time.t, number_in(fact.shown, 9)),
              fact.key,  renewed ? action : work_action::came_back,
              {},        false,
              other,     {},
              {},        fact.id()};
    if (own) {
      life.type = id_in(fact.shown, 6);
      life.coating = number_in(fact.shown, 7);
    }
    auto before = id_in(fact.record().body, 3);
    if (before == subject) before = component;
    if (before && *before != fact.id()) {
      named[life.id] = *before;
      life.written_twice_may_be = renewed;
    }
    lives.push_back(life);
  }
  std::sort(lives.begin(), lives.end(), [](const Life& a, const Life& b) {
    return std::pair(a.t, a.key) < std::pair(b.t, b.key);
  });
  Uuid previous = component;
  for (Life& life : lives) {
    life.before = named.contains(life.id) ? named[life.id] : previous;
    previous = life.id;
  }
  return lives;
}

Uuid current_of(const std::vector<Life>& lives, const Uuid& id) {
  for (const Life& life : lives) {
    if (life.id == id) return life.current;
  }
  return id;
}

/// The works that counting records join to this one, however many steps away.
std::set<Uuid> one_job(const World& world, const Uuid& work) {
  std::set<Uuid> job{work};
  for (bool grown = true; grown;) {
    grown = false;
    for (const Fact* same : world.of_kind(kind::same_work)) {
      const auto other = about_of(same->placed);
      if (!same->counts() || !other) continue;
      if (job.contains(same->record().subject) != job.contains(*other)) {
        job.insert({same->record().subject, *other});
        grown = true;
      }
    }
  }
  return job;
}

using Group = std::vector<Life*>;

/// Two of one life: one replacement written twice, until a person says otherwise.
void decide(const World& world, const Uuid& component, const std::optional<Uuid>& section,
            const Uuid& feed, const Group& group, std::int64_t& number) {
  std::vector<Uuid> ids;
  const Life* last = group.front();
  for (const Life* life : group) {
    ids.push_back(life->id);
    if (life->key > last->key) last = life;
  }
  Uuid current = last->id;
  const std::set<Uuid> job = one_job(world, ids.front());
  const bool said =
      std::all_of(ids.begin(), ids.end(), [&job](const Uuid& id) { return job.contains(id); });
  if (!said) {
    std::vector<Uuid> subjects{component};
    if (section) subjects.push_back(*section);
    current = *clash(
        world, {component, disagreement::replaced_twice, number++, feed, ids, current, subjects});
    const Fact* settled = settling(world, subjects, ids);
    const auto code = settled == nullptr ? std::nullopt : number_in(settled->record().body, 2);
    const bool decided =
        settled != nullptr && (code == 1 || id_in(settled->record().body, 2).has_value());
    for (Life* life : group) life->doubtful = life->doubtful || !decided;
    if (code == 1) {
      for (std::size_t i = 1; i < group.size(); ++i) group[i]->before = group[i - 1]->id;
      return;
    }
  }
  for (Life* life : group) {
    life->current = current;
    life->t = group.front()->t;
  }
}

void put_first(const World& world, const Uuid& component, const Row& entity,
               const std::map<Uuid, std::int64_t>& ends) {
  Row row(std::size(life_columns));
  row[at(life_columns, "component")] = component;
  row[at(life_columns, "life")] = component;
  row[at(life_columns, "feed")] = entity[at(entity_columns, "feed")];
  if (const auto day = number_at(entity, at(entity_columns, "date_in_service"))) {
    row[at(life_columns, "started_t")] = work_day_ms(0, day);
  }
  row[at(life_columns, "start_action")] = std::int64_t{0};
  if (ends.contains(component)) row[at(life_columns, "ended_t")] = ends.at(component);
  row[at(life_columns, "component_type")] = entity[at(entity_columns, "component_type")];
  row[at(life_columns, "coating_nominal_tenth_um")] =
      entity[at(entity_columns, "coating_nominal_tenth_um")];
  row[at(life_columns, "doubtful")] = std::int64_t{0};
  world.put(table_life, row);
}

/// Type and coating carry over from the life before, where that is known and began before.
void put_later(const World& world, const Uuid& component, const Life& life, const Row& entity,
               const std::map<Uuid, std::int64_t>& ends,
               std::map<Uuid, std::pair<Cell, Cell>>& made_of) {
  const auto inherited = made_of.contains(life.before) ? made_of[life.before] : made_of[component];
  const Cell type = life.type ? Cell(*life.type) : inherited.first;
  Cell coating = cell(life.coating);
  if (!life.coating && !life.type) coating = inherited.second;
  made_of[life.id] = {type, coating};
  Row row(std::size(life_columns));
  row[at(life_columns, "component")] = component;
  row[at(life_columns, "life")] = life.id;
  row[at(life_columns, "feed")] = entity[at(entity_columns, "feed")];
  row[at(life_columns, "started_t")] = life.t;
  row[at(life_columns, "start_action")] = life.action;
  if (ends.contains(life.current)) row[at(life_columns, "ended_t")] = ends.at(life.current);
  row[at(life_columns, "life_before")] = life.before;
  if (life.current != life.id) row[at(life_columns, "same_as")] = life.current;
  row[at(life_columns, "component_type")] = type;
  row[at(life_columns, "coating_nominal_tenth_um")] = coating;
  row[at(life_columns, "doubtful")] = std::int64_t{life.doubtful ? 1 : 0};
  world.put(table_life, row);
}

void put_lives_of(const World& world, const Uuid& component, const Row& entity) {
  const auto section = id_at(entity, at(entity_columns, "part_of"));
  const Uuid feed = std::get<Uuid>(entity[at(entity_columns, "feed")]);
  std::vector<Life> lives = begun(world, component, section);
  std::set<Uuid> decided;
  std::int64_t number = 0;
  for (const Life& first : lives) {
    if (!first.written_twice_may_be || decided.contains(first.id)) continue;
    const Uuid before = current_of(lives, first.before);
    Group group;
    for (Life& life : lives) {
      if (!life.written_twice_may_be || decided.contains(life.id)) continue;
      if (current_of(lives, life.before) == before) group.push_back(&life);
    }
    for (const Life* life : group) decided.insert(life->id);
    if (group.size() > 1) decide(world, component, section, feed, group, number);
  }
  std::map<Uuid, std::int64_t> ends;
  for (const Life& life : lives) {
    const Uuid before = current_of(lives, life.before);
    if (before == life.current) continue;
    const auto [found, fresh] = ends.try_emplace(before, life.t);
    found->second = std::min(found->second, life.t);
  }
  put_first(world, component, entity, ends);
  std::map<Uuid, std::pair<Cell, Cell>> made_of;
  made_of[component] = {entity[at(entity_columns, "component_type")],
                        entity[at(entity_columns, "coating_nominal_tenth_um")]};
  for (const Life& life : lives) put_later(world, component, life, entity, ends, made_of);
}

}  // namespace

void put_lives(World& world) {
  for (const auto& [id, entity] : world.entities) {
    if (entity[at(entity_columns, "type")] == Cell(code_of(EntityType::component))) {
      put_lives_of(world, id, entity);
    }
  }
  for (const Fact* work : world.of_kind(kind::work)) {
    Row row = plain_row(*work, *layout_of(kind::work));
    const Uuid one = *one_job(world, work->id()).begin();
    if (one != work->id()) row[at(work_columns, "same_as")] = one;
    world.put(table_work, row);
  }
}

}  // namespace kneerail::fold::naive
