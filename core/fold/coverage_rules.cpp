#include <algorithm>

#include "core/fold/coverage.h"
#include "core/fold/folding.h"

// Which rows of coverage a record or an entity has a part in: the one of its visit, and of the post
// that it stands at. Nothing is asked for while what is in between has not arrived; whatever
// arrives asks for all that stands at it.

namespace kneerail::fold {

namespace {

std::optional<Uuid> post_before(const Row& bay) {
  return id_in(rest_of(bay), bay_field::from_post);
}

/// The posts of things that were asked about before.
using Places = std::map<Uuid, std::optional<Uuid>>;

/// A post itself, or the one a bay begins at.
std::optional<Uuid> post_of_row(Folding& folding, std::optional<Row> row) {
  if (row && type_of(*row) == code_of(EntityType::bay)) {
    const auto post = post_before(*row);
    row = post ? folding.row(table_entity, {*post}) : std::nullopt;
  }
  if (!row || type_of(*row) != code_of(EntityType::post)) return std::nullopt;
  return id_in(*row, at(entity_columns, "id"));
}

/// The post under which a thing is told of: a post itself, the one a bay begins at, the one a part
/// or its bay stands at. Nothing while what is in between has not arrived.
std::optional<Uuid> post_of(Folding& folding, const Uuid& subject, Places& places) {
  auto row = folding.row(table_entity, {subject});
  if (!row || type_of(*row) != code_of(EntityType::component))
    return post_of_row(folding, std::move(row));
  const auto parent = id_at(*row, at(entity_columns, "parent"));
  if (!parent) return std::nullopt;
  const auto [place, fresh] = places.try_emplace(*parent);
  if (fresh) place->second = post_of_row(folding, folding.row(table_entity, {*parent}));
  return place->second;
}

/// A row of coverage, counted again.
void ask_row(Folding& folding, const Uuid& post, const Uuid& visit) {
  folding.news_of_row(post, one_visit(folding, visit)).again = true;
}

void ask_rows_of_post(Folding& folding, const Uuid& post) {
  for (const Row& row : folding.rows(table_coverage, coverage_by_post, {post})) {
    ask_row(folding, post, id_in(row, at(coverage_columns, "visit")));
  }
}

/// Every visit that has something of a thing.
void ask_visits_of(Folding& folding, const Uuid& subject) {
  if (folding.all_news_waits()) return;
  const auto ask = [&](const std::optional<Uuid>& visit) {
    if (visit) folding.news_of({subject, *visit}).again = true;
  };
  for (const Row& row : folding.rows(table_reading, reading_by_subject, {subject})) {
    ask(id_at(row, at(reading_columns, "visit")));
  }
  for (const Row& row : folding.rows(table_fact, fact_by_subject, {subject})) {
    ask(id_at(row, at(fact_columns, "visit")));
  }
}

void ask_visits_at(Folding& folding, const Uuid& post_or_bay) {
  ask_visits_of(folding, post_or_bay);
  for (const Row& part : parts_at(folding, post_or_bay)) {
    ask_visits_of(folding, id_in(part, at(entity_columns, "id")));
  }
}

void place_bay(Folding& folding, const std::optional<Row>& before, const Row& now) {
  const Uuid bay = id_in(now, at(entity_columns, "id"));
  const auto was = before ? post_before(*before) : std::nullopt;
  const auto is = post_before(now);
  if (was && was != is) {
    folding.erase(table_bay_after, {*was, bay});
    ask_rows_of_post(folding, *was);
  }
  if (is) folding.put(table_bay_after, Row{*is, bay});
  if (!before || was != is) ask_visits_at(folding, bay);
}

void welcome_post(Folding& folding, const Row& post) {
  const Uuid id = id_in(post, at(entity_columns, "id"));
  ask_visits_at(folding, id);
  for (const Row& after : folding.rows_of_key(table_bay_after, {id})) {
    ask_visits_at(folding, id_in(after, at(bay_after_columns, "bay")));
  }
  if (const auto run = id_at(post, at(entity_columns, "parent"))) {
    for (const Fact& fact : folding.facts_of(*run, kind::not_reached)) {
      if (const auto visit = visit_of(fact.record())) ask_row(folding, id, *visit);
    }
  }
}

}  // namespace

std::vector<Row> parts_at(Folding& folding, const Uuid& post_or_bay) {
  return folding.rows(table_entity, entity_by_parent,
                      {post_or_bay, code_of(EntityType::component)});
}

void ask_coverage_rows(Folding& folding, const Uuid& entity) {
  Places places;
  if (const auto post = post_of(folding, entity, places)) ask_rows_of_post(folding, *post);
}

void ask_coverage_of_visit(Folding& folding, const Uuid& visit, bool again) {
  for (const Row& row : folding.rows_of_key(table_coverage, {visit})) {
    News& news = folding.news_of_row(id_in(row, at(coverage_columns, "post")), visit);
    news.again = news.again || again;
  }
}

void ask_coverage(Folding& folding, const std::optional<Row>& before, const Row& now) {
  const std::int64_t type = type_of(now);
  if (before && *before == now) return;
  if (type == code_of(EntityType::bay)) place_bay(folding, before, now);
  if (type == code_of(EntityType::post) && !before) welcome_post(folding, now);
  if (type == code_of(EntityType::component) && !before) {
    ask_visits_of(folding, id_in(now, at(entity_columns, "id")));
  }
  if (type == code_of(EntityType::bay) || type == code_of(EntityType::component) ||
      type == code_of(EntityType::post)) {
    ask_coverage_rows(folding, id_in(now, at(entity_columns, "id")));
  }
}

void ask_seen(Folding& folding, const Record& record) {
  const auto visit = visit_of(record);
  if (!visit || !is_counted(record.kind)) return;
  News& news = folding.news_of({record.subject, *visit});
  news.again = true;
  news.not_reached = news.not_reached || record.kind == kind::not_reached;
}

void ask_coverage_of(Folding& folding, const AllNews& all) {
  Places places;
  for (const auto& [seen, news] : all) {
    if (const auto post = post_of(folding, seen.subject, places)) {
      News& row = folding.news_of_row(*post, one_visit(folding, seen.visit));
      row.again = row.again || news.again;
      row.tally.take(news.tally);
    } else if (news.not_reached) {
      // A run that was not reached is each of its posts.
      for (const Row& row : folding.rows(table_entity, entity_by_parent,
                                         {seen.subject, code_of(EntityType::post)})) {
        ask_row(folding, id_in(row, at(entity_columns, "id")), seen.visit);
      }
    }
  }
}

}  // namespace kneerail::fold
