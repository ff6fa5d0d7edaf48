#include "schema/store/visit_plan_store.h"

#include <algorithm>
#include <unordered_map>
#include <utility>

#include "core/records/entities.h"
#include "core/records/kinds.h"
#include "core/records/rule_set.h"
#include "core/records/visit.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"
#include "schema/store/site_store.h"

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

  Result<std::vector<SiteVisits>> read() {
    const auto bands = read_sites(tables_, zone_);
    if (!bands) return fail(bands.error());
    for (const SiteBand& band : *bands) {
      SiteVisits visits;
      visits.site = band.reference.empty() ? to_text(band.id) : band.reference;
      visits.agreed = band.next_agreed;
      for (const SiteRun& run : band.runs)
        if (run.longest_interval_days)
          visits.longest_interval_days = std::min(static_cast<int>(*run.longest_interval_days),
                                                  visits.longest_interval_days.value_or(36'500));
      places_.emplace(band.id, made_.size());
      made_.push_back(std::move(visits));
    }
    for (const auto step :
         {&PlanReader::read_last, &PlanReader::read_allowed, &PlanReader::read_events})
      if (auto done = (this->*step)(); !done)
        return fail(done.error(), "Reading what visits are due: ");
    return std::move(made_);
  }

 private:
  SiteVisits* site(const Uuid& id) {
    const auto found = places_.find(id);
    return found == places_.end() ? nullptr : &made_[found->second];
  }

  Result<> read_last() {
    return each_row(tables_,
                    "SELECT subject, last_t FROM visit WHERE voided_by IS NULL AND held = 0", {},
                    [&](const Statement& row) -> Result<> {
                      SiteVisits* own = site(row.uuid(0));
                      if (own == nullptr || row.is_null(1)) return Done{};
                      const Date day = zone_.day_of_entry(Instant{row.number(1)});
                      if (day <= as_of_) own->last = std::max(day, own->last.value_or(day));
                      return Done{};
                    });
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
      const auto* limits = own == nullptr ? nullptr : own->rest.find(rule_set_field::limits);
      if (limits == nullptr || limits->map() == nullptr) continue;
      const auto* allowed = limits->map()->find(limit_key::visit_after_event);
      if (allowed != nullptr && allowed->map() != nullptr)
        allowed_.emplace(thing.id, *allowed->map());
    }
    return Done{};
  }

  Result<> read_events() {
    // Of each event: whether a visit names it, and whether one answered it since it began.
    constexpr const char* sql =
        "SELECT e.feed, e.what, e.from_ms, EXISTS (SELECT 1 FROM visit AS v WHERE v.event = "
        "e.record AND v.voided_by IS NULL AND v.held = 0), EXISTS (SELECT 1 FROM visit AS v WHERE "
        "v.feed = e.feed AND v.voided_by IS NULL AND v.held = 0 AND v.last_t >= e.from_ms AND "
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
  std::unordered_map<Uuid, cbor::Map> allowed_;
};

}  // namespace

Result<std::vector<SiteVisits>> read_site_visits(Database& tables, const TimeZone& zone,
                                                 Date as_of) {
  return PlanReader(tables, zone, as_of).read();
}

}  // namespace kneerail
