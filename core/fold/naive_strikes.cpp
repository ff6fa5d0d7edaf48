#include <algorithm>
#include <limits>

#include "core/fold/naive.h"

// The judge's strikes and closures. Times are asked for directly: "was this done by then?".

namespace kneerail::fold::naive {

namespace {

constexpr std::int64_t always = std::numeric_limits<std::int64_t>::max();

cbor::Map rest_of(const World& world, const Uuid& entity) {
  const auto found = world.entities.find(entity);
  if (found == world.entities.end()) return {};
  const auto* bytes = std::get_if<cbor::Bytes>(&found->second[at(entity_columns, "rest")]);
  if (bytes == nullptr) return {};
  return *cbor::decode(*bytes)->map();
}

std::int64_t screws_of(const World& world, const Uuid& component) {
  const std::int64_t screws = number_in(rest_of(world, component), 4).value_or(0);
  return std::min<std::int64_t>(std::max<std::int64_t>(screws, 0), 16);
}

Facts steps_of(const World& world, const Uuid& strike, const Uuid& subject, std::int64_t step) {
  Facts found;
  for (const Fact* fact : world.counting(kind::strike_step, subject)) {
    if (about_of(fact->placed) == strike && number_in(fact->shown, 2) == step) {
      found.push_back(fact);
    }
  }
  return found;
}

bool signs(const World& world, const Fact& step) {
  const auto how = number_in(step.shown, 7);
  if (how == 4) return false;
  const auto entity = world.entities.find(step.record().subject);
  if (how != 3 || entity == world.entities.end()) return true;
  const auto type = id_at(entity->second, at(entity_columns, "component_type"));
  const auto lowest = type ? number_in(rest_of(world, *type), 7) : std::nullopt;
  const auto left = number_in(step.shown, 3);
  return !lowest || !left || *left >= *lowest;
}

bool is_back(const World& world, const Uuid& strike, const Uuid& part, std::int64_t by) {
  for (const Fact* step : steps_of(world, strike, part, 2)) {
    if (step->time.t <= by) return true;
  }
  return false;
}

bool is_signed(const World& world, const Uuid& strike, const Uuid& part, std::int64_t screw,
               std::int64_t by) {
  for (const Fact* step : steps_of(world, strike, part, 3)) {
    const auto named = number_in(step->shown, 5);
    if (step->time.t <= by && signs(world, *step) && (!named || named == screw)) return true;
  }
  return false;
}

std::vector<Uuid> stands_on(const World& world, const Uuid& bay) {
  std::vector<Uuid> all{bay};
  for (const std::int64_t post : {1, 2}) {
    if (const auto id = id_in(rest_of(world, bay), post)) all.push_back(*id);
  }
  return all;
}

std::vector<Uuid> listed(const Fact& strike) {
  std::vector<Uuid> parts = ids_in(strike.shown, 4);
  const std::set<Uuid> each(parts.begin(), parts.end());
  return {each.begin(), each.end()};
}

std::vector<Uuid> parts_of_bay(const World& world, const Fact& strike, const Uuid& bay) {
  std::vector<Uuid> parts;
  for (const Uuid& part : listed(strike)) {
    const auto parent = world.parent_of(part);
    if (parent && contains(stands_on(world, bay), *parent)) parts.push_back(part);
  }
  return parts;
}

/// Bays of the strike's run in which a listed part stands.
std::vector<Uuid> bays_of(const World& world, const Fact& strike) {
  std::vector<Uuid> bays;
  for (const auto& [id, row] : world.entities) {
    const bool bay = row[at(entity_columns, "type")] == Cell(code_of(EntityType::bay));
    if (bay && world.parent_of(id) == strike.record().subject &&
        !parts_of_bay(world, strike, id).empty()) {
      bays.push_back(id);
    }
  }
  return bays;
}

bool pushed_firm(const World& world, const Fact& look) {
  for (const Fact* push : world.counting(kind::hand_load, look.record().subject)) {
    const std::int64_t apart = std::abs(push->placed.seq - look.placed.seq);
    if (number_in(push->shown, 2) == 1 && push->placed.device == look.placed.device &&
        push->placed.feed == look.placed.feed && push->record().who == look.record().who &&
        apart <= 4) {
      return true;
    }
  }
  return false;
}

bool is_looked_at(const World& world, const Fact& strike, const Uuid& bay, std::int64_t by) {
  for (const Fact* look : steps_of(world, strike.id(), bay, 4)) {
    if (look->time.t > by || !pushed_firm(world, *look)) continue;
    bool after_last_screw = true;
    for (const Uuid& part : parts_of_bay(world, strike, bay)) {
      for (std::int64_t screw = 1; screw <= screws_of(world, part); ++screw) {
        after_last_screw =
            after_last_screw && is_signed(world, strike.id(), part, screw, look->time.t);
      }
    }
    if (after_last_screw) return true;
  }
  return false;
}

cbor::Array missing_by(const World& world, const Fact& strike, std::int64_t by) {
  cbor::Array missing;
  for (const Uuid& part : listed(strike)) {
    if (!is_back(world, strike.id(), part, by)) missing.push_back(cbor::Array{part, 2, 0});
    for (std::int64_t screw = 1; screw <= screws_of(world, part); ++screw) {
      if (!is_signed(world, strike.id(), part, screw, by)) {
        missing.push_back(cbor::Array{part, 3, screw});
      }
    }
  }
  for (const Uuid& bay : bays_of(world, strike)) {
    if (!is_looked_at(world, strike, bay, by)) missing.push_back(cbor::Array{bay, 4, 0});
  }
  return missing;
}

void put_strike(World& world, const Fact& strike) {
  std::int64_t state = 1;
  std::optional<Uuid> by;
  for (const Fact* opening : world.counting(kind::opened, strike.id())) {
    if (missing_by(world, strike, opening->time.t).empty()) {
      state = 3;
      by = opening->id();
      break;
    }
    state = 2;
    by = opening->id();
  }
  world.strike_state[strike.id()] = state;
  if (by) world.strike_opened_by[strike.id()] = *by;
  const cbor::Array missing = missing_by(world, strike, always);
  Row row = plain_row(strike, *layout_of(kind::strike_opened));
  row[at(strike_columns, "state")] = state;
  row[at(strike_columns, "missing")] = cbor::encode(cbor::Value(missing));
  row[at(strike_columns, "missing_count")] = static_cast<std::int64_t>(missing.size());
  row[at(strike_columns, "opened_by")] = cell(by);
  row[at(strike_columns, "open_bays")] = sorted_ids_cell({});
  world.put(table_strike, row);
  for (const Uuid& part : listed(strike)) world.put(table_strike_part, Row{part, strike.id()});
}

}  // namespace

void put_strikes(World& world) {
  for (const Fact* strike : world.of_kind(kind::strike_opened)) put_strike(world, *strike);
}

void put_closures(World& world) {
  for (const Fact* closure : world.of_kind(kind::closed)) {
    Row row = plain_row(*closure, *layout_of(kind::closed));
    std::optional<Uuid> opened;
    const auto about = about_of(closure->placed);
    if (about && world.strike_state.contains(*about) && world.strike_state[*about] == 3) {
      opened = world.strike_opened_by[*about];
    }
    const Facts openings = world.counting(kind::opened, closure->id());
    if (!openings.empty()) opened = openings.front()->id();
    bool gone = false;
    const Fact* asks = number_in(closure->shown, 5) ? closure : nullptr;
    for (const Fact* look : world.counting(kind::closure_look, closure->id())) {
      if (number_in(look->shown, 1) == code_of(HowItStands::gone)) gone = true;
      if (number_in(look->shown, 1) == code_of(HowItStands::put_back)) gone = false;
      if (number_in(look->shown, 2) && (asks == nullptr || asks->key < look->key)) asks = look;
      row[at(closure_columns, "last_look")] = look->id();
    }
    if (asks != nullptr) {
      row[at(closure_columns, "look_again_by_ms")] =
          cell(number_in(asks->shown, asks == closure ? 5 : 2));
    }
    const bool sign_only = number_in(closure->record().body, 4) == 5;
    const bool barrier = !opened && !gone && !sign_only;
    row[at(closure_columns, "standing")] = std::int64_t{opened ? 0 : 1};
    row[at(closure_columns, "barrier")] = std::int64_t{barrier ? 1 : 0};
    row[at(closure_columns, "opened_by")] = cell(opened);
    world.put(table_closure, row);
    if (barrier) world.barriers.insert(closure->record().subject);
  }
}

void put_gaps(World& world) {
  for (const Fact* strike : world.of_kind(kind::strike_opened)) {
    std::vector<Uuid> open_bays;
    for (const Uuid& bay : bays_of(world, *strike)) {
      bool down = false;
      for (const Uuid& part : parts_of_bay(world, *strike, bay)) {
        const Facts taken = steps_of(world, strike->id(), part, 1);
        const Facts back = steps_of(world, strike->id(), part, 2);
        if (taken.empty()) continue;
        if (back.empty() || back.back()->timed_key() < taken.back()->timed_key()) down = true;
      }
      bool barrier = false;
      for (const Uuid& around : world.upwards(bay)) {
        barrier = barrier || world.barriers.contains(around);
      }
      if (down && !barrier) open_bays.push_back(bay);
    }
    Row row = *world.store.row(table_strike, std::vector<Cell>{strike->id()});
    row[at(strike_columns, "open_bays")] = sorted_ids_cell(open_bays);
    world.put(table_strike, row);
  }
}

}  // namespace kneerail::fold::naive
