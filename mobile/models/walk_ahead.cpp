#include "mobile/models/walk_ahead.h"

#include "mobile/models/place_kept.h"

namespace kneerail {

namespace {

/// A visit that was opened longer ago is another day's; so is one that a clock set wrong opened so
/// far ahead.
constexpr std::int64_t visit_goes_on_ms = 14LL * 60 * 60 * 1000;

}  // namespace

const KnownPerson* who_walks(const std::vector<KnownPerson>& people, const Uuid& chosen) {
  for (const KnownPerson& person : people)
    if (person.id == chosen) return &person;
  return people.empty() ? nullptr : &people.front();
}

Result<std::optional<Uuid>> visit_under_way(Register& store, const Uuid& site, const Uuid& person,
                                            Instant now) {
  const VisitTime today{{now.ms - visit_goes_on_ms}, {now.ms + visit_goes_on_ms}};
  return open_visit(store.tables(), site, person, store.device(), today);
}

std::optional<RunSheet> run_walked_last(Register& store, Instant now) {
  Database& tables = store.tables();
  const PlaceKept place = place_kept(tables);
  if (place.run.is_zero()) return std::nullopt;
  const auto site = site_of_run(tables, place.run);
  const auto people = people_in_service(tables);
  if (!site || !people) return std::nullopt;
  const KnownPerson* who = who_walks(*people, place.person);
  const auto visit = visit_under_way(store, *site, who == nullptr ? Uuid{} : who->id, now);
  if (!visit) return std::nullopt;
  auto sheet = read_run(tables, place.run, visit->value_or(Uuid{}));
  if (!sheet) return std::nullopt;
  return std::move(*sheet);
}

}  // namespace kneerail
