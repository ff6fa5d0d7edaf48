#include "schema/store/site_store.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "core/records/made_safe.h"
#include "core/records/rule_set.h"
#include "core/records/strike.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

/// Where a run stands in the bands.
struct RunPlace {
  std::size_t site = 0;
  std::size_t run = 0;
  Uuid zone;
  std::optional<std::int64_t> use_class;
};

constexpr std::string_view place_in_service =
    "place.held = 0 AND place.voided_by IS NULL AND NOT EXISTS (SELECT 1 FROM retirement AS gone "
    "WHERE gone.entity = place.id) ";

class SitesReader {
 public:
  SitesReader(Database& tables, const TimeZone& zone) : tables_(tables), zone_(zone) {}

  Result<std::vector<SiteBand>> read() {
    using Step = Result<> (SitesReader::*)();
    for (const Step step :
         {&SitesReader::read_names, &SitesReader::read_zones, &SitesReader::read_runs,
          &SitesReader::count_posts, &SitesReader::count_parts, &SitesReader::count_grades,
          &SitesReader::read_visits, &SitesReader::read_strikes, &SitesReader::count_closed,
          &SitesReader::read_rules}) {
      if (auto done = (this->*step)(); !done) return fail(done.error(), "Reading the sites: ");
    }
    return std::move(bands_);
  }

 private:
  Result<> read_names() {
    auto sites = things_of_type(tables_, static_cast<int>(EntityType::site));
    if (!sites) return fail(sites.error());
    // Identifiers grow with the time at which they were made.
    for (const Thing& site : *sites) {
      SiteBand band;
      band.id = site.id;
      band.reference = site.text();
      band.name = site.name.empty() ? band.reference : site.name;
      rule_sets_.push_back(site.id_field(site_field::rule_set));
      sites_.emplace(site.id, bands_.size());
      bands_.push_back(std::move(band));
    }
    return Done{};
  }

  SiteBand* band(const Uuid& site) {
    const auto found = sites_.find(site);
    return found == sites_.end() ? nullptr : &bands_[found->second];
  }

  SiteRun* run(const Uuid& id) {
    const auto found = runs_.find(id);
    if (found == runs_.end()) return nullptr;
    return &bands_[found->second.site].runs[found->second.run];
  }

  Result<> read_zones() {
    auto zones = things_of_type(tables_, static_cast<int>(EntityType::zone));
    if (!zones) return fail(zones.error());
    for (const Thing& thing : *zones) {
      SiteBand* own = band(thing.feed);
      if (own == nullptr) continue;
      SiteZone zone{thing.id, thing.name, 0, Exposure::unknown};
      zone.category = static_cast<int>(thing.number(zone_field::corrosivity_category).value_or(0));
      zone.exposure = static_cast<Exposure>(thing.number(zone_field::exposure).value_or(0));
      categories_.emplace(zone.id, zone.category);
      own->zones.push_back(std::move(zone));
    }
    for (SiteBand& own : bands_)
      std::stable_sort(own.zones.begin(), own.zones.end(),
                       [](const SiteZone& a, const SiteZone& b) { return a.name < b.name; });
    return Done{};
  }

  Result<> read_runs() {
    auto runs = things_of_type(tables_, static_cast<int>(EntityType::run));
    if (!runs) return fail(runs.error());
    std::unordered_map<Uuid, std::string> codes;
    auto done = each_row(tables_, "SELECT id, code FROM entity WHERE type = 4 AND code NOT NULL",
                         {}, [&](const Statement& row) -> Result<> {
                           codes.emplace(row.uuid(0), row.text(1));
                           return Done{};
                         });
    if (!done) return done;
    std::stable_sort(runs->begin(), runs->end(), [&](const Thing& a, const Thing& b) {
      const auto place = [&](const Thing& run) {
        return std::tuple(run.number(run_field::order).value_or(0), codes[run.id], run.name);
      };
      return place(a) < place(b);
    });
    for (const Thing& thing : *runs) {
      const auto site = sites_.find(thing.feed);
      if (site == sites_.end()) continue;
      SiteBand& own = bands_[site->second];
      SiteRun added;
      added.id = thing.id;
      added.reference = thing.text();
      added.name = thing.name.empty() ? added.reference : thing.name;
      if (const auto what = thing.number(run_field::consequence); what && *what >= 1 && *what <= 3)
        added.consequence = static_cast<Consequence>(*what);
      runs_.emplace(thing.id, RunPlace{site->second, own.runs.size(), thing.parent,
                                       thing.number(run_field::use_class)});
      own.runs.push_back(std::move(added));
    }
    return Done{};
  }

  Result<> count_posts() {
    const std::string sql =
        "SELECT place.parent, count(*), min(place.chainage_mm), max(place.chainage_mm) FROM entity "
        "AS place WHERE place.type = 5 AND " +
        std::string(place_in_service) + "GROUP BY place.parent";
    return each_row(tables_, sql, {}, [&](const Statement& row) -> Result<> {
      SiteRun* own = run(row.uuid(0));
      if (own == nullptr) return Done{};
      own->posts = static_cast<int>(row.number(1));
      if (!row.is_null(2)) own->length_mm = row.number(3) - row.number(2);
      bands_[runs_.at(own->id).site].posts += own->posts;
      return Done{};
    });
  }

  Result<> count_parts() {
    const std::string sql = "SELECT place.parent, count(*), sum(part.role IS 5) " +
                            std::string(parts_of_run) +
                            "WHERE place.type IN (5, 6) AND part.held = 0 AND part.voided_by IS "
                            "NULL AND NOT EXISTS (SELECT 1 FROM retirement AS gone WHERE "
                            "gone.entity = part.id) GROUP BY place.parent";
    return each_row(tables_, sql, {}, [&](const Statement& row) -> Result<> {
      SiteRun* own = run(row.uuid(0));
      if (own == nullptr) return Done{};
      own->parts = row.number(1);
      own->fittings = row.number(2);
      own->grades[0] = own->parts;
      SiteBand& site = bands_[runs_.at(own->id).site];
      site.parts += own->parts;
      site.fittings += own->fittings;
      return Done{};
    });
  }

  Result<> count_grades() {
    const std::string sql =
        "SELECT place.parent, r.v1, count(*) " + std::string(parts_of_run) +
        "JOIN latest AS n ON n.subject = part.id AND n.kind = 20 JOIN reading AS r ON r.record = "
        "n.reading WHERE part.held = 0 AND part.voided_by IS NULL AND NOT EXISTS (SELECT 1 FROM "
        "retirement AS gone WHERE gone.entity = part.id) GROUP BY place.parent, r.v1";
    return each_row(tables_, sql, {}, [&](const Statement& row) -> Result<> {
      SiteRun* own = run(row.uuid(0));
      if (own == nullptr || row.is_null(1)) return Done{};
      const std::int64_t grade = row.number(1);
      if (grade < 1 || grade > 5) return Done{};
      own->grades[static_cast<std::size_t>(grade)] += row.number(2);
      own->grades[0] -= row.number(2);
      return Done{};
    });
  }

  Result<> read_visits() {
    auto done = each_row(
        tables_,
        "SELECT subject, max(last_t) FROM visit WHERE voided_by IS NULL AND held = 0 GROUP BY "
        "subject",
        {}, [&](const Statement& row) -> Result<> {
          if (SiteBand* own = band(row.uuid(0)))
            if (!row.is_null(1)) own->last_visit = zone_.day_of_entry(Instant{row.number(1)});
          return Done{};
        });
    if (!done) return done;
    return each_row(tables_, "SELECT subject, day FROM next_visit WHERE current = 1", {},
                    [&](const Statement& row) -> Result<> {
                      if (SiteBand* own = band(row.uuid(0)))
                        if (!row.is_null(1))
                          own->next_agreed = Date{static_cast<std::int32_t>(row.number(1))};
                      return Done{};
                    });
  }

  Result<> read_strikes() {
    return each_row(
        tables_,
        "SELECT subject, t, re_erect_by_day, missing, open_bays FROM strike WHERE state IN (1, 2) "
        "AND voided_by IS NULL AND held = 0 ORDER BY t, record",
        {}, [&](const Statement& row) -> Result<> {
          const SiteRun* own = run(row.uuid(0));
          if (own == nullptr) return Done{};
          SiteStrike strike;
          strike.run = own->id;
          strike.run_name = own->name;
          strike.since = zone_.day_of_entry(Instant{row.number(1)});
          if (!row.is_null(2)) strike.re_erect_by = Date{static_cast<std::int32_t>(row.number(2))};
          if (auto counted = count_missing(strike, row); !counted) return counted;
          bands_[runs_.at(own->id).site].strikes.push_back(std::move(strike));
          return Done{};
        });
  }

  /// What has to come back, by post: the parts of a bay belong to no post and are not counted.
  Result<> count_missing(SiteStrike& strike, const Statement& row) {
    const auto missing = cbor::decode(row.bytes(3));
    if (!missing) return fail(missing.error());
    const auto bays = cbor::decode(row.bytes(4));
    if (!bays) return fail(bays.error());
    strike.gap_open = (*bays).array() != nullptr && !(*bays).array()->empty();
    if ((*missing).array() == nullptr) return Done{};
    std::set<Uuid> posts;
    auto post_of = tables_.prepare(
        "SELECT part.parent FROM entity AS part JOIN entity AS post ON post.id = part.parent AND "
        "post.type = 5 WHERE part.id = ?1");
    if (!post_of) return fail(post_of.error());
    for (const cbor::Value& one : *(*missing).array()) {
      const auto* step = one.array();
      if (step == nullptr || step->size() < 2 || (*step)[1].number() == nullptr) continue;
      const auto kind = static_cast<StrikeStepKind>(*(*step)[1].number());
      if (kind == StrikeStepKind::torque_signed) ++strike.screws_to_sign;
      const auto part = (*step)[0].uuid();
      if (kind != StrikeStepKind::back || !part) continue;
      post_of->reset();
      post_of->bind(1, *part);
      auto found = post_of->step();
      if (!found) return fail(found.error());
      if (*found) posts.insert(post_of->uuid(0));
    }
    strike.posts_to_put_back = static_cast<std::int64_t>(posts.size());
    return Done{};
  }

  Result<> count_closed() {
    std::set<Uuid> closed;
    auto done = each_row(tables_,
                         "SELECT feed, subject FROM closure WHERE standing = 1 AND barrier = 1 AND "
                         "voided_by IS NULL AND held = 0",
                         {}, [&](const Statement& row) -> Result<> {
                           SiteBand* own = band(row.uuid(0));
                           if (own != nullptr && closed.insert(row.uuid(1)).second)
                             ++own->bays_closed;
                           return Done{};
                         });
    if (!done) return done;
    return each_row(
        tables_,
        "SELECT feed, subject, hazard_state, measures FROM finding WHERE hazard_state IN (1, 2) "
        "AND ended_by IS NULL AND voided_by IS NULL AND held = 0",
        {}, [&](const Statement& row) -> Result<> {
          SiteBand* own = band(row.uuid(0));
          if (own == nullptr) return Done{};
          if (row.number(2) == 1) ++own->hazards_open;
          if (row.is_null(3)) return Done{};
          const auto measures = cbor::decode(row.bytes(3));
          if (!measures) return fail(measures.error());
          if ((*measures).array() == nullptr) return Done{};
          for (const cbor::Value& one : *(*measures).array())
            if (one.number() != nullptr && *one.number() == static_cast<int>(Measure::closed_off) &&
                closed.insert(row.uuid(1)).second)
              ++own->bays_closed;
          return Done{};
        });
  }

  Result<> read_rules() {
    for (std::size_t i = 0; i < bands_.size(); ++i) {
      if (!rule_sets_[i]) continue;
      auto done = each_row(tables_, "SELECT rest FROM entity WHERE id = ?1", {*rule_sets_[i]},
                           [&](const Statement& row) -> Result<> {
                             const auto rest = map_in(row, 0);
                             if (!rest) return fail(rest.error());
                             const auto* limits = rest->find(rule_set_field::limits);
                             if (limits != nullptr && limits->map() != nullptr)
                               take_rules(bands_[i], *limits->map());
                             return Done{};
                           });
      if (!done) return done;
    }
    return Done{};
  }

  void take_rules(SiteBand& own, const cbor::Map& limits) {
    if (const auto* chances = limits.find(limit_key::limit_chance);
        chances != nullptr && chances->map() != nullptr)
      for (int what = 1; what <= 3; ++what)
        if (const auto tenth_percent = number_in(*chances->map(), what))
          own.chance[static_cast<std::size_t>(what)] = static_cast<double>(*tenth_percent) / 1000;
    for (SiteRun& each : own.runs) {
      const RunPlace& place = runs_.at(each.id);
      const auto category = categories_.find(place.zone);
      if (!place.use_class || category == categories_.end()) continue;
      if (const auto days = longest_interval_days(limits, *place.use_class, category->second))
        each.longest_interval_days = days;
    }
  }

  Database& tables_;
  const TimeZone& zone_;
  std::vector<SiteBand> bands_;
  std::vector<std::optional<Uuid>> rule_sets_;  ///< by place in bands_
  std::unordered_map<Uuid, std::size_t> sites_;
  std::unordered_map<Uuid, RunPlace> runs_;
  std::unordered_map<Uuid, int> categories_;
};

bool shows_in_band(const SheetPart& part, std::set<std::int64_t>& heights) {
  const auto& known = part.now ? part.now : part.last;
  if (known && known->grade >= 3) return true;
  const bool rail =
      part.role == Role::mid_rail || part.role == Role::rail_tube || part.role == Role::weld;
  return rail && heights.insert(part.up_mm).second;
}

}  // namespace

Result<std::vector<SiteBand>> read_sites(Database& tables, const TimeZone& zone) {
  return SitesReader(tables, zone).read();
}

Result<RunSheet> read_band(Database& tables, const Uuid& run) {
  auto sheet = read_run(tables, run);
  if (!sheet) return sheet;
  std::set<std::int64_t> heights;
  std::erase_if(sheet->parts, [&](const SheetPart& part) { return !shows_in_band(part, heights); });
  sheet->parts.shrink_to_fit();
  for (SheetPost& post : sheet->posts) post.first_part = post.parts = 0;
  for (SheetFinding& finding : sheet->findings) finding.part = -1;
  return sheet;
}

}  // namespace kneerail
