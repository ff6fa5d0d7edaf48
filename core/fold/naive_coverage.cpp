#include <algorithm>

#include "core/fold/coverage.h"
#include "core/fold/naive.h"

// The judge's table of what each visit has of each post.

namespace kneerail::fold::naive {

namespace {

bool is_a(const World& world, const Uuid& id, int type) {
  const auto found = world.entities.find(id);
  return found != world.entities.end() &&
         found->second[at(entity_columns, "type")] == Cell(std::int64_t{type});
}

bool begins_at(const World& world, const Uuid& bay, const Uuid& post) {
  return is_a(world, bay, code_of(EntityType::bay)) &&
         id_in(rest_of(world.entities.at(bay)), bay_field::from_post) == post;
}

/// The things of a type that stand in one of these.
std::vector<Uuid> standing_in(const World& world, int type, const std::vector<Uuid>& parents) {
  std::vector<Uuid> found;
  for (const auto& [id, row] : world.entities) {
    const auto parent = world.parent_of(id);
    if (is_a(world, id, type) && parent && contains(parents, *parent)) found.push_back(id);
  }
  return found;
}

struct Sheet {
  Uuid visit;
  Uuid post;
  std::vector<Uuid> bays;
  std::vector<Uuid> parts;
  Facts facts;                         ///< that count, in order of (t, key)
  std::optional<std::int64_t> over_t;  ///< when all of the visit was sealed
};

bool skipped_whole(const World& world, const Sheet& sheet) {
  for (const Fact* fact : sheet.facts) {
    if (fact->kind() != kind::not_reached) continue;
    const Uuid& subject = fact->record().subject;
    if (subject == sheet.post || world.parent_of(sheet.post) == subject) return true;
  }
  return false;
}

bool says_not_reached(const Sheet& sheet, const Uuid& thing) {
  return std::any_of(sheet.facts.begin(), sheet.facts.end(), [&thing](const Fact* fact) {
    return fact->kind() == kind::not_reached && fact->record().subject == thing;
  });
}

/// The looks of persons at one thing.
Facts looks_at(const Sheet& sheet, const Uuid& thing) {
  Facts looks;
  for (const Fact* fact : sheet.facts) {
    const bool look = fact->kind() == kind::grade || fact->kind() == kind::hand_load ||
                      fact->kind() == kind::finding;
    if (look && fact->record().subject == thing && !fact->record().who.is_zero()) {
      looks.push_back(fact);
    }
  }
  return looks;
}

bool is_far(const Fact* look) {
  return look->kind() == kind::grade &&
         number_in(look->shown, 5).value_or(0) >= code_of(HowLooked::looked_from_afar);
}

bool is_fresh(const Fact* look) {
  return look->kind() == kind::finding || !truth_in(look->shown, 97);
}

bool is_push(const Fact* look) {
  return look->kind() == kind::hand_load && number_in(look->shown, 2) != code_of(Felt::not_pushed);
}

bool was_there(const World& world, const Sheet& sheet, const Uuid& thing) {
  const Row& row = world.entities.at(thing);
  if (row[at(entity_columns, "voided_by")] != Cell()) return false;
  const auto retired = world.store.row(table_retirement, std::vector<Cell>{thing});
  if (!sheet.over_t) return !retired;
  const bool gone = retired && number_of((*retired)[at(retirement_columns, "t")]) <= *sheet.over_t;
  return !gone && number_of(row[at(entity_columns, "created_t")]) <= *sheet.over_t;
}

/// Of these things, what the visit had to look at.
std::vector<Uuid> wanted(const World& world, const Sheet& sheet, const std::vector<Uuid>& things) {
  std::vector<Uuid> left;
  for (const Uuid& thing : things) {
    const bool gap =
        is_a(world, thing, code_of(EntityType::bay)) &&
        number_in(rest_of(world.entities.at(thing)), bay_field::kind) == code_of(BayKind::open_gap);
    const bool there = was_there(world, sheet, thing) && !gap;
    if (there || !looks_at(sheet, thing).empty()) left.push_back(thing);
  }
  return left;
}

/// How many things have a look for which this holds.
template <class Holds>
std::int64_t with_look(const Sheet& sheet, const std::vector<Uuid>& things, const Holds& holds) {
  return std::count_if(things.begin(), things.end(), [&](const Uuid& thing) {
    const Facts looks = looks_at(sheet, thing);
    return std::any_of(looks.begin(), looks.end(), holds);
  });
}

Row sheet_row(const World& world, const Sheet& sheet) {
  const auto any = [](const Fact*) { return true; };
  const auto near = [](const Fact* look) { return !is_far(look); };
  Row row(std::size(coverage_columns));
  const auto put = [&row](int column, std::int64_t number) {
    row[static_cast<std::size_t>(column)] = number;
  };
  row[at(coverage_columns, "visit")] = sheet.visit;
  row[at(coverage_columns, "post")] = sheet.post;
  row[at(coverage_columns, "feed")] = world.entities.at(sheet.post)[at(entity_columns, "feed")];
  put(at(coverage_columns, "first_t"), sheet.facts.front()->time.t);
  put(at(coverage_columns, "last_t"), sheet.facts.back()->time.t);
  const std::int64_t parts_seen = with_look(sheet, sheet.parts, any);
  const std::int64_t bays_seen = with_look(sheet, sheet.bays, any);
  put(at(coverage_columns, "parts"), std::ssize(sheet.parts));
  put(at(coverage_columns, "parts_seen"), parts_seen);
  put(at(coverage_columns, "parts_far"), parts_seen - with_look(sheet, sheet.parts, near));
  put(at(coverage_columns, "bays"), std::ssize(sheet.bays));
  put(at(coverage_columns, "bays_seen"), bays_seen);
  put(at(coverage_columns, "bays_pushed"), with_look(sheet, sheet.bays, is_push));
  for (const auto& [kind, column] : counted_kinds) {
    put(column, std::count_if(sheet.facts.begin(), sheet.facts.end(),
                              [kind = kind](const Fact* fact) { return fact->kind() == kind; }));
  }
  return row;
}

/// What was seen of each thing, and of the run that it was not reached.
void put_looks(const Sheet& sheet, Row& row) {
  std::map<Uuid, std::int64_t> looks;
  for (const Fact* fact : sheet.facts) {
    if (fact->kind() == kind::not_reached) looks[fact->record().subject] |= look_not_reached;
  }
  for (const Fact* fact : sheet.facts) {
    const Uuid& thing = fact->record().subject;
    for (const Fact* look : looks_at(sheet, thing)) {
      looks[thing] |= look_seen | (is_far(look) ? 0 : look_near) |
                      (is_fresh(look) ? look_fresh : 0) | (is_push(look) ? look_pushed : 0);
    }
  }
  cbor::Array list;
  for (const auto& [thing, bits] : looks) list.push_back(cbor::Array{thing, bits});
  if (!list.empty()) row[at(coverage_columns, "looks")] = cbor::encode(cbor::Value(list));
}

/// Done: all has a look, and there is one. Skipped: the rest was said to be not reached.
void put_state(const World& world, const Sheet& sheet, Row& row) {
  bool all_seen = true;
  bool all_excused = true;
  for (const auto* things : {&sheet.parts, &sheet.bays}) {
    for (const Uuid& thing : *things) {
      if (!looks_at(sheet, thing).empty()) continue;
      all_seen = false;
      all_excused = all_excused && says_not_reached(sheet, thing);
    }
  }
  bool any_look = !looks_at(sheet, sheet.post).empty();
  for (const auto* things : {&sheet.parts, &sheet.bays}) {
    for (const Uuid& thing : *things) any_look = any_look || !looks_at(sheet, thing).empty();
  }
  const bool done = all_seen && any_look;
  const bool skipped = !done && (skipped_whole(world, sheet) || (!all_seen && all_excused));
  row[at(coverage_columns, "done")] = std::int64_t{done ? 1 : 0};
  row[at(coverage_columns, "skipped")] = std::int64_t{skipped ? 1 : 0};
}

/// The visits of one post in order of their first record there: a fresh look ends the count of a
/// part, and so does a visit in which it was not to be looked at.
void put_post(const World& world, std::vector<Sheet>& sheets) {
  std::sort(sheets.begin(), sheets.end(), [](const Sheet& a, const Sheet& b) {
    return std::pair(a.facts.front()->time.t, a.visit) <
           std::pair(b.facts.front()->time.t, b.visit);
  });
  std::map<Uuid, std::int64_t> since;
  for (const Sheet& sheet : sheets) {
    std::map<Uuid, std::int64_t> now;
    for (const Uuid& part : sheet.parts) {
      const Facts looks = looks_at(sheet, part);
      if (!std::any_of(looks.begin(), looks.end(), is_fresh)) now[part] = since[part] + 1;
    }
    since = now;
    Row row = sheet_row(world, sheet);
    put_looks(sheet, row);
    put_state(world, sheet, row);
    cbor::Array list;
    std::int64_t most = 0;
    for (const auto& [part, visits] : now) {
      list.push_back(cbor::Array{part, visits});
      most = std::max(most, visits);
    }
    if (!list.empty()) row[at(coverage_columns, "since_fresh")] = cbor::encode(cbor::Value(list));
    row[at(coverage_columns, "since_fresh_max")] = most;
    world.put(table_coverage, row);
  }
}

std::optional<std::int64_t> over_since(const World& world, const std::vector<Uuid>& visits) {
  std::optional<std::int64_t> last;
  for (const Uuid& visit : visits) {
    const auto row = world.store.row(table_visit, std::vector<Cell>{visit});
    const auto sealed = row ? number_at(*row, at(visit_columns, "sealed_t")) : std::nullopt;
    if (!sealed) return std::nullopt;
    last = std::max(last.value_or(*sealed), *sealed);
  }
  return last;
}

/// The visits, by the one that stands for all that are joined.
using Members = std::map<Uuid, std::vector<Uuid>>;

Members members_of(const World& world) {
  Members members;
  const std::map<Uuid, Uuid> groups = ones(world, kind::same_visit);
  for (const Fact& fact : world.facts) {
    const auto visit = visit_of(fact.record());
    if (visit && !groups.contains(*visit)) members[*visit] = {*visit};
  }
  for (const auto& [visit, one] : groups) members[one].push_back(visit);
  return members;
}

/// What these visits say of the things of the sheet, or of the run as not reached.
Facts facts_on(const World& world, const Sheet& sheet, const std::vector<Uuid>& visits) {
  Facts facts;
  for (const Fact& fact : world.facts) {
    const auto visit = visit_of(fact.record());
    if (!visit || !contains(visits, *visit) || !fact.counts() || !is_counted(fact.kind())) continue;
    const Uuid& subject = fact.record().subject;
    const bool here =
        subject == sheet.post || contains(sheet.bays, subject) || contains(sheet.parts, subject);
    const bool run = fact.kind() == kind::not_reached && world.parent_of(sheet.post) == subject;
    if (here || run) facts.push_back(&fact);
  }
  return facts;
}

/// All that stands at a post, with nothing said of it yet.
Sheet blank_sheet(const World& world, const Uuid& post) {
  Sheet sheet{{}, post, {}, {}, {}, {}};
  for (const auto& [bay, row] : world.entities) {
    if (begins_at(world, bay, post)) sheet.bays.push_back(bay);
  }
  std::vector<Uuid> places = sheet.bays;
  places.push_back(post);
  sheet.parts = standing_in(world, code_of(EntityType::component), places);
  return sheet;
}

}  // namespace

void put_coverage(World& world) {
  const Members members = members_of(world);
  for (const auto& [id, row] : world.entities) {
    const auto begins = id_in(rest_of(row), bay_field::from_post);
    if (is_a(world, id, code_of(EntityType::bay)) && begins)
      world.put(table_bay_after, Row{*begins, id});
    if (!is_a(world, id, code_of(EntityType::post))) continue;
    const Sheet blank = blank_sheet(world, id);
    std::vector<Sheet> sheets;
    for (const auto& [one, visits] : members) {
      Sheet sheet = blank;
      sheet.visit = one;
      sheet.facts = facts_on(world, sheet, visits);
      if (sheet.facts.empty()) continue;
      sheet.over_t = over_since(world, visits);
      sheet.parts = wanted(world, sheet, blank.parts);
      sheet.bays = wanted(world, sheet, blank.bays);
      sheets.push_back(std::move(sheet));
    }
    put_post(world, sheets);
  }
}

}  // namespace kneerail::fold::naive
