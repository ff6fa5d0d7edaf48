#include <algorithm>

#include "core/fold/naive.h"

namespace kneerail::fold::naive {

std::map<Uuid, Uuid> ones(const World& world, int kind) {
  std::map<Uuid, Uuid> one;
  const auto name = [&one](const Uuid& id) { return one.try_emplace(id, id).first->second; };
  for (const Fact* fact : world.of_kind(kind)) {
    const auto other = about_of(fact->placed);
    if (!fact->counts() || !other) continue;
    const Uuid a = name(fact->record().subject);
    const Uuid b = name(*other);
    for (auto& [id, smallest] : one) {
      if (smallest == a || smallest == b) smallest = std::min(a, b);
    }
  }
  return one;
}

namespace {

using PartKey = std::tuple<Uuid, Uuid, Uuid>;  // visit, person, device

struct Part {
  Facts openings;
  Facts seals;
};

bool in_part(const Fact& fact, const PartKey& key) {
  return PartKey{visit_of(fact.record()).value_or(Uuid{}), fact.record().who, fact.placed.device} ==
         key;
}

const Fact* smallest_key(const Facts& facts) {
  const Fact* smallest = nullptr;
  for (const Fact* fact : facts) {
    if (smallest == nullptr || fact->key < smallest->key) smallest = fact;
  }
  return smallest;
}

/// The feed is that of any record of the part; a visit has one feed.
Row part_row(const World& world, const PartKey& key, const Part& part) {
  Row row(std::size(visit_part_columns));
  row[at(visit_part_columns, "visit")] = std::get<0>(key);
  row[at(visit_part_columns, "person")] = std::get<1>(key);
  row[at(visit_part_columns, "dev")] = std::get<2>(key);
  row[at(visit_part_columns, "sealed_again")] = std::int64_t{0};
  row[at(visit_part_columns, "after_seal")] = std::int64_t{0};
  if (const Fact* opening = smallest_key(part.openings)) {
    row[at(visit_part_columns, "feed")] = opening->placed.feed;
    row[at(visit_part_columns, "opened")] = opening->id();
    row[at(visit_part_columns, "joined_t")] = opening->time.t;
    if (opening->kind() == kind::visit_joined) {
      row[at(visit_part_columns, "task")] = cell_of(opening->shown.find(1), Type::bytes);
    }
    const std::vector<std::int64_t> aboard = numbers_in(opening->shown, 6);
    if (!aboard.empty()) row[at(visit_part_columns, "aboard_site")] = aboard[0];
    if (aboard.size() > 1) row[at(visit_part_columns, "aboard_organisation")] = aboard[1];
    row[at(visit_part_columns, "program")] = cell_of(opening->shown.find(7), Type::text);
  }
  if (const Fact* seal = largest_key(part.seals)) {
    const std::int64_t last = number_in(seal->record().body, 2).value_or(seal->placed.seq);
    std::int64_t after = 0;
    for (const Fact& fact : world.facts) {
      if (in_part(fact, key) && fact.kind() != kind::sealed && fact.placed.seq > last) ++after;
    }
    row[at(visit_part_columns, "feed")] = seal->placed.feed;
    row[at(visit_part_columns, "sealed")] = seal->id();
    row[at(visit_part_columns, "last_seq")] = last;
    row[at(visit_part_columns, "sealed_t")] = seal->time.t;
    row[at(visit_part_columns, "sealed_again")] = static_cast<std::int64_t>(part.seals.size()) - 1;
    row[at(visit_part_columns, "after_seal")] = after;
  }
  return row;
}

std::map<PartKey, Part> parts_of(const World& world) {
  std::map<PartKey, Part> parts;
  for (const Fact& fact : world.facts) {
    const PartKey key{visit_of(fact.record()).value_or(Uuid{}), fact.record().who,
                      fact.placed.device};
    if (fact.kind() == kind::visit_opened || fact.kind() == kind::visit_joined) {
      parts[key].openings.push_back(&fact);
    } else if (fact.kind() == kind::sealed && !fact.held()) {
      parts[key].seals.push_back(&fact);
    }
  }
  return parts;
}

/// A visit is complete when every part of it is sealed.
void put_sealed(const std::map<PartKey, Part>& parts, const Uuid& visit, Row& row) {
  std::set<std::int64_t> sealed;
  bool complete = true;
  for (const auto& [key, part] : parts) {
    if (std::get<0>(key) != visit) continue;
    const Fact* seal = largest_key(part.seals);
    complete = complete && seal != nullptr;
    if (seal != nullptr) sealed.insert(seal->time.t);
  }
  complete = complete && !sealed.empty();
  row[at(visit_columns, "complete")] = std::int64_t{complete ? 1 : 0};
  if (complete) row[at(visit_columns, "sealed_t")] = *sealed.rbegin();
}

}  // namespace

void put_visits(World& world) {
  const std::map<PartKey, Part> parts = parts_of(world);
  for (const auto& [key, part] : parts) world.put(table_visit_part, part_row(world, key, part));
  const std::map<Uuid, Uuid> groups = ones(world, kind::same_visit);
  std::map<Uuid, int> sizes;
  for (const auto& [visit, one] : groups) ++sizes[one];
  for (const auto& [visit, one] : groups) {
    if (sizes[one] > 1) world.put(table_visit_group, Row{visit, one});
  }
  for (const Fact* visit : world.of_kind(kind::visit_opened)) {
    Row row = plain_row(*visit, *layout_of(kind::visit_opened));
    const auto one = groups.find(visit->id());
    if (one != groups.end() && one->second != visit->id()) {
      row[at(visit_columns, "merged_into")] = one->second;
    }
    put_sealed(parts, visit->id(), row);
    std::set<std::int64_t> times;
    for (const Fact& fact : world.facts) {
      if (visit_of(fact.record()) == visit->id()) times.insert(fact.time.t);
    }
    row[at(visit_columns, "first_t")] = *times.begin();
    row[at(visit_columns, "last_t")] = *times.rbegin();
    world.put(table_visit, row);
  }
}

namespace {

void put_latest(const World& world, const Fact& reading) {
  const Row row = reading_row(reading);
  world.put(table_latest, Row{reading.record().subject, std::int64_t{reading.kind()},
                              place_of_reading(row), reading.id(), reading.time.t, reading.key.eff,
                              reading.key.l, reading.key.c, reading.key.dev});
}

std::int64_t grade_of(const Fact& fact) {
  return number_in(fact.shown, 2).value_or(0);
}

/// In order of (t, key): the last one's visit is the latest.
void put_grade(const World& world, const Uuid& subject, const Facts& grades,
               const std::map<Uuid, Uuid>& groups) {
  const auto visit_of_grade = [&groups](const Fact& fact) {
    const auto visit = id_in(fact.record().body, 1);
    if (!visit) return fact.id();
    const auto one = groups.find(*visit);
    return one == groups.end() ? *visit : one->second;
  };
  std::map<Uuid, const Fact*> last_of_person;
  for (const Fact* grade : grades) {
    if (visit_of_grade(*grade) == visit_of_grade(*grades.back())) {
      last_of_person[grade->record().who] = grade;
    }
  }
  std::vector<Uuid> ids;
  std::set<std::int64_t> values;
  const Fact* counts = nullptr;
  for (const auto& [person, grade] : last_of_person) {
    ids.push_back(grade->id());
    values.insert(grade_of(*grade));
    if (counts == nullptr || std::pair(grade_of(*counts), counts->timed_key()) <
                                 std::pair(grade_of(*grade), grade->timed_key())) {
      counts = grade;
    }
  }
  if (values.size() < 2) ids.clear();
  const auto named =
      clash(world, {subject, disagreement::two_grades, 0, counts->placed.feed, ids, counts->id()});
  for (const auto& [person, grade] : last_of_person) {
    if (grade->id() == named) counts = grade;
  }
  put_latest(world, *counts);
}

}  // namespace

void put_readings(World& world) {
  std::map<Uuid, Facts> grades;
  for (const Fact& fact : world.facts) {
    if (!is_reading(fact.kind())) continue;
    world.put(table_reading, reading_row(fact));
    if (!fact.counts()) continue;
    if (fact.kind() == kind::grade) {
      grades[fact.record().subject].push_back(&fact);
    } else {
      put_latest(world, fact);  // the last written stays
    }
  }
  const std::map<Uuid, Uuid> groups = ones(world, kind::same_visit);
  for (const auto& [subject, of_subject] : grades) {
    put_grade(world, subject, of_subject, groups);
  }
}

}  // namespace kneerail::fold::naive
