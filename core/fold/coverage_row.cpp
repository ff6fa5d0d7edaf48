#include <algorithm>

#include "core/fold/coverage.h"
#include "core/fold/folding.h"

// What a visit has of a post. A post is done when each of its parts, each bay after it and each
// part of those has a look of this visit by a person. Whoever was near, pushed or only said "as
// last time" is counted apart. A visit that is sealed is held to the register as it stood then: a
// part that came or went later does not open it again.

namespace kneerail::fold {

namespace {

void take_subject(Folding& folding, const Uuid& visit, const Uuid& subject, Tally& tally) {
  for (const Row& row : folding.rows(table_reading, reading_by_visit, {visit, subject})) {
    take_reading(row, tally);
  }
  for (const Row& row : folding.rows(table_fact, fact_by_visit, {visit, subject})) {
    if (!is_counted(number_in(row, at(fact_columns, "kind")))) continue;
    take_fact(folding.loaded(placed_of_fact(row)), tally);
  }
}

/// Only what says that the whole run was not reached.
void take_run(Folding& folding, const Uuid& visit, const Uuid& run, Tally& tally) {
  for (const Row& row : folding.rows(table_fact, fact_by_visit, {visit, run})) {
    if (number_in(row, at(fact_columns, "kind")) != kind::not_reached) continue;
    take_fact(folding.loaded(placed_of_fact(row)), tally);
  }
}

/// When the last part of a visit was sealed; nothing while one is open.
std::optional<std::int64_t> over_since(Folding& folding, const std::vector<Uuid>& visits) {
  std::optional<std::int64_t> last;
  for (const Uuid& visit : visits) {
    const auto row = folding.row(table_visit, {visit});
    const auto sealed = row ? number_at(*row, at(visit_columns, "sealed_t")) : std::nullopt;
    if (!sealed) return std::nullopt;
    last = std::max(last.value_or(*sealed), *sealed);
  }
  return last;
}

/// Whether a thing was there to be looked at.
bool was_there(Folding& folding, const Row& entity, std::optional<std::int64_t> over) {
  if (id_at(entity, at(entity_columns, "voided_by"))) return false;
  if (over && number_in(entity, at(entity_columns, "created_t")) > *over) return false;
  const auto retired = folding.row(table_retirement, {in(entity, at(entity_columns, "id"))});
  return retired && over ? number_in(*retired, at(retirement_columns, "t")) > *over : !retired;
}

/// A post, the bays after it, and the parts of both.
struct Things {
  Row post;
  std::vector<Row> bays;
  std::vector<Row> parts;

  [[nodiscard]] std::vector<Uuid> ids() const {
    std::vector<Uuid> all{id_in(post, at(entity_columns, "id"))};
    for (const auto* rows : {&bays, &parts}) {
      for (const Row& row : *rows) all.push_back(id_in(row, at(entity_columns, "id")));
    }
    return all;
  }
};

std::optional<Things> things_at(Folding& folding, const Uuid& post) {
  auto row = folding.row(table_entity, {post});
  if (!row || type_of(*row) != code_of(EntityType::post)) return std::nullopt;
  Things things{*std::move(row), {}, parts_at(folding, post)};
  for (const Row& after : folding.rows_of_key(table_bay_after, {post})) {
    const Uuid bay = id_in(after, at(bay_after_columns, "bay"));
    if (auto found = folding.row(table_entity, {bay})) things.bays.push_back(*std::move(found));
    for (Row& part : parts_at(folding, bay)) things.parts.push_back(std::move(part));
  }
  return things;
}

/// How far the looks go.
struct Reach {
  std::int64_t all = 0;
  std::int64_t seen = 0;
  std::int64_t far = 0;
  std::int64_t pushed = 0;
  std::int64_t excused = 0;  ///< not seen, and said to be not reached
  std::vector<Uuid> not_fresh{};

  void take(const Uuid& thing, LookBits looks, bool excuse) {
    const auto has = [looks](LookBits look) { return (looks & look) != 0; };
    ++all;
    if (has(look_seen)) ++seen;
    if (has(look_seen) && !has(look_near)) ++far;
    if (has(look_pushed)) ++pushed;
    if (!has(look_seen) && excuse) ++excused;
    if (!has(look_fresh)) not_fresh.push_back(thing);
  }
};

struct Covered {
  Row row;
  std::vector<Uuid> not_fresh;
};

/// All that these visits have of the things, counted from the records.
Tally counted(Folding& folding, const Things& things, const std::vector<Uuid>& visits) {
  Tally tally;
  const auto run = id_at(things.post, at(entity_columns, "parent"));
  for (const Uuid& visit : visits) {
    for (const Uuid& subject : things.ids()) take_subject(folding, visit, subject, tally);
    if (run) take_run(folding, visit, *run, tally);
  }
  return tally;
}

/// Whether the post or its run was said to be not reached.
bool skips_post(const Things& things, const Tally& tally) {
  const auto said = [&tally](const Uuid& id) { return (tally.look(id) & look_not_reached) != 0; };
  const auto run = id_at(things.post, at(entity_columns, "parent"));
  return said(id_in(things.post, at(entity_columns, "id"))) || (run && said(*run));
}

bool any_seen(const Tally& tally) {
  return std::any_of(tally.looks.begin(), tally.looks.end(),
                     [](const auto& look) { return (look.second & look_seen) != 0; });
}

Reach reach_of(Folding& folding, const std::vector<Row>& things, const Tally& tally,
               std::optional<std::int64_t> over, bool whole_post) {
  Reach reach;
  for (const Row& thing : things) {
    const Uuid id = id_in(thing, at(entity_columns, "id"));
    const LookBits look = tally.look(id);
    const bool gap = type_of(thing) == code_of(EntityType::bay) &&
                     number_in(rest_of(thing), bay_field::kind) == code_of(BayKind::open_gap);
    if ((look & look_seen) == 0 && (gap || !was_there(folding, thing, over))) continue;
    reach.take(id, look, whole_post || (look & look_not_reached) != 0);
  }
  return reach;
}

std::optional<Covered> covered(Folding& folding, const Uuid& post, const Uuid& visit,
                               const Row* kept) {
  const News news = folding.take_news_of_row(post, visit);
  if (one_visit(folding, visit) != visit) return std::nullopt;
  const auto things = things_at(folding, post);
  if (!things) return std::nullopt;
  const std::vector<Uuid> visits = group_of(folding, visit);
  Tally tally;
  if (news.again) {
    tally = counted(folding, *things, visits);
  } else {
    if (kept != nullptr) tally = tally_of(*kept);
    tally.take(news.tally);
  }
  if (tally.empty()) return std::nullopt;
  const auto over = over_since(folding, visits);
  const bool whole_post = skips_post(*things, tally);
  Reach parts = reach_of(folding, things->parts, tally, over, whole_post);
  const Reach bays = reach_of(folding, things->bays, tally, over, whole_post);
  const std::int64_t unseen = parts.all - parts.seen + bays.all - bays.seen;
  const bool done = unseen == 0 && any_seen(tally);
  const bool excused = unseen == parts.excused + bays.excused;
  const bool skipped = !done && excused && (whole_post || unseen > 0);
  Row row(std::size(coverage_columns));
  put_tally(tally, row);
  const auto put = [&row](int column, Cell value) { in(row, column) = std::move(value); };
  put(at(coverage_columns, "visit"), visit);
  put(at(coverage_columns, "post"), post);
  put(at(coverage_columns, "feed"), in(things->post, at(entity_columns, "feed")));
  put(at(coverage_columns, "parts"), parts.all);
  put(at(coverage_columns, "parts_seen"), parts.seen);
  put(at(coverage_columns, "parts_far"), parts.far);
  put(at(coverage_columns, "bays"), bays.all);
  put(at(coverage_columns, "bays_seen"), bays.seen);
  put(at(coverage_columns, "bays_pushed"), bays.pushed);
  put(at(coverage_columns, "done"), std::int64_t{done ? 1 : 0});
  put(at(coverage_columns, "skipped"), std::int64_t{skipped ? 1 : 0});
  return Covered{std::move(row), std::move(parts.not_fresh)};
}

/// Where a row stands among those of its post.
std::pair<std::int64_t, Uuid> place_of(const Row& row) {
  return {number_in(row, at(coverage_columns, "first_t")),
          id_in(row, at(coverage_columns, "visit"))};
}

std::map<Uuid, std::int64_t> since_fresh(const Row& row) {
  std::map<Uuid, std::int64_t> visits;
  const auto* bytes = std::get_if<cbor::Bytes>(&in(row, at(coverage_columns, "since_fresh")));
  const auto list = bytes ? cbor::decode(*bytes) : Result<cbor::Value>(cbor::Array{});
  for (const cbor::Value& pair : *list->array()) {
    visits[*(*pair.array())[0].uuid()] = *(*pair.array())[1].number();
  }
  return visits;
}

void put_since_fresh(Covered& now, const Row* earlier) {
  const auto before = earlier ? since_fresh(*earlier) : std::map<Uuid, std::int64_t>{};
  std::sort(now.not_fresh.begin(), now.not_fresh.end());
  cbor::Array list;
  std::int64_t most = 0;
  for (const Uuid& part : now.not_fresh) {
    const auto found = before.find(part);
    const std::int64_t visits = found == before.end() ? 1 : found->second + 1;
    most = std::max(most, visits);
    list.push_back(cbor::Array{part, visits});
  }
  if (!list.empty()) {
    in(now.row, at(coverage_columns, "since_fresh")) = cbor::encode(cbor::Value(std::move(list)));
  }
  in(now.row, at(coverage_columns, "since_fresh_max")) = most;
}

/// The rows of a post but one, in order.
std::vector<const Row*> others(const std::vector<Row>& rows, const Uuid& visit) {
  std::vector<const Row*> all;
  for (const Row& row : rows) {
    if (id_in(row, at(coverage_columns, "visit")) != visit) all.push_back(&row);
  }
  std::sort(all.begin(), all.end(),
            [](const Row* a, const Row* b) { return place_of(*a) < place_of(*b); });
  return all;
}

/// The first of these rows after a place.
auto first_after(const std::vector<const Row*>& rows, const Row& place) {
  return std::upper_bound(rows.begin(), rows.end(), place, [](const Row& here, const Row* row) {
    return place_of(here) < place_of(*row);
  });
}

}  // namespace

void derive_coverage(Folding& folding, const Job& job) {
  const Uuid& post = job.a;
  const Uuid& visit = job.b;
  const std::vector<Row> rows = folding.rows(table_coverage, coverage_by_post, {post});
  const std::vector<const Row*> visits = others(rows, visit);
  const auto kept = std::find_if(rows.begin(), rows.end(), [&visit](const Row& row) {
    return id_in(row, at(coverage_columns, "visit")) == visit;
  });
  auto now = covered(folding, post, visit, kept == rows.end() ? nullptr : &*kept);
  if (now) {
    const auto next = first_after(visits, now->row);
    put_since_fresh(*now, next == visits.begin() ? nullptr : *std::prev(next));
  }
  const auto row = now ? std::optional(now->row) : std::nullopt;
  if (!folding.put_or_erase(table_coverage, row, {visit, post})) return;
  // Whoever came after counts on from here, or did before.
  const auto ask_next = [&](const Row& place) {
    const auto next = first_after(visits, place);
    if (next == visits.end()) return;
    folding.ask({.stage = Stage::coverage, .a = post, .b = place_of(**next).second});
  };
  if (kept != rows.end()) ask_next(*kept);
  if (row) ask_next(*row);
}

}  // namespace kneerail::fold
