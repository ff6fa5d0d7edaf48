#include "schema/store/visit_store.h"

#include <algorithm>
#include <numeric>
#include <tuple>
#include <utility>

#include "core/records/rule_set.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

Result<> read_zeros(Database& tables, std::vector<KnownInstrument>& instruments) {
  for (KnownInstrument& instrument : instruments) {
    auto done =
        each_row(tables,
                 "SELECT max(t) FROM instrument_check WHERE subject = ?1 AND what IN (1, 2) "
                 "AND in_order = 1 AND voided_by IS NULL AND held = 0",
                 {instrument.id}, [&](const Statement& row) -> Result<> {
                   if (!row.is_null(0)) instrument.zeroed = Instant{row.number(0)};
                   return Done{};
                 });
    if (!done) return done;
  }
  return Done{};
}

Result<> read_foils(Database& tables, std::vector<KnownInstrument>& instruments) {
  for (KnownInstrument& instrument : instruments) {
    auto done = each_row(
        tables,
        "SELECT t, reference, readings FROM instrument_check WHERE subject = ?1 AND what = 2 "
        "AND reference IS NOT NULL AND voided_by IS NULL AND held = 0 "
        "ORDER BY t DESC, record DESC LIMIT 1",
        {instrument.id}, [&](const Statement& row) -> Result<> {
          const auto read = numbers_in(row, 2);
          if (read.empty()) return Done{};
          const auto sum = std::accumulate(read.begin(), read.end(), std::int64_t{0});
          instrument.foil = {Instant{row.number(0)}, row.number(1),
                             static_cast<double>(sum) / static_cast<double>(read.size())};
          return Done{};
        });
    if (!done) return done;
  }
  return Done{};
}

Result<> drop_doubted(Database& tables, std::vector<KnownInstrument>& instruments) {
  return each_row(
      tables,
      "SELECT subject FROM doubt WHERE until_ms IS NULL AND suggested_shift IS NULL AND "
      "voided_by IS NULL AND held = 0",
      {}, [&](const Statement& row) -> Result<> {
        std::erase_if(instruments,
                      [&](const KnownInstrument& one) { return one.id == row.uuid(0); });
        return Done{};
      });
}

}  // namespace

Result<std::optional<Uuid>> open_visit(Database& tables, const Uuid& site, const Uuid& person,
                                       const Uuid& device, VisitTime within) {
  std::optional<Uuid> visit;
  auto rows = tables.prepare(
      "SELECT v.record FROM visit_part AS p JOIN visit AS v ON v.record = p.visit "
      "WHERE v.subject = ?1 AND p.person = ?2 AND p.dev = ?3 AND p.sealed IS NULL AND v.t >= ?4 "
      "AND v.t <= ?5 AND v.voided_by IS NULL AND v.held = 0 ORDER BY v.t DESC, v.record DESC LIMIT "
      "1");
  if (!rows) return fail(rows.error());
  rows->bind(1, site)
      .bind(2, person)
      .bind(3, device)
      .bind(4, within.since.ms)
      .bind(5, within.until.ms);
  auto more = rows->step();
  if (!more) return fail(more.error());
  if (*more) visit = rows->uuid(0);
  return visit;
}

Result<std::int64_t> entries_of_visit(Database& tables, const Uuid& visit) {
  std::int64_t count = 0;
  auto done =
      each_row(tables,
               "SELECT (SELECT count(*) FROM reading WHERE visit = ?1 AND voided_by IS NULL) + "
               "(SELECT count(*) FROM fact AS f LEFT JOIN change AS c ON c.record = f.record "
               "WHERE f.visit = ?1 AND f.kind NOT IN (10, 11) AND c.voided_by IS NULL)",
               {visit}, [&](const Statement& row) -> Result<> {
                 count = row.number(0);
                 return Done{};
               });
  if (!done) return fail(done.error());
  return count;
}

Result<std::vector<KnownInstrument>> instruments_in_service(Database& tables) {
  auto things = things_of_type(tables, static_cast<int>(EntityType::instrument));
  if (!things) return fail(things.error());
  std::vector<KnownInstrument> known;
  for (const Thing& thing : *things) {
    KnownInstrument instrument;
    instrument.id = thing.id;
    instrument.kind = static_cast<InstrumentKind>(thing.number(instrument_field::kind).value_or(1));
    instrument.serial = thing.code;
    instrument.resolution =
        std::max<std::int64_t>(thing.number(instrument_field::resolution).value_or(1), 1);
    instrument.stated_error = thing.number(instrument_field::stated_error);
    instrument.zero_good_for_hours = thing.number(instrument_field::zero_good_for);
    if (const auto* range = thing.rest.find(instrument_field::range);
        range != nullptr && range->array() != nullptr && range->array()->size() == 2) {
      if (const auto* low = (*range->array())[0].number()) instrument.low = *low;
      if (const auto* high = (*range->array())[1].number()) instrument.high = *high;
    }
    known.push_back(std::move(instrument));
  }
  if (auto done = drop_doubted(tables, known); !done) return fail(done.error());
  if (auto done = read_zeros(tables, known); !done) return fail(done.error());
  if (auto done = read_foils(tables, known); !done) return fail(done.error());
  std::sort(known.begin(), known.end(), [](const KnownInstrument& a, const KnownInstrument& b) {
    return std::tie(a.serial, a.id) < std::tie(b.serial, b.id);
  });
  return known;
}

Result<std::vector<KnownPerson>> people_in_service(Database& tables) {
  auto things = things_of_type(tables, static_cast<int>(EntityType::person));
  if (!things) return fail(things.error());
  std::vector<KnownPerson> people;
  for (const Thing& thing : *things) people.push_back({thing.id, thing.code, false});
  auto done = each_row(tables,
                       "SELECT subject FROM person_role WHERE role = 1 AND taken_by IS NULL AND "
                       "voided_by IS NULL AND held = 0",
                       {}, [&](const Statement& row) -> Result<> {
                         for (KnownPerson& person : people)
                           if (person.id == row.uuid(0)) person.inspects = true;
                         return Done{};
                       });
  if (!done) return fail(done.error());
  std::sort(people.begin(), people.end(), [](const KnownPerson& a, const KnownPerson& b) {
    return std::tuple(!a.inspects, a.initials, a.id) < std::tuple(!b.inspects, b.initials, b.id);
  });
  return people;
}

Result<WalkRules> walk_rules(Database& tables, const Uuid& site) {
  WalkRules rules;
  const auto take = [&](const Statement& row) -> Result<> {
    const auto rest = map_in(row, 0);
    if (!rest) return fail(rest.error());
    const auto* limits = rest->find(rule_set_field::limits);
    if (limits == nullptr || limits->map() == nullptr) return Done{};
    rules.first_maintenance_tenth_um = number_in(*limits->map(), limit_key::first_maintenance);
    rules.wall_share_least_per_mille = number_in(*limits->map(), limit_key::wall_share_least);
    rules.check_good_for_hours = number_in(*limits->map(), limit_key::instrument_check_age);
    // Limit 18 holds two: grades carried, and visits that a part may go unseen.
    if (const auto* most = limits->map()->find(limit_key::carried);
        most != nullptr && most->map() != nullptr)
      rules.carried_in_a_row_most = number_in(*most->map(), 1);
    return Done{};
  };
  std::optional<Uuid> rule_set;
  auto done = each_row(tables, "SELECT rest FROM entity WHERE id = ?1", {site},
                       [&](const Statement& row) -> Result<> {
                         const auto rest = map_in(row, 0);
                         if (!rest) return fail(rest.error());
                         rule_set = id_in(*rest, site_field::rule_set);
                         return Done{};
                       });
  if (!done) return fail(done.error());
  if (!rule_set) return rules;
  done = each_row(tables, "SELECT rest FROM entity WHERE id = ?1", {*rule_set}, take);
  if (!done) return fail(done.error());
  return rules;
}

Result<std::optional<LastCoating>> last_coating(Database& tables, const PartSpot& at,
                                                const Uuid& not_of_visit,
                                                const ReadingsPutRight& right) {
  std::optional<LastCoating> last;
  auto done = each_row(tables,
                       "SELECT visit, t, replicates, spot, instrument FROM reading WHERE subject = "
                       "?1 AND kind = 21 AND "
                       "life IS ?2 AND visit IS NOT ?3 AND voided_by IS NULL AND held = 0 "
                       "ORDER BY t DESC, record DESC",
                       {at.part, at.life, not_of_visit}, [&](const Statement& row) -> Result<> {
                         if (row.number(3) != at.spot) return Done{};
                         if (last && last->visit != row.uuid(0)) return Done{};
                         auto numbers = numbers_in(row, 2);
                         const Uuid gauge = row.is_null(4) ? Uuid{} : row.uuid(4);
                         for (auto& number : numbers)
                           number = right.of(gauge, Instant{row.number(1)}, number);
                         if (!last) last = LastCoating{row.uuid(0), row.number(1), {}};
                         // A visit may have read the spot in more than one record.
                         last->replicates_tenth_um.insert(last->replicates_tenth_um.begin(),
                                                          numbers.begin(), numbers.end());
                         return Done{};
                       });
  if (!done) return fail(done.error());
  return last;
}

Result<std::vector<CoatingOfVisit>> coating_of_visit(Database& tables, const PartSpot& at,
                                                     const Uuid& visit) {
  std::vector<CoatingOfVisit> all;
  auto done = each_row(tables,
                       "SELECT replicates, spot, instrument FROM reading WHERE subject = ?1 AND "
                       "kind = 21 AND visit = ?2 AND voided_by IS NULL AND held = 0 "
                       "ORDER BY l, c, record",
                       {at.part, visit}, [&](const Statement& row) -> Result<> {
                         if (row.number(1) != at.spot) return Done{};
                         all.push_back({row.is_null(2) ? Uuid{} : row.uuid(2), numbers_in(row, 0)});
                         return Done{};
                       });
  if (!done) return fail(done.error());
  return all;
}

Result<std::optional<LastTorque>> last_torque(Database& tables, const ScrewQuestion& question) {
  std::optional<LastTorque> last;
  constexpr int why_not = 9;
  auto done = each_row(
      tables,
      "SELECT censoring, v1, screw, visit, rest FROM reading WHERE subject = ?1 AND kind = 22 AND "
      "voided_by IS NULL AND held = 0 ORDER BY t DESC, record DESC",
      {question.part}, [&](const Statement& row) -> Result<> {
        if (last || row.number(2) != question.screw) return Done{};
        const Uuid visit = row.uuid(3);
        if (question.visit ? visit != *question.visit : visit == question.not_of_visit)
          return Done{};
        last.emplace();
        last->censoring = static_cast<Censoring>(row.number(0));
        if (!row.is_null(1)) last->as_found_tenth_nm = row.number(1);
        const auto rest = map_in(row, 4);
        if (!rest) return fail(rest.error());
        if (const auto code = number_in(*rest, why_not))
          last->why_not = static_cast<WhyNotMeasurable>(*code);
        return Done{};
      });
  if (!done) return fail(done.error());
  return last;
}

Result<std::optional<std::int64_t>> last_wrench_set(Database& tables, const Uuid& visit,
                                                    const Uuid& wrench) {
  std::optional<std::int64_t> set;
  auto done = each_row(tables,
                       "SELECT wrench_set_tenth_nm FROM reading WHERE visit = ?1 AND kind = 22 AND "
                       "instrument = ?2 AND voided_by IS NULL AND held = 0 "
                       "ORDER BY t DESC, record DESC LIMIT 1",
                       {visit, wrench}, [&](const Statement& row) -> Result<> {
                         if (!row.is_null(0)) set = row.number(0);
                         return Done{};
                       });
  if (!done) return fail(done.error());
  return set;
}

}  // namespace kneerail
