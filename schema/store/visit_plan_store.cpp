#include "schema/store/visit_plan_store.h"

#include <algorithm>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>

#include "core/records/cbor.h"
#include "core/records/entities.h"
#include "core/records/kinds.h"
#include "core/records/rule_set.h"
#include "core/records/visit.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

using forecast::SiteVisits;

std::string event_word(std::int64_t what) {
  const auto word = kind_info(Event::kind)->fields.find(1)->words.word(what);
  return word ? std::string(*word) : "event";
}

class PlanReader {
 public:
  PlanReader(Database& tables, const TimeZone& zone, Date as_of)
      : tables_(tables), zone_(zone), as_of_(as_of) {}

  Result<std::vector<SiteVisits>> read(const std::vector<SiteBand>& bands) {
    for (const SiteBand& band : bands) {
      SiteVisits visits;
      visits.site = band.reference.empty() ? to_text(band.id) : band.reference;
      visits.agreed = band.next_agreed;
      places_.emplace(band.id, made_.size());
      made_.push_back(std::move(visits));
    }
    for (const auto step :
         {&PlanReader::read_last, &PlanReader::read_allowed, &PlanReader::read_events})
      if (auto done = (this->*step)(); !done)
        return fail(done.error(), "Reading what visits are due: ");
    for (std::size_t i = 0; i < made_.size(); ++i) set_interval(bands[i], made_[i]);
    return std::move(made_);
  }

 private:
  SiteVisits* site(const Uuid& id) {
    const auto found = places_.find(id);
    return found == places_.end() ? nullptr : &made_[found->second];
  }

  /// Only a routine or a detailed visit, also one of no said kind, looks at all that it is of.
  Result<> read_last() {
    constexpr const char* sql =
        "SELECT subject, last_t, runs, kind_of_visit IS NULL OR kind_of_visit IN (1, 2) FROM visit "
        "WHERE voided_by IS NULL AND held = 0";
    return each_row(tables_, sql, {}, [&](const Statement& row) -> Result<> {
      SiteVisits* own = site(row.uuid(0));
      if (own == nullptr || row.is_null(1)) return Done{};
      const Date day = zone_.day_of_entry(Instant{row.number(1)});
      if (day > as_of_) return Done{};
      raise(day, own->last_any);
      if (row.number(3) == 0) return Done{};
      bool all = true;
      if (!row.is_null(2)) {
        const auto runs = cbor::decode(row.bytes(2));
        if (!runs) return fail(runs.error());
        if (runs->array() != nullptr)
          for (const cbor::Value& one : *runs->array())
            if (const auto run = one.uuid()) {
              raise(day, last_of_run_[*run]);
              all = false;
            }
      }
      if (all) raise(day, own->last);
      return Done{};
    });
  }

  static void raise(Date day, std::optional<Date>& last) {
    last = std::max(day, last.value_or(day));
  }

  /// Of the run whose interval ends first; one that nobody has looked at before all others.
  void set_interval(const SiteBand& band, SiteVisits& visits) const {
    const std::optional<Date> of_whole = visits.last;
    bool any = false;
    std::optional<Date> ends;  ///< none: nobody has looked at that run
    for (const SiteRun& run : band.runs) {
      if (!run.longest_interval_days) continue;
      std::optional<Date> last = of_whole;
      if (const auto own = last_of_run_.find(run.id); own != last_of_run_.end() && own->second)
        raise(*own->second, last);
      const auto days = static_cast<std::int32_t>(*run.longest_interval_days);
      const auto end = last ? std::optional(Date{last->days + days}) : std::nullopt;
      if (any && (!ends || (end && *ends <= *end))) continue;
      any = true;
      ends = end;
      visits.last = last;
      visits.longest_interval_days = days;
    }
  }

  /// Limit 13 of each site's rule set.
  Result<> read_allowed() {
    auto sites = things_of_type(tables_, static_cast<int>(EntityType::site));
    if (!sites) return fail(sites.error());
    auto rules = load_things(tables_, static_cast<int>(EntityType::rule_set));
    if (!rules) return fail(rules.error());
    for (const Thing& thing : *sites) {
      const auto id = thing.id_field(site_field::rule_set);
      const Thing* own = id ? rules->find(*id) : nullptr;
      if (own == nullptr) continue;
      if (const auto from = own->number(rule_set_field::in_force_from); from && *from > as_of_.days)
        continue;
      const auto* limits = own->rest.find(rule_set_field::limits);
      if (limits == nullptr || limits->map() == nullptr) continue;
      const auto* allowed = limits->map()->find(limit_key::visit_after_event);
      if (allowed != nullptr && allowed->map() != nullptr)
        allowed_.emplace(thing.id, *allowed->map());
    }
    return Done{};
  }

  Result<> read_events() {
    // Of each event: whether a visit names it, and whether one answered it since it began; visits
    // that began after the as-of day are not known on it.
    constexpr std::int64_t day_ms = 86'400'000;
    const std::string known = "v.voided_by IS NULL AND v.held = 0 AND v.first_t < " +
                              std::to_string((std::int64_t{as_of_.days} + 1) * day_ms);
    const std::string sql =
        "SELECT e.feed, e.what, e.from_ms, EXISTS (SELECT 1 FROM visit AS v WHERE v.event = "
        "e.record AND " +
        known + "), EXISTS (SELECT 1 FROM visit AS v WHERE v.feed = e.feed AND " + known +
        " AND v.last_t >= e.from_ms AND "
        "(v.event = e.record OR (v.first_t >= e.from_ms AND (v.kind_of_visit = 3 OR v.complete = "
        "1)))) FROM event AS e WHERE e.voided_by IS NULL AND e.held = 0 AND e.from_ms NOT NULL AND "
        "e.what NOT NULL ORDER BY e.from_ms, e.record";
    return each_row(tables_, sql, {}, [&](const Statement& row) -> Result<> {
      SiteVisits* own = site(row.uuid(0));
      const Date day = zone_.day(Instant{row.number(2)});
      const bool answered = row.number(day > as_of_ ? 3 : 4) != 0;
      if (own == nullptr || answered) return Done{};
      forecast::OpenEvent event{event_word(row.number(1)), day, {}};
      if (const auto allowed = allowed_.find(row.uuid(0)); allowed != allowed_.end())
        if (const auto hours = number_in(allowed->second, static_cast<int>(row.number(1))))
          event.hours_allowed = static_cast<double>(*hours);
      own->events.push_back(std::move(event));
      return Done{};
    });
  }

  Database& tables_;
  const TimeZone& zone_;
  Date as_of_;
  std::vector<SiteVisits> made_;
  std::unordered_map<Uuid, std::size_t> places_;
  std::unordered_map<Uuid, std::optional<Date>> last_of_run_;  ///< of visits that name it
  std::unordered_map<Uuid, cbor::Map> allowed_;
};

}  // namespace

Result<std::vector<SiteVisits>> read_site_visits(Database& tables, const TimeZone& zone,
                                                 Date as_of) {
  const auto bands = read_sites(tables, zone);
  if (!bands) return fail(bands.error());
  return read_site_visits(tables, zone, as_of, *bands);
}

Result<std::vector<SiteVisits>> read_site_visits(Database& tables, const TimeZone& zone, Date as_of,
                                                 const std::vector<SiteBand>& bands) {
  return PlanReader(tables, zone, as_of).read(bands);
}

}  // namespace kneerail
