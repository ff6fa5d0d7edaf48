#include <algorithm>

#include "core/fold/folding.h"
#include "core/records/codes.h"
#include "core/records/made_safe.h"

// What keeps people out. A closure stands until a person opened it by name, or opened the strike it
// belongs to when all was back; no void, correction, review or retirement ends it. A closure that
// is only a sign, or was last seen gone, stands but holds nobody.

namespace kneerail::fold {

namespace {

constexpr int depth_max = 8;
constexpr std::int64_t strike_open = 3;

struct Looks {
  bool gone = false;
  std::optional<Uuid> last;
  std::optional<std::int64_t> look_again_ms;
};

Looks looks_at(Folding& folding, const Fact& closure) {
  Looks looks;
  std::optional<TimedKey> last;
  std::optional<TimedKey> last_said;
  MergeKey asked = closure.key;
  looks.look_again_ms = number_in(closure.shown, 5);
  for (const Fact& look : folding.facts_of(closure.id(), kind::closure_look)) {
    if (!look.counts()) continue;
    const TimedKey when = look.timed_key();
    if (!last || *last < when) last = when;
    const auto how = number_in(look.shown, 1);
    if ((how == code_of(HowItStands::put_back) || how == code_of(HowItStands::gone)) &&
        (!last_said || *last_said < when)) {
      last_said = when;
      looks.gone = how == code_of(HowItStands::gone);
    }
    const auto again = number_in(look.shown, 2);
    if (again && (!looks.look_again_ms || asked < look.key)) {
      asked = look.key;
      looks.look_again_ms = again;
    }
  }
  if (last) looks.last = last->key.record;
  return looks;
}

std::optional<Uuid> opened_by(Folding& folding, const Fact& closure) {
  std::optional<TimedKey> first;
  for (const Fact& opening : folding.facts_of(closure.id(), kind::opened)) {
    if (opening.counts() && (!first || opening.timed_key() < *first)) first = opening.timed_key();
  }
  if (first) return first->key.record;
  const auto about = about_of(closure.placed);
  const auto strike = about ? folding.row(table_strike, {*about}) : std::nullopt;
  if (!strike || number_in(*strike, at(strike_columns, "state")) != strike_open) return {};
  return id_at(*strike, at(strike_columns, "opened_by"));
}

}  // namespace

void derive_closure(Folding& folding, const Job& job) {
  const auto closure = folding.fact(job.a);
  if (!closure || closure->kind() != kind::closed) return;
  Row row = plain_row(*closure, *layout_of(kind::closed));
  const Looks looks = looks_at(folding, *closure);
  const auto opened = opened_by(folding, *closure);
  const bool barrier = !opened && !looks.gone &&
                       number_in(closure->record().body, 4) != code_of(ClosedByWhat::sign_only);
  in(row, at(closure_columns, "look_again_by_ms")) = cell(looks.look_again_ms);
  in(row, at(closure_columns, "standing")) = std::int64_t{opened ? 0 : 1};
  in(row, at(closure_columns, "barrier")) = std::int64_t{barrier ? 1 : 0};
  in(row, at(closure_columns, "last_look")) = cell(looks.last);
  in(row, at(closure_columns, "opened_by")) = cell(opened);
  if (!folding.put(table_closure, row)) return;
  const Uuid& subject = closure->record().subject;
  ask_findings_under(folding, subject);
  const auto entity = folding.row(table_entity, {subject});
  const auto parent = entity ? id_at(*entity, at(entity_columns, "parent")) : std::nullopt;
  for (const Uuid& run : {subject, parent.value_or(subject)}) {
    for (const Row& strike :
         folding.rows(table_fact, fact_by_subject, {run, std::int64_t{kind::strike_opened}})) {
      folding.ask({.stage = Stage::gap, .a = id_in(strike, at(fact_columns, "record"))});
    }
  }
}

bool barrier_around(Folding& folding, const Uuid& subject) {
  Uuid around = subject;
  for (int depth = 0; depth < depth_max; ++depth) {
    const std::vector<Row> closures = folding.rows(table_closure, 0, {around});
    const bool stands = std::any_of(closures.begin(), closures.end(), [](const Row& closure) {
      return number_in(closure, at(closure_columns, "barrier")) != 0;
    });
    if (stands) return true;
    const auto entity = folding.row(table_entity, {around});
    const auto parent = entity ? id_at(*entity, at(entity_columns, "parent")) : std::nullopt;
    if (!parent) return false;
    around = *parent;
  }
  return false;
}

void ask_findings_under(Folding& folding, const Uuid& entity) {
  std::vector<Uuid> under{entity};
  std::set<Uuid> seen{entity};
  for (std::size_t next = 0; next < under.size(); ++next) {
    const Uuid one = under[next];
    for (const Row& row :
         folding.rows(table_fact, fact_by_subject, {one, std::int64_t{kind::finding}})) {
      folding.ask({.stage = Stage::finding, .a = id_in(row, at(fact_columns, "record"))});
    }
    for (const Row& child : folding.rows(table_entity, entity_by_parent, {one})) {
      const Uuid id = id_in(child, at(entity_columns, "id"));
      if (seen.insert(id).second) under.push_back(id);
    }
  }
}

}  // namespace kneerail::fold
