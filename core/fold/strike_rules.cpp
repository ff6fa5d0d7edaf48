#include <algorithm>
#include <cstdlib>
#include <limits>

#include "core/fold/folding.h"

// A strike: its run is down until a person opened it after every required step. Required: each part
// back, each of its screws signed, each bay of its posts looked at once their last screw was
// signed. A look is a push: it counts with a firm hand load of the same entry.

namespace kneerail::fold {

namespace {

constexpr std::int64_t step_down = 1;
constexpr std::int64_t step_back = 2;
constexpr std::int64_t step_signed = 3;
constexpr std::int64_t step_looked = 4;
constexpr std::int64_t other_value = 3;
constexpr std::int64_t will_not_tighten = 4;
constexpr std::int64_t felt_firm = 1;
constexpr std::int64_t state_down = 1;
constexpr std::int64_t state_opened_early = 2;
constexpr std::int64_t state_open = 3;
constexpr std::int64_t screws_max = 16;
/// Records of one entry stand this close on their chain.
constexpr std::int64_t same_entry_seq_max = 4;

struct Bay {
  Uuid id;
  std::vector<Uuid> stands_on;  ///< itself and its posts
};

struct Required {
  Uuid subject;
  std::int64_t step;
  std::int64_t screw;
  std::optional<std::int64_t> done_t;
};

struct Part {
  Uuid id;
  std::optional<Uuid> parent;
  std::int64_t screws = 0;
  std::optional<std::int64_t> lowest_tenth_nm;
};

Part part_of(Folding& folding, const Uuid& component) {
  Part part{component, {}, 0, {}};
  const auto entity = folding.row(table_entity, {component});
  if (!entity) return part;
  part.parent = id_at(*entity, at(entity_columns, "parent"));
  part.screws = std::clamp(number_in(rest_of(*entity), 4).value_or(0), std::int64_t{0}, screws_max);
  const auto type = id_at(*entity, at(entity_columns, "component_type"));
  const auto type_row = type ? folding.row(table_entity, {*type}) : std::nullopt;
  if (type_row) part.lowest_tenth_nm = number_in(rest_of(*type_row), 7);
  return part;
}

std::vector<Bay> bays_of(Folding& folding, const Uuid& run) {
  std::vector<Bay> bays;
  for (const Row& row :
       folding.rows(table_entity, entity_by_parent, {run, code_of(EntityType::bay)})) {
    Bay bay{id_in(row, at(entity_columns, "id")), {}};
    bay.stands_on.push_back(bay.id);
    const cbor::Map rest = rest_of(row);
    for (const std::int64_t post : {1, 2}) {
      if (const auto id = id_in(rest, post)) bay.stands_on.push_back(*id);
    }
    bays.push_back(std::move(bay));
  }
  return bays;
}

bool holds(const Bay& bay, const Part& part) {
  return part.parent &&
         std::find(bay.stands_on.begin(), bay.stands_on.end(), *part.parent) != bay.stands_on.end();
}

bool signs(const Fact& step, const Part& part) {
  const auto how = number_in(step.shown, 7);
  if (how == will_not_tighten) return false;
  const auto left = number_in(step.shown, 3);
  return how != other_value || !left || !part.lowest_tenth_nm || *left >= *part.lowest_tenth_nm;
}

void earliest(std::optional<std::int64_t>& t, std::int64_t other) {
  t = std::min(t.value_or(other), other);
}

struct Strike {
  std::vector<Part> parts;
  std::vector<Fact> steps;  ///< those that count
  std::vector<Bay> bays;    ///< those that a part stands in
};

Strike strike_of(Folding& folding, const Fact& opened) {
  Strike strike;
  std::vector<Uuid> listed = ids_in(opened.shown, 4);
  std::sort(listed.begin(), listed.end());
  listed.erase(std::unique(listed.begin(), listed.end()), listed.end());
  for (const Uuid& component : listed) strike.parts.push_back(part_of(folding, component));
  for (Fact& step : folding.facts_about(opened.id(), kind::strike_step)) {
    if (step.counts()) strike.steps.push_back(std::move(step));
  }
  for (Bay& bay : bays_of(folding, opened.record().subject)) {
    const bool involved = std::any_of(strike.parts.begin(), strike.parts.end(),
                                      [&bay](const Part& part) { return holds(bay, part); });
    if (involved) strike.bays.push_back(std::move(bay));
  }
  return strike;
}

void require_part(const Strike& strike, const Part& part, std::vector<Required>& required) {
  const std::size_t first = required.size();
  required.push_back({part.id, step_back, 0, {}});
  for (std::int64_t screw = 1; screw <= part.screws; ++screw) {
    required.push_back({part.id, step_signed, screw, {}});
  }
  for (const Fact& step : strike.steps) {
    if (step.record().subject != part.id) continue;
    const std::int64_t what = number_in(step.shown, 2).value_or(0);
    if (what == step_back) earliest(required[first].done_t, step.time.t);
    if (what != step_signed || !signs(step, part)) continue;
    const auto screw = number_in(step.shown, 5);  // absent: all screws of the part
    for (std::size_t i = first + 1; i < required.size(); ++i) {
      if (!screw || *screw == required[i].screw) earliest(required[i].done_t, step.time.t);
    }
  }
}

bool pushed_firm(Folding& folding, const Fact& look) {
  for (const Row& row : folding.rows(table_reading, reading_by_subject,
                                     {look.record().subject, std::int64_t{kind::hand_load}})) {
    const bool counts = number_in(row, at(reading_columns, "held")) == 0 &&
                        !id_at(row, at(reading_columns, "voided_by"));
    const std::int64_t apart = number_in(row, at(reading_columns, "seq")) - look.placed.seq;
    if (counts && number_in(row, at(reading_columns, "what")) == felt_firm &&
        id_in(row, at(reading_columns, "dev")) == look.placed.device &&
        id_in(row, at(reading_columns, "feed")) == look.placed.feed &&
        id_in(row, at(reading_columns, "who")) == look.record().who &&
        std::abs(apart) <= same_entry_seq_max) {
      return true;
    }
  }
  return false;
}

/// The last screw of the bay's posts; nothing while one is unsigned.
std::optional<std::int64_t> last_signed(const Strike& strike, const Bay& bay,
                                        const std::vector<Required>& required) {
  std::int64_t last = std::numeric_limits<std::int64_t>::min();
  for (const Part& part : strike.parts) {
    if (!holds(bay, part)) continue;
    for (const Required& one : required) {
      if (one.subject != part.id || one.step != step_signed) continue;
      if (!one.done_t) return std::nullopt;
      last = std::max(last, *one.done_t);
    }
  }
  return last;
}

std::vector<Required> required_of(Folding& folding, const Strike& strike) {
  std::vector<Required> required;
  for (const Part& part : strike.parts) require_part(strike, part, required);
  std::vector<Required> looks;
  for (const Bay& bay : strike.bays) {
    Required look{bay.id, step_looked, 0, {}};
    const auto after = last_signed(strike, bay, required);
    for (const Fact& step : strike.steps) {
      if (!after || step.record().subject != bay.id || step.time.t < *after) continue;
      if (number_in(step.shown, 2) != step_looked || !pushed_firm(folding, step)) continue;
      earliest(look.done_t, step.time.t);
    }
    looks.push_back(look);
  }
  required.insert(required.end(), looks.begin(), looks.end());
  return required;
}

struct Opened {
  std::int64_t state = state_down;
  std::optional<Uuid> by;
};

Opened opening_of(Folding& folding, const Uuid& strike, const std::vector<Required>& required) {
  std::optional<TimedKey> effective;
  std::optional<TimedKey> early;
  for (const Fact& opening : folding.facts_of(strike, kind::opened)) {
    if (!opening.counts()) continue;
    const bool all = std::all_of(required.begin(), required.end(), [&](const Required& one) {
      return one.done_t && *one.done_t <= opening.time.t;
    });
    const TimedKey when = opening.timed_key();
    if (all && (!effective || when < *effective)) effective = when;
    if (!all && (!early || *early < when)) early = when;
  }
  if (effective) return {state_open, effective->key.record};
  if (early) return {state_opened_early, early->key.record};
  return {};
}

void put_parts(Folding& folding, const Uuid& strike, const std::optional<Row>& before,
               const Strike& now) {
  std::set<Uuid> listed;
  for (const Part& part : now.parts) {
    listed.insert(part.id);
    folding.put(table_strike_part, Row{part.id, strike});
  }
  if (!before) return;
  for (const Uuid& component : ids_of(in(*before, at(strike_columns, "components")))) {
    if (!listed.contains(component)) folding.erase(table_strike_part, {component, strike});
  }
}

Cell missing_cell(const std::vector<Required>& required, std::int64_t& count) {
  cbor::Array missing;
  for (const Required& one : required) {
    if (!one.done_t) missing.push_back(cbor::Array{one.subject, one.step, one.screw});
  }
  count = static_cast<std::int64_t>(missing.size());
  return cbor::encode(cbor::Value(std::move(missing)));
}

}  // namespace

void derive_strike(Folding& folding, const Job& job) {
  const auto opened = folding.fact(job.a);
  if (!opened || opened->kind() != kind::strike_opened) return;
  const Strike strike = strike_of(folding, *opened);
  const std::vector<Required> required = required_of(folding, strike);
  const Opened opening = opening_of(folding, job.a, required);
  const auto before = folding.row(table_strike, {job.a});
  put_parts(folding, job.a, before, strike);

  Row row = plain_row(*opened, *layout_of(kind::strike_opened));
  std::int64_t count = 0;
  in(row, at(strike_columns, "missing")) = missing_cell(required, count);
  in(row, at(strike_columns, "missing_count")) = count;
  in(row, at(strike_columns, "state")) = opening.state;
  in(row, at(strike_columns, "opened_by")) = cell(opening.by);
  in(row, at(strike_columns, "open_bays")) =
      before ? in(*before, at(strike_columns, "open_bays")) : sorted_ids_cell({});
  folding.put(table_strike, row);
  folding.ask({.stage = Stage::gap, .a = job.a});
  for (const Row& closure :
       folding.rows(table_fact, fact_by_about, {job.a, std::int64_t{kind::closed}})) {
    folding.ask({.stage = Stage::closure, .a = id_in(closure, at(fact_columns, "record"))});
  }
}

namespace {

/// Down: the last thing written about it is that it was taken down.
bool is_down(const Strike& strike, const Part& part) {
  std::optional<TimedKey> last;
  bool down = false;
  for (const Fact& step : strike.steps) {
    const auto what = number_in(step.shown, 2);
    if (step.record().subject != part.id || (what != step_down && what != step_back)) continue;
    if (last && step.timed_key() < *last) continue;
    last = step.timed_key();
    down = what == step_down;
  }
  return down;
}

}  // namespace

void derive_gap(Folding& folding, const Job& job) {
  auto row = folding.row(table_strike, {job.a});
  const auto opened = folding.fact(job.a);
  if (!row || !opened) return;
  const Strike strike = strike_of(folding, *opened);
  std::vector<Uuid> open_bays;
  for (const Bay& bay : strike.bays) {
    const bool down = std::any_of(strike.parts.begin(), strike.parts.end(), [&](const Part& part) {
      return holds(bay, part) && is_down(strike, part);
    });
    if (down && !barrier_around(folding, bay.id)) open_bays.push_back(bay.id);
  }
  in(*row, at(strike_columns, "open_bays")) = sorted_ids_cell(open_bays);
  folding.put(table_strike, *row);
}

void ask_strikes_of_component(Folding& folding, const Uuid& component) {
  for (const Row& row : folding.rows_of_key(table_strike_part, {component})) {
    folding.ask({.stage = Stage::strike, .a = id_in(row, at(strike_part_columns, "strike"))});
  }
}

void ask_strikes_of_run(Folding& folding, const Uuid& run) {
  for (const Row& row :
       folding.rows(table_fact, fact_by_subject, {run, std::int64_t{kind::strike_opened}})) {
    folding.ask({.stage = Stage::strike, .a = id_in(row, at(fact_columns, "record"))});
  }
}

}  // namespace kneerail::fold
