#include "core/fold/work_rules.h"

#include <algorithm>
#include <map>

#include "core/base/date.h"
#include "core/fold/folding.h"

// The lives of a component: what starts one, which two are one replacement written twice, and when
// each ended. A life is started by a replacement, by a cut-out of the part or of the welded section
// it belongs to, and by a part that came back from elsewhere or from nobody knows where.

namespace kneerail::fold {

std::int64_t work_day_ms(std::int64_t t, std::optional<std::int64_t> day) {
  constexpr std::int64_t days_max = 1'000'000;
  if (!day || *day < -days_max || *day > days_max) return t;
  const Date done{static_cast<std::int32_t>(*day)};
  return utc_day(Instant{t}) == done ? t : noon_utc(done).ms;
}

namespace {

struct Start {
  Uuid id;
  std::int64_t t = 0;
  MergeKey key;
  std::int64_t action = 0;
  bool replaces = false;  ///< a replacement that may have been written twice
  bool named = false;     ///< life_before is what the writer named
  std::optional<Uuid> life_before;
  std::optional<Uuid> type;
  std::optional<std::int64_t> coating;
  bool doubtful = false;
  Uuid one;  ///< the life that stands for it

  [[nodiscard]] std::pair<std::int64_t, MergeKey> when() const { return {t, key}; }
};

bool from_elsewhere(std::optional<std::int64_t> same_part) {
  return same_part == 1 || same_part == 3;
}

std::optional<Start> start_of_work(const Fact& work, const Uuid& component) {
  const cbor::Map& body = work.shown;
  const std::int64_t action = number_in(body, 2).value_or(0);
  const bool replaces = action == work_action::replace || action == work_action::cut_out;
  const bool elsewhere = from_elsewhere(number_in(body, 19));
  const bool inherited = work.record().subject != component;
  if (inherited ? action != work_action::cut_out : !replaces && !elsewhere) return std::nullopt;
  if (!work.counts()) return std::nullopt;
  Start start;
  start.id = work.id();
  start.t = work_day_ms(work.time.t, number_in(body, 9));
  start.key = work.key;
  start.action = replaces ? action : work_action::came_back;
  start.replaces = replaces;
  start.life_before = about_of(work.placed);
  if (start.life_before == work.record().subject) start.life_before = component;
  start.doubtful = elsewhere;
  if (!inherited) start.type = id_in(body, 6);
  if (!inherited) start.coating = number_in(body, 7);
  return start;
}

std::optional<Start> start_of_step(const Fact& step) {
  if (!step.counts() || !from_elsewhere(number_in(step.shown, 8))) return std::nullopt;
  Start start;
  start.id = step.id();
  start.t = step.time.t;
  start.key = step.key;
  start.action = work_action::came_back;
  start.doubtful = true;
  return start;
}

std::vector<Start> starts_of(Folding& folding, const Uuid& component,
                             const std::optional<Uuid>& section) {
  std::vector<Start> starts;
  for (const Fact& work : folding.facts_of(component, kind::work)) {
    if (auto start = start_of_work(work, component)) starts.push_back(*std::move(start));
  }
  if (section && *section != component) {
    for (const Fact& work : folding.facts_of(*section, kind::work)) {
      if (auto start = start_of_work(work, component)) starts.push_back(*std::move(start));
    }
  }
  for (const Fact& step : folding.facts_of(component, kind::strike_step)) {
    if (auto start = start_of_step(step)) starts.push_back(*std::move(start));
  }
  std::sort(starts.begin(), starts.end(),
            [](const Start& a, const Start& b) { return a.when() < b.when(); });
  for (std::size_t i = 0; i < starts.size(); ++i) {
    Start& start = starts[i];
    start.one = start.id;
    start.named = start.life_before.has_value() && *start.life_before != start.id;
    if (!start.named) start.life_before = i == 0 ? component : starts[i - 1].id;
  }
  return starts;
}

struct Lives {
  Folding& folding;
  Uuid component;
  std::optional<Uuid> section;
  Uuid feed;
  std::vector<Start> starts;
  std::int64_t disagreements = 0;

  Uuid one_of(const Uuid& life) const {
    for (const Start& start : starts) {
      if (start.id == life) return start.one;
    }
    return life;
  }
};

/// Whether people have said that all of these are one job.
bool said_to_be_one(Folding& folding, const std::vector<Start*>& group) {
  const std::vector<Uuid> reached = one_job(folding, group.front()->id, Joins::that_count);
  return std::all_of(group.begin(), group.end(), [&reached](const Start* start) {
    return std::find(reached.begin(), reached.end(), start->id) != reached.end();
  });
}

void chain_up(const std::vector<Start*>& group) {
  for (std::size_t i = 1; i < group.size(); ++i) group[i]->life_before = group[i - 1]->id;
}

void write_down(Lives& lives, const std::vector<Start*>& group, const std::vector<Uuid>& ids,
                const Uuid& winner, const Uuid& subject) {
  const auto settled = settlement(lives.folding, subject, ids);
  lives.folding.put(
      table_disagreement,
      Row{lives.component, std::int64_t{disagreement::replaced_twice}, lives.disagreements,
          lives.feed, sorted_ids_cell(ids), winner, settled ? Cell(settled->by) : Cell(),
          settled ? cell(settled->code) : Cell()});
  ++lives.disagreements;
  const bool open = !settled || (!settled->decision && settled->code != 1);
  for (Start* start : group) {
    if (open) start->doubtful = true;
  }
}

/// Two or more replacements of one life, in the order they began.
void decide_group(Lives& lives, const std::vector<Start*>& group) {
  std::vector<Uuid> ids;
  for (const Start* start : group) ids.push_back(start->id);
  Uuid current = (*std::max_element(group.begin(), group.end(), [](const Start* a, const Start* b) {
                   return a->key < b->key;
                 }))->id;
  const bool one = said_to_be_one(lives.folding, group);
  if (!one) {
    Uuid subject = lives.component;
    auto settled = settlement(lives.folding, subject, ids);
    if (!settled && lives.section) {
      subject = *lives.section;
      settled = settlement(lives.folding, subject, ids);
    }
    if (settled && settled->decision &&
        std::find(ids.begin(), ids.end(), *settled->decision) != ids.end()) {
      current = *settled->decision;
    }
    write_down(lives, group, ids, current, subject);
    if (settled && !settled->decision && settled->code == 1) {
      chain_up(group);
      return;
    }
  }
  const std::int64_t began = group.front()->t;
  for (Start* start : group) {
    start->one = current;
    start->t = began;
  }
}

/// Goes through the lives as they began, so that the life before is decided before what followed.
void decide_groups(Lives& lives) {
  std::vector<bool> decided(lives.starts.size(), false);
  for (std::size_t i = 0; i < lives.starts.size(); ++i) {
    const Start& first = lives.starts[i];
    if (decided[i] || !first.named || !first.replaces) continue;
    const Uuid before = lives.one_of(*first.life_before);
    std::vector<Start*> group;
    for (std::size_t j = i; j < lives.starts.size(); ++j) {
      Start& other = lives.starts[j];
      if (decided[j] || !other.named || !other.replaces) continue;
      if (lives.one_of(*other.life_before) != before) continue;
      decided[j] = true;
      group.push_back(&other);
    }
    if (group.size() > 1) decide_group(lives, group);
  }
}

std::optional<std::int64_t> end_of(const Lives& lives, const Uuid& life) {
  std::optional<std::int64_t> ended;
  const Uuid one = lives.one_of(life);
  for (const Start& start : lives.starts) {
    if (start.one == one || lives.one_of(*start.life_before) != one) continue;
    ended = std::min(ended.value_or(start.t), start.t);
  }
  return ended;
}

Row first_life(const Lives& lives, const Row& entity) {
  const auto day = number_at(entity, at(entity_columns, "date_in_service"));
  Row row{lives.component, lives.component, lives.feed};
  row.resize(std::size(life_columns));
  if (day) in(row, at(life_columns, "started_t")) = work_day_ms(0, day);
  in(row, at(life_columns, "start_action")) = std::int64_t{0};
  in(row, at(life_columns, "ended_t")) = cell(end_of(lives, lives.component));
  in(row, at(life_columns, "component_type")) = in(entity, at(entity_columns, "component_type"));
  in(row, at(life_columns, "coating_nominal_tenth_um")) =
      in(entity, at(entity_columns, "coating_nominal_tenth_um"));
  in(row, at(life_columns, "doubtful")) = std::int64_t{0};
  return row;
}

Row later_life(const Lives& lives, const Start& start, const Row& before) {
  Row row{lives.component, start.id, lives.feed, start.t, start.action};
  row.resize(std::size(life_columns));
  in(row, at(life_columns, "ended_t")) = cell(end_of(lives, start.id));
  in(row, at(life_columns, "life_before")) = cell(start.life_before);
  if (start.one != start.id) in(row, at(life_columns, "same_as")) = start.one;
  in(row, at(life_columns, "component_type")) =
      start.type ? Cell(*start.type) : in(before, at(life_columns, "component_type"));
  Cell coating = cell(start.coating);
  if (!start.coating && !start.type) {
    coating = in(before, at(life_columns, "coating_nominal_tenth_um"));
  }
  in(row, at(life_columns, "coating_nominal_tenth_um")) = std::move(coating);
  in(row, at(life_columns, "doubtful")) = std::int64_t{start.doubtful ? 1 : 0};
  return row;
}

std::map<Uuid, Row> life_rows(const Lives& lives, const Row& entity) {
  std::map<Uuid, Row> rows;
  const Row first = first_life(lives, entity);
  rows[lives.component] = first;
  for (const Start& start : lives.starts) {
    const auto before = rows.find(*start.life_before);
    rows[start.id] = later_life(lives, start, before == rows.end() ? first : before->second);
  }
  return rows;
}

}  // namespace

void derive_life(Folding& folding, const Job& job) {
  const auto entity = folding.row(table_entity, {job.a});
  if (!entity || number_in(*entity, at(entity_columns, "type")) != code_of(EntityType::component)) {
    return;
  }
  Lives lives{folding,
              job.a,
              id_at(*entity, at(entity_columns, "part_of")),
              id_in(*entity, at(entity_columns, "feed")),
              {},
              0};
  lives.starts = starts_of(folding, job.a, lives.section);
  decide_groups(lives);
  for (const Row& row : folding.rows_of_key(table_disagreement,
                                            {job.a, std::int64_t{disagreement::replaced_twice}})) {
    const std::int64_t detail = number_in(row, at(disagreement_columns, "detail"));
    if (detail < lives.disagreements) continue;
    folding.erase(table_disagreement, {job.a, std::int64_t{disagreement::replaced_twice}, detail});
  }
  const std::map<Uuid, Row> rows = life_rows(lives, *entity);
  bool changed = false;
  for (const Row& kept : folding.rows_of_key(table_life, {job.a})) {
    const Uuid life = id_in(kept, at(life_columns, "life"));
    if (!rows.contains(life)) changed = folding.erase(table_life, {job.a, life}) || changed;
  }
  for (const auto& [life, row] : rows) changed = folding.put(table_life, row) || changed;
  if (changed) folding.touch(job.a);
}

void ask_lives(Folding& folding, const Uuid& component) {
  folding.ask({.stage = Stage::life, .a = component});
  for (const Row& part : folding.rows(table_entity, entity_by_part_of, {component})) {
    folding.ask({.stage = Stage::life, .a = id_in(part, at(entity_columns, "id"))});
  }
}

void ask_lives_of_work(Folding& folding, const Uuid& work) {
  const auto row = folding.row(table_fact, {work});
  if (row) ask_lives(folding, id_in(*row, at(fact_columns, "subject")));
}

namespace {

std::vector<Uuid> joined_with(Folding& folding, const Uuid& work, Joins joins) {
  std::vector<Uuid> others;
  for (const Fact& one : folding.facts_of(work, kind::same_work)) {
    const auto other = about_of(one.placed);
    if (other && (joins == Joins::all || one.counts())) others.push_back(*other);
  }
  for (const Fact& one : folding.facts_about(work, kind::same_work)) {
    if (joins == Joins::all || one.counts()) others.push_back(one.record().subject);
  }
  return others;
}

}  // namespace

std::vector<Uuid> one_job(Folding& folding, const Uuid& work, Joins joins) {
  std::vector<Uuid> job{work};
  for (std::size_t next = 0; next < job.size(); ++next) {
    for (const Uuid& other : joined_with(folding, job[next], joins)) {
      if (std::find(job.begin(), job.end(), other) == job.end()) job.push_back(other);
    }
  }
  return job;
}

void fill_work(Folding& folding, const Fact& work, Row& row) {
  const std::vector<Uuid> job = one_job(folding, work.id(), Joins::that_count);
  const Uuid one = *std::min_element(job.begin(), job.end());
  if (one != work.id()) in(row, at(work_columns, "same_as")) = one;
}

}  // namespace kneerail::fold
