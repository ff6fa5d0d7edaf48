#include <algorithm>

#include "core/fold/naive.h"

// The judge's tables of one record a row, next visits and stock.

namespace kneerail::fold::naive {

namespace {

const Fact* smallest_key(const Facts& facts) {
  const Fact* smallest = nullptr;
  for (const Fact* fact : facts) {
    if (smallest == nullptr || fact->key < smallest->key) smallest = fact;
  }
  return smallest;
}

void fill_marks(const World& world, const Fact& photograph, Row& row) {
  const Facts all = world.counting(kind::marks_set, photograph.id());
  Facts heads;
  for (const Fact* one : all) {
    bool seen = false;
    for (const Fact* other : all) {
      seen = seen || (other != one && contains(ids_in(other->shown, 2), one->id()));
    }
    if (!seen) heads.push_back(one);
  }
  if (heads.empty()) heads = all;
  if (heads.empty()) return;
  const Fact* winner = largest_key(heads);
  std::vector<Uuid> ids;
  std::set<Cell> values;
  for (const Fact* head : heads) {
    ids.push_back(head->id());
    values.insert(cell_of(head->shown.find(1), Type::bytes));
  }
  if (values.size() < 2) ids.clear();
  const auto named = clash(
      world, {photograph.id(), disagreement::marks, 0, photograph.placed.feed, ids, winner->id()});
  for (const Fact* head : heads) {
    if (head->id() == named) winner = head;
  }
  row[at(photograph_columns, "marks")] = cell_of(winner->shown.find(1), Type::bytes);
  row[at(photograph_columns, "marks_by")] = winner->id();
}

void fill(const World& world, const Fact& fact, Row& row) {
  if (fact.kind() == kind::photograph) fill_marks(world, fact, row);
  if (fact.kind() == kind::told) {
    const Fact* answer = smallest_key(world.counting(kind::told_answered, fact.id()));
    row[at(told_columns, "open")] = std::int64_t{answer == nullptr ? 1 : 0};
    if (answer != nullptr) row[at(told_columns, "answered_by")] = answer->id();
  }
  if (fact.kind() == kind::hold) {
    const Fact* end = smallest_key(world.counting(kind::hold_ended, fact.id()));
    row[at(hold_columns, "standing")] = std::int64_t{end == nullptr ? 1 : 0};
    if (end != nullptr) row[at(hold_columns, "ended_by")] = end->id();
  }
  if (fact.kind() == kind::role_given) {
    Facts taking;
    for (const Fact* one : world.counting(kind::role_taken, fact.record().subject)) {
      if (contains(ids_in(one->shown, 1), fact.id())) taking.push_back(one);
    }
    if (const Fact* first = smallest_key(taking)) {
      row[at(person_role_columns, "taken_by")] = first->id();
    }
  }
}

/// Those that nobody else may have seen.
Facts unseen(const Facts& all) {
  Facts heads;
  for (const Fact* one : all) {
    bool seen = false;
    for (const Fact* other : all) seen = seen || (other != one && may_have_seen(*other, *one));
    if (!seen) heads.push_back(one);
  }
  return heads;
}

/// The ids, or none when all say the same under the key.
std::vector<Uuid> differing(const Facts& heads, std::int64_t key) {
  std::vector<Uuid> ids;
  std::set<std::optional<std::int64_t>> values;
  for (const Fact* head : heads) {
    ids.push_back(head->id());
    values.insert(number_in(head->shown, key));
  }
  return values.size() < 2 ? std::vector<Uuid>{} : ids;
}

void put_next_visits(const World& world, const Uuid& site) {
  const Facts all = world.counting(kind::next_visit, site);
  std::optional<Uuid> current;
  if (const Fact* last = largest_key(all)) {
    current = clash(world, {site, disagreement::next_visit, 0, last->placed.feed,
                            differing(unseen(all), 1), last->id()});
  }
  for (const Fact* one : world.of(kind::next_visit, site)) {
    Row row = plain_row(*one, *layout_of(kind::next_visit));
    row[at(next_visit_columns, "current")] = std::int64_t{current == one->id() ? 1 : 0};
    world.put(table_next_visit, row);
  }
}

}  // namespace

void put_plain(World& world) {
  std::set<Uuid> sites;
  for (const Fact& fact : world.facts) {
    const Layout* layout = layout_of(fact.kind());
    switch (fact.kind()) {
      case kind::finding:
      case kind::closed:
      case kind::strike_opened:
      case kind::visit_opened:
      case kind::work:
        continue;  // written with their own rules
      case kind::next_visit:
        sites.insert(fact.record().subject);
        continue;
      default:
        break;
    }
    if (layout == nullptr) continue;
    Row row = plain_row(fact, *layout);
    fill(world, fact, row);
    world.put(layout->table, row);
  }
  for (const Uuid& site : sites) put_next_visits(world, site);
}

namespace {

void put_stock_of(const World& world, const Uuid& depot, const Uuid& type) {
  Facts moves;
  Facts countings;
  for (const Fact* move : world.counting(kind::stock_moved, depot)) {
    if (about_of(move->placed) != type) continue;
    moves.push_back(move);
    if (number_in(move->shown, 3) == 5) countings.push_back(move);
  }
  if (moves.empty()) return;
  const Fact* counted = largest_key(countings);
  if (counted != nullptr) {
    const Facts heads = unseen(countings);
    std::vector<Uuid> ids;
    bool differ = false;
    for (const Fact* head : heads) {
      ids.push_back(head->id());
      differ = differ || number_in(head->shown, 2) != number_in(counted->shown, 2);
    }
    if (!differ) ids.clear();
    const auto named = clash(world, {counted->id(), disagreement::counted_twice, 0,
                                     counted->placed.feed, ids, counted->id()});
    if (named) counted = world.find(*named);
  }
  std::int64_t count = counted == nullptr ? 0 : number_in(counted->shown, 2).value_or(0);
  for (const Fact* move : moves) {
    const bool later = counted == nullptr || move->key > counted->key;
    if (later && number_in(move->shown, 3) != 5) count += number_in(move->shown, 2).value_or(0);
  }
  Row row{depot, type, largest_key(moves)->placed.feed, count, Cell()};
  if (counted != nullptr) row[at(stock_columns, "counted_by")] = counted->id();
  world.put(table_stock, row);
}

}  // namespace

void put_stock(World& world) {
  std::set<std::pair<Uuid, Uuid>> shelves;
  for (const Fact* move : world.of_kind(kind::stock_moved)) {
    if (const auto type = about_of(move->placed)) shelves.insert({move->record().subject, *type});
  }
  for (const auto& [depot, type] : shelves) put_stock_of(world, depot, type);
}

}  // namespace kneerail::fold::naive
