#include <algorithm>

#include "core/fold/finding_rules.h"
#include "core/fold/folding.h"

// A hazard is open until a person ends that very hazard record. Made safe is not ended: it is open
// with something that holds people back. What others write about the finding is only ever added.

namespace kneerail::fold {

bool hold_people_back(const std::vector<std::int64_t>& measures, bool behind_barrier) {
  const auto has = [&measures](std::int64_t one) {
    return std::find(measures.begin(), measures.end(), one) != measures.end();
  };
  if (has(code_of(Measure::closed_off)) || has(code_of(Measure::propped)) ||
      has(code_of(Measure::guarded)))
    return true;
  return has(code_of(Measure::struck)) && behind_barrier;
}

namespace {

struct About {
  std::vector<Fact> raised;  ///< kind 36, whatever others say about them
  std::vector<Fact> ends;
  std::vector<Fact> safe;
  std::vector<Fact> looks;
};

std::vector<Fact> counting(std::vector<Fact> facts) {
  std::erase_if(facts, [](const Fact& fact) { return !fact.counts(); });
  return facts;
}

About about_finding(Folding& folding, const Uuid& finding) {
  return {folding.facts_of(finding, kind::hazard_raised),
          counting(folding.facts_of(finding, kind::finding_ended)),
          counting(folding.facts_of(finding, kind::made_safe)),
          counting(folding.facts_of(finding, kind::closure_look))};
}

struct Hazards {
  std::vector<Uuid> all;
  bool open = false;
  /// Everything that is open was raised after the last ending: what was done before that ending
  /// was for another hazard.
  std::optional<TimedKey> again_since;
};

Hazards hazards_of(const Fact& finding, const About& about) {
  std::vector<const Fact*> records;
  if (truth_in(finding.record().body, 4)) records.push_back(&finding);
  for (const Fact& raised : about.raised) records.push_back(&raised);
  std::vector<Uuid> ended;
  for (const Fact& end : about.ends) {
    for (const Uuid& hazard : ids_in(end.record().body, 4)) ended.push_back(hazard);
  }
  Hazards hazards;
  std::optional<TimedKey> first_open;
  for (const Fact* record : records) {
    hazards.all.push_back(record->id());
    if (std::find(ended.begin(), ended.end(), record->id()) != ended.end()) continue;
    hazards.open = true;
    if (!first_open || record->timed_key() < *first_open) first_open = record->timed_key();
  }
  for (const Fact& end : about.ends) {
    if (ids_in(end.record().body, 4).empty()) continue;
    const TimedKey when = end.timed_key();
    if (!hazards.again_since || *hazards.again_since < when) hazards.again_since = when;
  }
  if (!first_open || (hazards.again_since && *first_open < *hazards.again_since)) {
    hazards.again_since.reset();
  }
  return hazards;
}

/// The last look that says gone, unless one after it says put back.
std::optional<TimedKey> gone_since(const About& about) {
  std::optional<TimedKey> last;
  bool gone = false;
  for (const Fact& look : about.looks) {
    const auto how = number_in(look.shown, 1);
    if (how != code_of(HowItStands::put_back) && how != code_of(HowItStands::gone)) continue;
    if (last && look.timed_key() < *last) continue;
    last = look.timed_key();
    gone = how == code_of(HowItStands::gone);
  }
  return gone ? last : std::nullopt;
}

void put_measures(Folding& folding, const Fact& finding, const About& about, const Hazards& hazards,
                  Row& row) {
  const auto gone = gone_since(about);
  std::set<std::int64_t> all;
  std::vector<std::int64_t> standing;
  for (const Fact& safe : about.safe) {
    const bool before_gone = gone && safe.timed_key() < *gone;
    const bool of_before = hazards.again_since && safe.timed_key() < *hazards.again_since;
    for (const std::int64_t one : numbers_in(safe.shown, 1)) {
      all.insert(one);
      if (!before_gone && !of_before) standing.push_back(one);
    }
  }
  if (!all.empty()) {
    in(row, at(finding_columns, "measures")) =
        cbor::encode(cbor::Value(cbor::Array(all.begin(), all.end())));
  }
  std::int64_t state = hazard_state::none;
  if (!hazards.all.empty()) state = hazards.open ? hazard_state::open : hazard_state::ended;
  if (hazards.open) {
    const bool struck =
        std::find(standing.begin(), standing.end(), code_of(Measure::struck)) != standing.end();
    const bool barrier = struck && barrier_around(folding, finding.record().subject);
    if (hold_people_back(standing, barrier)) state = hazard_state::made_safe;
  }
  in(row, at(finding_columns, "hazard_state")) = state;
  if (!hazards.all.empty()) {
    in(row, at(finding_columns, "hazard_records")) = sorted_ids_cell(hazards.all);
  }
}

void put_told(const About& about, Row& row) {
  std::optional<std::int64_t> first;
  for (const Fact& safe : about.safe) {
    if (!safe.shown.has(2) && !safe.shown.has(5)) continue;
    first = std::min(first.value_or(safe.time.t), safe.time.t);
  }
  in(row, at(finding_columns, "told_first_t")) = cell(first);
}

void put_looks(const About& about, Row& row) {
  std::optional<TimedKey> stands;
  std::optional<MergeKey> asked;
  const auto take_look_again = [&](const Fact& fact, std::int64_t key) {
    const auto again = number_in(fact.shown, key);
    if (!again || (asked && fact.key < *asked)) return;
    asked = fact.key;
    in(row, at(finding_columns, "look_again_by_ms")) = *again;
  };
  const auto take_standing = [&stands](const Fact& fact) {
    if (!stands || *stands < fact.timed_key()) stands = fact.timed_key();
  };
  for (const Fact& safe : about.safe) {
    take_look_again(safe, 6);
    take_standing(safe);
  }
  for (const Fact& one : about.looks) {
    take_look_again(one, 2);
    if (number_in(one.shown, 1) != code_of(HowItStands::not_seen)) take_standing(one);
  }
  if (stands) in(row, at(finding_columns, "stands_by")) = stands->key.record;
}

void put_next_step(Folding& folding, const Uuid& finding, Row& row) {
  const std::vector<Fact> steps = counting(folding.facts_of(finding, kind::next_step));
  const auto last = std::max_element(steps.begin(), steps.end(),
                                     [](const Fact& a, const Fact& b) { return a.key < b.key; });
  if (last == steps.end()) return;
  in(row, at(finding_columns, "next_record")) = last->id();
  in(row, at(finding_columns, "next_step")) = cell(number_in(last->shown, 1));
  in(row, at(finding_columns, "mend_by_day")) = cell(number_in(last->shown, 2));
  in(row, at(finding_columns, "by_whom")) = cell_of(last->shown.find(4), Type::bytes);
  in(row, at(finding_columns, "by_whom_words")) = cell_of(last->shown.find(5), Type::text);
  in(row, at(finding_columns, "put_off")) = cell(number_in(last->shown, 6));
}

void put_end(const About& about, const Hazards& hazards, Row& row) {
  if (hazards.open || about.ends.empty()) return;
  const Fact& last =
      *std::max_element(about.ends.begin(), about.ends.end(),
                        [](const Fact& a, const Fact& b) { return a.timed_key() < b.timed_key(); });
  in(row, at(finding_columns, "ended_by")) = last.id();
  in(row, at(finding_columns, "ended_how")) = cell(number_in(last.shown, 1));
  in(row, at(finding_columns, "ended_on")) = cell(number_in(last.shown, 5));
}

}  // namespace

void derive_finding(Folding& folding, const Job& job) {
  const auto finding = folding.fact(job.a);
  if (!finding || finding->kind() != kind::finding) return;
  Row row = plain_row(*finding, *layout_of(kind::finding));
  const About about = about_finding(folding, job.a);
  const Hazards hazards = hazards_of(*finding, about);
  put_measures(folding, *finding, about, hazards, row);
  put_told(about, row);
  put_looks(about, row);
  put_next_step(folding, job.a, row);
  put_end(about, hazards, row);
  folding.put(table_finding, row);
}

}  // namespace kneerail::fold
