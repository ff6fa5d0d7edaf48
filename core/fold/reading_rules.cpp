#include <algorithm>
#include <map>

#include "core/fold/folding.h"

// Readings never overwrite readings. `latest` is the last that counts by (t, key); for grades it is
// the one that counts of the latest visit: each person's last, of these the worst, until a settling
// names one. A reading that came in as the last of its place only needs a look at the row of
// latest; everything else derives that row again from all readings of the place.

namespace kneerail::fold {

namespace {

bool counts(const Row& row) {
  return number_in(row, at(reading_columns, "held")) == 0 &&
         !id_at(row, at(reading_columns, "voided_by"));
}

TimedKey when(const Row& row) {
  return {number_in(row, at(reading_columns, "t")), key_of_reading(row)};
}

TimedKey when_of_latest(const Row& row) {
  return {number_in(row, at(latest_columns, "t")),
          {number_in(row, at(latest_columns, "eff")), number_in(row, at(latest_columns, "l")),
           number_in(row, at(latest_columns, "c")), id_in(row, at(latest_columns, "dev")),
           id_in(row, at(latest_columns, "reading"))}};
}

Row latest_row(const Row& reading) {
  const MergeKey key = key_of_reading(reading);
  return Row{in(reading, at(reading_columns, "subject")),
             in(reading, at(reading_columns, "kind")),
             place_of_reading(reading),
             key.record,
             in(reading, at(reading_columns, "t")),
             key.eff,
             key.l,
             key.c,
             key.dev};
}

Job latest_job(const Row& reading) {
  return {.stage = Stage::latest,
          .a = id_in(reading, at(reading_columns, "subject")),
          .n = number_in(reading, at(reading_columns, "kind")),
          .m = place_of_reading(reading)};
}

/// What else a new or changed reading bears on.
void ask_dependents(Folding& folding, const Row& row) {
  const Uuid subject = id_in(row, at(reading_columns, "subject"));
  if (folding.row(table_retirement, {subject})) {
    folding.ask({.stage = Stage::seen_after, .a = subject});
  }
  if (number_in(row, at(reading_columns, "kind")) == kind::hand_load) {
    for (const Row& step :
         folding.rows(table_fact, fact_by_subject, {subject, std::int64_t{kind::strike_step}})) {
      if (const auto strike = id_at(step, at(fact_columns, "about"))) {
        folding.ask({.stage = Stage::strike, .a = *strike});
      }
    }
  }
  folding.touch(subject);
}

/// The coverage that a reading has a part in; null without a visit.
News* news_of(Folding& folding, const Row& row) {
  const auto visit = id_at(row, at(reading_columns, "visit"));
  return visit ? &folding.news_of({id_in(row, at(reading_columns, "subject")), *visit}) : nullptr;
}

void take_as_latest(Folding& folding, const Row& row) {
  if (number_in(row, at(reading_columns, "kind")) == kind::grade) {
    folding.ask(latest_job(row));
    return;
  }
  if (!counts(row)) return;
  const auto kept =
      folding.row(table_latest, {in(row, at(reading_columns, "subject")),
                                 in(row, at(reading_columns, "kind")), place_of_reading(row)});
  if (!kept || when_of_latest(*kept) < when(row)) folding.put_unseen(table_latest, latest_row(row));
}

void replace_reading(Folding& folding, const Row& before, const Row& now) {
  if (before == now) return;
  folding.put_unseen(table_reading, now);
  folding.ask(latest_job(before));
  folding.ask(latest_job(now));
  ask_dependents(folding, now);
  if (News* news = news_of(folding, now)) news->again = true;
  const auto visit = id_at(now, at(reading_columns, "visit"));
  if (visit && in(before, at(reading_columns, "t")) != in(now, at(reading_columns, "t"))) {
    folding.respan(*visit);
  }
}

}  // namespace

void add_reading(Folding& folding, const PlacedRecord& placed) {
  const auto kept = folding.row(table_reading, {placed.record.id});
  if (kept) {
    const PlacedRecord before = placed_of_reading(*kept);
    if (!replaces(before, placed)) return;
    PlacedRecord now = before;
    now.feed = placed.feed;
    now.device = placed.device;
    now.seq = placed.seq;
    now.stamp = placed.stamp;
    replace_reading(folding, *kept, reading_row(folding.loaded(now)));
    ask_after_seal(folding, before);
  } else {
    Row row = reading_row(folding.loaded(placed));
    take_as_latest(folding, row);
    ask_dependents(folding, row);
    if (News* news = news_of(folding, row)) take_reading(row, news->tally);
    if (const auto visit = visit_of(placed.record)) {
      folding.widen(*visit, number_in(row, at(reading_columns, "t")));
    }
    folding.put_unseen(table_reading, std::move(row));
  }
  ask_after_seal(folding, placed);
}

void refresh_reading(Folding& folding, const Row& row) {
  replace_reading(folding, row, reading_row(folding.loaded(placed_of_reading(row))));
}

namespace {

const Row* last_of(const std::vector<const Row*>& rows) {
  const auto last = std::max_element(
      rows.begin(), rows.end(), [](const Row* a, const Row* b) { return when(*a) < when(*b); });
  return last == rows.end() ? nullptr : *last;
}

/// Readings without a visit stand alone.
Uuid visit_of_row(Folding& folding, const Row& row) {
  const auto visit = id_at(row, at(reading_columns, "visit"));
  return visit ? one_visit(folding, *visit) : id_in(row, at(reading_columns, "record"));
}

std::int64_t grade_of(const Row& row) {
  return number_in(row, at(reading_columns, "v1"));
}

const Row* grade_that_counts(Folding& folding, const Uuid& subject,
                             const std::vector<const Row*>& all) {
  Disagreeing two{subject, disagreement::two_grades, 0, {}, {}, {}};
  const Row* last = last_of(all);
  if (last == nullptr) {
    put_disagreement(folding, two);
    return nullptr;
  }
  const Uuid visit = visit_of_row(folding, *last);
  std::map<Uuid, const Row*> by_person;
  for (const Row* row : all) {
    if (visit_of_row(folding, *row) != visit) continue;
    const Row*& kept = by_person[id_in(*row, at(reading_columns, "who"))];
    if (kept == nullptr || when(*kept) < when(*row)) kept = row;
  }
  const Row* worst = nullptr;
  bool differ = false;
  for (const auto& [person, row] : by_person) {
    differ = differ || grade_of(*row) != grade_of(*by_person.begin()->second);
    const bool worse = worst == nullptr || grade_of(*worst) < grade_of(*row) ||
                       (grade_of(*worst) == grade_of(*row) && when(*worst) < when(*row));
    if (worse) worst = row;
  }
  two.feed = id_in(*worst, at(reading_columns, "feed"));
  two.winner = id_in(*worst, at(reading_columns, "record"));
  if (differ) {
    for (const auto& [person, row] : by_person) {
      two.records.push_back(id_in(*row, at(reading_columns, "record")));
    }
  }
  const auto named = put_disagreement(folding, two);
  for (const auto& [person, row] : by_person) {
    if (id_in(*row, at(reading_columns, "record")) == named) worst = row;
  }
  return worst;
}

}  // namespace

void derive_latest(Folding& folding, const Job& job) {
  const std::vector<Row> rows = folding.rows(table_reading, reading_by_subject, {job.a, job.n});
  std::vector<const Row*> all;
  for (const Row& row : rows) {
    if (counts(row) && place_of_reading(row) == job.m) all.push_back(&row);
  }
  const Row* shown = job.n == kind::grade ? grade_that_counts(folding, job.a, all) : last_of(all);
  const auto row = shown != nullptr ? std::optional(latest_row(*shown)) : std::nullopt;
  if (folding.put_or_erase(table_latest, row, {job.a, job.n, job.m})) folding.touch(job.a);
}

}  // namespace kneerail::fold
