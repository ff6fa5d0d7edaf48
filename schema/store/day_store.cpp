#include "schema/store/day_store.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "schema/store/instrument_store.h"
#include "schema/store/object_folder.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

class DayReader {
 public:
  DayReader(Database& tables, const DayQuestion& asked) : tables_(tables), asked_(asked) {}

  Result<DayAtSite> read() {
    using Step = Result<> (DayReader::*)();
    for (const Step step :
         {&DayReader::read_told, &DayReader::read_closures, &DayReader::read_instruments,
          &DayReader::read_access, &DayReader::read_sites})
      if (auto done = (this->*step)(); !done) return fail(done.error(), "Preparing the day: ");
    return std::move(day_);
  }

 private:
  Result<> read_told() {
    auto done = each_row(
        tables_,
        "SELECT record, subject, at_ms, t, by_whom, said, place, moves FROM told WHERE feed = ?1 "
        "AND open = 1 AND voided_by IS NULL AND held = 0",
        {asked_.site}, [&](const Statement& row) -> Result<> {
          OpenTold told{row.uuid(0), row.uuid(1), {}, ToldBy::other, {}, {}, false};
          told.at = Instant{row.is_null(2) ? row.number(3) : row.number(2)};
          if (!row.is_null(4)) told.by_whom = static_cast<ToldBy>(row.number(4));
          if (!row.is_null(5)) told.said = row.text(5);
          if (!row.is_null(6)) told.place = row.text(6);
          told.moves = !row.is_null(7) && row.number(7) != 0;
          day_.told.push_back(std::move(told));
          return Done{};
        });
    std::stable_sort(day_.told.begin(), day_.told.end(), [](const OpenTold& a, const OpenTold& b) {
      return std::tuple(!a.moves, a.at) < std::tuple(!b.moves, b.at);
    });
    return done;
  }

  Result<> read_closures() {
    const std::string sql =
        "SELECT record, subject, look_again_by_ms FROM closure WHERE feed = ?1 AND standing = 1 "
        "AND look_again_by_ms < " +
        std::to_string(asked_.now.ms) +
        " AND voided_by IS NULL AND held = 0 ORDER BY look_again_by_ms, record";
    return each_row(tables_, sql, {asked_.site}, [&](const Statement& row) -> Result<> {
      day_.closures.push_back({row.uuid(0), row.uuid(1), Instant{row.number(2)}});
      return Done{};
    });
  }

  Result<> read_instruments() {
    auto things = things_of_type(tables_, static_cast<int>(EntityType::instrument));
    if (!things) return fail(things.error());
    auto histories = instrument_histories(tables_);
    if (!histories) return fail(histories.error());
    std::unordered_map<Uuid, Date> valid;
    auto done = each_row(tables_,
                         "SELECT subject, day, valid_until_day FROM calibration WHERE day NOT NULL "
                         "AND voided_by IS NULL AND held = 0 ORDER BY day, t, record",
                         {}, [&](const Statement& row) -> Result<> {
                           // The newer certificate takes the place of one that is still valid.
                           const auto until = row.is_null(2) ? row.number(1) : row.number(2);
                           if (row.number(1) <= asked_.day.days)
                             valid[row.uuid(0)] = Date{static_cast<std::int32_t>(until)};
                           return Done{};
                         });
    if (!done) return done;
    for (const Thing& thing : *things) {
      DayInstrument own;
      own.id = thing.id;
      own.kind = static_cast<InstrumentKind>(thing.number(instrument_field::kind).value_or(1));
      own.serial = thing.code.empty() ? thing.text() : thing.code;
      own.stated_error = thing.number(instrument_field::stated_error);
      if (const auto until = valid.find(thing.id); until != valid.end())
        own.valid_until = until->second;
      own.in_doubt = histories->of(thing.id).in_doubt(asked_.now);
      if (const auto away = thing.number(instrument_field::away_since))
        own.away_since = Date{static_cast<std::int32_t>(*away)};
      day_.instruments.push_back(std::move(own));
    }
    std::stable_sort(day_.instruments.begin(), day_.instruments.end(),
                     [](const DayInstrument& a, const DayInstrument& b) {
                       return std::tie(a.kind, a.serial) < std::tie(b.kind, b.serial);
                     });
    return Done{};
  }

  Result<> read_access() {
    auto runs = things_of_type(tables_, static_cast<int>(EntityType::run));
    if (!runs) return fail(runs.error());
    for (const Thing& run : *runs) {
      if (run.feed != asked_.site) continue;
      const auto* hours = run.rest.find(run_field::hours_of_access);
      if (hours == nullptr || hours->array() == nullptr || hours->array()->empty()) continue;
      AccessHours own{run.id, run.name.empty() ? run.text() : run.name, 1440, 0, {}};
      if (const auto* note = run.rest.find(run_field::access_note);
          note != nullptr && note->text() != nullptr)
        own.note = *note->text();
      for (const cbor::Value& one : *hours->array()) {
        const auto* parts = one.array();
        if (parts == nullptr || parts->size() < 3) continue;
        const auto* on = (*parts)[0].number();
        const auto* from = (*parts)[1].number();
        const auto* to = (*parts)[2].number();
        if (on == nullptr || from == nullptr || to == nullptr || *on != weekday(asked_.day))
          continue;
        own.from_minutes = std::min(own.from_minutes, static_cast<int>(*from));
        own.to_minutes = std::max(own.to_minutes, static_cast<int>(*to));
      }
      (own.to_minutes > own.from_minutes ? day_.access : day_.no_access).push_back(std::move(own));
    }
    return Done{};
  }

  Result<> read_sites() {
    auto sites = things_of_type(tables_, static_cast<int>(EntityType::site));
    if (!sites) return fail(sites.error());
    std::unordered_map<Uuid, std::size_t> places;
    for (const Thing& site : *sites) {
      places.emplace(site.id, day_.sites.size());
      day_.sites.push_back({site.id, site.name.empty() ? site.text() : site.name, 0});
    }
    auto done = each_row(tables_,
                         "SELECT feed.id, sum(length(journal.bytes)) FROM journal JOIN feed ON "
                         "feed.n = journal.feed GROUP BY feed.n",
                         {}, [&](const Statement& row) -> Result<> {
                           const auto own = places.find(row.uuid(0));
                           if (own != places.end()) day_.sites[own->second].bytes += row.number(1);
                           return Done{};
                         });
    if (!done) return done;
    const auto objects = objects_of(asked_.register_folder);
    done = each_row(tables_, "SELECT DISTINCT sha, feed FROM object_use", {},
                    [&](const Statement& row) -> Result<> {
                      const auto own = places.find(row.uuid(1));
                      const auto bytes = row.bytes(0);
                      Digest sha;
                      if (own == places.end() || bytes.size() != sha.size()) return Done{};
                      std::copy(bytes.begin(), bytes.end(), sha.begin());
                      std::error_code not_here;
                      const auto size =
                          std::filesystem::file_size(object_place(objects, sha), not_here);
                      if (!not_here)
                        day_.sites[own->second].bytes += static_cast<std::int64_t>(size);
                      return Done{};
                    });
    std::stable_sort(day_.sites.begin(), day_.sites.end(),
                     [](const SiteOnDisk& a, const SiteOnDisk& b) { return a.name < b.name; });
    return done;
  }

  Database& tables_;
  const DayQuestion& asked_;
  DayAtSite day_;
};

}  // namespace

int weekday(Date day) {
  constexpr std::int32_t thursday = 3;  // 1 January 1970, counted from Monday as 0
  return static_cast<int>(((day.days + thursday) % 7 + 7) % 7) + 1;
}

Result<DayAtSite> read_day(Database& tables, const DayQuestion& asked) {
  return DayReader(tables, asked).read();
}

}  // namespace kneerail
