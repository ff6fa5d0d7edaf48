#include <algorithm>

#include "core/fold/folding.h"

// Tables of one record a row, with what others say about it: answered, ended, taken, marked; the
// next visit of a site; the stock of a depot.

namespace kneerail::fold {

namespace {

/// The first, by key, of the counting records of a kind about this one.
std::optional<Uuid> first_of(Folding& folding, const Uuid& subject, int kind) {
  std::optional<MergeKey> first;
  for (const Fact& one : folding.facts_of(subject, kind)) {
    if (one.counts() && (!first || one.key < *first)) first = one.key;
  }
  return first ? std::optional(first->record) : std::nullopt;
}

std::optional<Uuid> taken_by(Folding& folding, const Fact& given) {
  std::optional<MergeKey> first;
  for (const Fact& one : folding.facts_of(given.record().subject, kind::role_taken)) {
    const std::vector<Uuid> taken = ids_in(one.shown, 1);
    const bool names = std::find(taken.begin(), taken.end(), given.id()) != taken.end();
    if (names && one.counts() && (!first || one.key < *first)) first = one.key;
  }
  return first ? std::optional(first->record) : std::nullopt;
}

std::vector<const Fact*> heads_of(const std::vector<Fact>& marks) {
  std::vector<const Fact*> heads;
  std::vector<const Fact*> all;
  for (const Fact& one : marks) {
    if (!one.counts()) continue;
    all.push_back(&one);
    const bool seen = std::any_of(marks.begin(), marks.end(), [&one](const Fact& other) {
      const std::vector<Uuid> bases = ids_in(other.shown, 2);
      return other.counts() && other.id() != one.id() &&
             std::find(bases.begin(), bases.end(), one.id()) != bases.end();
    });
    if (!seen) heads.push_back(&one);
  }
  return heads.empty() ? all : heads;
}

Cell marks_cell(const Fact& marks) {
  return cell_of(marks.shown.find(1), Type::bytes);
}

void fill_photograph(Folding& folding, const Fact& photograph, Row& row) {
  const std::vector<Fact> marks = folding.facts_of(photograph.id(), kind::marks_set);
  const std::vector<const Fact*> heads = heads_of(marks);
  Disagreeing two{photograph.id(), disagreement::marks, 0, photograph.placed.feed, {}, {}};
  if (heads.empty()) {
    put_disagreement(folding, two);
    return;
  }
  const Fact* winner = *std::max_element(
      heads.begin(), heads.end(), [](const Fact* a, const Fact* b) { return a->key < b->key; });
  two.winner = winner->id();
  const bool equal = std::all_of(heads.begin(), heads.end(), [winner](const Fact* head) {
    return marks_cell(*head) == marks_cell(*winner);
  });
  if (!equal) {
    for (const Fact* head : heads) two.records.push_back(head->id());
  }
  const auto named = put_disagreement(folding, two);
  for (const Fact* head : heads) {
    if (named == head->id()) winner = head;
  }
  in(row, at(photograph_columns, "marks")) = marks_cell(*winner);
  in(row, at(photograph_columns, "marks_by")) = winner->id();
}

void fill(Folding& folding, const Fact& fact, Row& row) {
  switch (fact.kind()) {
    case kind::visit_opened:
      fill_visit(folding, fact, row);
      break;
    case kind::photograph:
      fill_photograph(folding, fact, row);
      break;
    case kind::told: {
      const auto answer = first_of(folding, fact.id(), kind::told_answered);
      in(row, at(told_columns, "open")) = std::int64_t{answer ? 0 : 1};
      in(row, at(told_columns, "answered_by")) = cell(answer);
      break;
    }
    case kind::hold: {
      const auto end = first_of(folding, fact.id(), kind::hold_ended);
      in(row, at(hold_columns, "standing")) = std::int64_t{end ? 0 : 1};
      in(row, at(hold_columns, "ended_by")) = cell(end);
      break;
    }
    case kind::work:
      fill_work(folding, fact, row);
      break;
    case kind::role_given:
      in(row, at(person_role_columns, "taken_by")) = cell(taken_by(folding, fact));
      break;
    default:
      break;
  }
}

}  // namespace

void derive_plain(Folding& folding, const Job& job) {
  const auto fact = folding.fact(job.a);
  if (!fact) return;
  const Layout* layout = layout_of(fact->kind());
  if (layout == nullptr) return;
  switch (fact->kind()) {
    case kind::finding:
    case kind::closed:
    case kind::strike_opened:
    case kind::next_visit:
      return;  // made by the rules of their own
    default:
      break;
  }
  Row row = plain_row(*fact, *layout);
  fill(folding, *fact, row);
  if (fact->kind() == kind::visit_opened) {
    put_visit(folding, row);
  } else {
    folding.put(layout->table, row);
  }
}

void derive_next_visits(Folding& folding, const Job& job) {
  const std::vector<Fact> all = folding.facts_of(job.a, kind::next_visit);
  std::vector<const Fact*> heads;
  const Fact* current = nullptr;
  for (const Fact& one : all) {
    if (!one.counts()) continue;
    if (current == nullptr || current->key < one.key) current = &one;
    const bool seen = std::any_of(all.begin(), all.end(), [&one](const Fact& other) {
      return other.counts() && may_have_seen(other, one);
    });
    if (!seen) heads.push_back(&one);
  }
  Disagreeing two{job.a, disagreement::next_visit, 0, {}, {}, {}};
  if (current != nullptr) {
    two.feed = current->placed.feed;
    two.winner = current->id();
    const bool equal = std::all_of(heads.begin(), heads.end(), [&heads](const Fact* head) {
      return number_in(head->shown, 1) == number_in(heads.front()->shown, 1);
    });
    if (!equal) {
      for (const Fact* head : heads) two.records.push_back(head->id());
    }
  }
  const auto named = put_disagreement(folding, two);
  for (const Fact& one : all) {
    Row row = plain_row(one, *layout_of(kind::next_visit));
    in(row, at(next_visit_columns, "current")) = std::int64_t{named == one.id() ? 1 : 0};
    folding.put(table_next_visit, row);
  }
}

namespace {

constexpr std::int64_t why_counted = 5;

const Fact* last_of(const std::vector<const Fact*>& countings) {
  const auto last = std::max_element(countings.begin(), countings.end(),
                                     [](const Fact* a, const Fact* b) { return a->key < b->key; });
  return last == countings.end() ? nullptr : *last;
}

/// Takes away what may stand under a record that is not the last counting of its shelf.
void forget_counting(Folding& folding, const Fact& move) {
  folding.erase(table_disagreement,
                {move.id(), std::int64_t{disagreement::counted_twice}, std::int64_t{0}});
}

const Fact* decide_counting(Folding& folding, const std::vector<const Fact*>& countings,
                            const Fact& last) {
  Disagreeing two{last.id(), disagreement::counted_twice, 0, last.placed.feed, {}, last.id()};
  bool differ = false;
  for (const Fact* one : countings) {
    const bool seen = std::any_of(countings.begin(), countings.end(), [one](const Fact* other) {
      return other != one && may_have_seen(*other, *one);
    });
    if (seen) continue;
    two.records.push_back(one->id());
    differ = differ || number_in(one->shown, 2) != number_in(last.shown, 2);
  }
  if (!differ) two.records.clear();
  const auto named = put_disagreement(folding, two);
  for (const Fact* one : countings) {
    if (named == one->id()) return one;
  }
  return &last;
}

}  // namespace

void derive_stock(Folding& folding, const Job& job) {
  std::vector<Fact> moves;
  for (Fact& move : folding.facts_about(job.b, kind::stock_moved)) {
    if (move.record().subject != job.a) continue;
    if (!move.counts()) {
      forget_counting(folding, move);
      continue;
    }
    moves.push_back(std::move(move));
  }
  std::vector<const Fact*> countings;
  for (const Fact& move : moves) {
    if (number_in(move.shown, 3) == why_counted) countings.push_back(&move);
  }
  const Fact* last = last_of(countings);
  for (const Fact& move : moves) {
    if (&move != last) forget_counting(folding, move);
  }
  const Fact* counted = last == nullptr ? nullptr : decide_counting(folding, countings, *last);
  std::optional<Row> row;
  if (!moves.empty()) {
    std::int64_t count = counted ? number_in(counted->shown, 2).value_or(0) : 0;
    for (const Fact& move : moves) {
      const bool moved = number_in(move.shown, 3) != why_counted;
      if (moved && (counted == nullptr || counted->key < move.key)) {
        count += number_in(move.shown, 2).value_or(0);
      }
    }
    row = Row{job.a, job.b, moves.front().placed.feed, count, Cell()};
    if (counted != nullptr) in(*row, at(stock_columns, "counted_by")) = counted->id();
  }
  folding.put_or_erase(table_stock, row, {job.a, job.b});
}

}  // namespace kneerail::fold
