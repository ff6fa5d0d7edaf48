#include "schema/store/site_sheet.h"

#include <algorithm>

#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

std::optional<Digest> digest_in(const cbor::Map& fields, int field) {
  const cbor::Value* value = fields.find(field);
  const cbor::Bytes* bytes = value == nullptr ? nullptr : value->bytes();
  Digest digest{};
  if (bytes == nullptr || bytes->size() != digest.size()) return std::nullopt;
  std::copy(bytes->begin(), bytes->end(), digest.begin());
  return digest;
}

template <class Code>
std::optional<Code> code_in(const Thing& thing, int field) {
  const auto number = thing.number(field);
  return number ? std::optional(static_cast<Code>(*number)) : std::nullopt;
}

SiteZone zone_of(const Thing& thing) {
  return {thing.id, thing.name,
          static_cast<int>(thing.number(zone_field::corrosivity_category).value_or(0)),
          static_cast<Exposure>(thing.number(zone_field::exposure).value_or(0))};
}

SaidSite site_of(const Thing& thing) {
  SaidSite site;
  site.id = thing.id;
  site.name = thing.name;
  site.depot = thing.id_field(site_field::depot);
  site.rule_set = thing.id_field(site_field::rule_set);
  if (const cbor::Value* people = thing.rest.find(site_field::people_to_tell);
      people != nullptr && people->array() != nullptr)
    for (const cbor::Value& person : *people->array())
      if (const auto id = person.uuid()) site.people.push_back(*id);
  return site;
}

SheetRun run_of(const Thing& thing, const std::vector<SiteZone>& zones) {
  SheetRun run;
  run.id = thing.id;
  run.name = thing.name;
  for (const SiteZone& zone : zones)
    if (zone.id == thing.parent) run.zone = zone.name;
  run.height_mm = thing.number(run_field::required_height);
  run.drop_mm = thing.number(run_field::drop_behind);
  run.behind = code_in<WhoIsBehind>(thing, run_field::who_is_behind);
  run.below = code_in<WhatIsBelow>(thing, run_field::what_is_below);
  if (const cbor::Value* seasonal = thing.rest.find(run_field::seasonal);
      seasonal != nullptr && seasonal->truth() != nullptr)
    run.seasonal = *seasonal->truth();
  run.access_note = text_in(thing.rest, run_field::access_note);
  return run;
}

class Reading {
 public:
  Reading(Database& tables, const Uuid& site) : tables_(tables), site_(site) {}

  Result<SiteFacts> read() {
    if (auto done = read_organisation(); !done) return fail(done.error());
    if (auto done = read_people(); !done) return fail(done.error());
    if (auto done = read_named(EntityType::depot, facts_.depots); !done) return fail(done.error());
    if (auto done = read_named(EntityType::rule_set, facts_.rule_sets); !done)
      return fail(done.error());
    if (auto done = read_site(); !done) return fail(done.error());
    return std::move(facts_);
  }

 private:
  Result<> read_organisation() {
    auto rows = tables_.prepare("SELECT id FROM entity WHERE type = 1 ORDER BY id LIMIT 1");
    if (!rows) return fail(rows.error());
    auto there = rows->step();
    if (!there) return fail(there.error());
    if (*there) facts_.organisation = rows->uuid(0);
    return Done{};
  }

  Result<> read_people() {
    auto people = things_of_type(tables_, static_cast<int>(EntityType::person));
    if (!people) return fail(people.error());
    for (const Thing& person : *people)
      facts_.people.push_back(
          {person.id, person.code, digest_in(person.rest, person_field::particulars)});
    std::stable_sort(facts_.people.begin(), facts_.people.end(),
                     [](const auto& a, const auto& b) { return a.initials < b.initials; });
    return Done{};
  }

  Result<> read_named(EntityType type, std::vector<std::pair<Uuid, std::string>>& into) {
    auto things = things_of_type(tables_, static_cast<int>(type));
    if (!things) return fail(things.error());
    for (const Thing& thing : *things) into.emplace_back(thing.id, thing.name);
    return Done{};
  }

  Result<> read_site() {
    auto sites = things_of_type(tables_, static_cast<int>(EntityType::site));
    if (!sites) return fail(sites.error());
    const Thing* found = nullptr;
    for (const Thing& site : *sites) {
      if (site.id == site_)
        found = &site;
      else
        facts_.names.push_back(site.name);
    }
    if (site_.is_zero()) return Done{};
    if (found == nullptr) return fail(Fault::not_found, "This site is not in the register.");
    facts_.there = site_of(*found);
    return read_zones();
  }

  Result<> read_zones() {
    auto zones = things_under(tables_, static_cast<int>(EntityType::zone), {site_});
    if (!zones) return fail(zones.error());
    std::vector<Uuid> ids;
    for (const Thing& zone : *zones) {
      ids.push_back(zone.id);
      facts_.there->zones.push_back(zone_of(zone));
      if (const auto rate = zone.number(zone_field::first_year_zinc_loss))
        facts_.rates.push_back({zone.id, *rate, code_in<LossFrom>(zone, zone_field::loss_from)});
    }
    std::stable_sort(facts_.there->zones.begin(), facts_.there->zones.end(),
                     [](const auto& a, const auto& b) { return a.name < b.name; });
    auto runs = things_under(tables_, static_cast<int>(EntityType::run), ids);
    if (!runs) return fail(runs.error());
    for (const Thing& run : *runs) facts_.runs.push_back(run_of(run, facts_.there->zones));
    std::stable_sort(facts_.runs.begin(), facts_.runs.end(),
                     [](const auto& a, const auto& b) { return a.name < b.name; });
    return Done{};
  }

  Database& tables_;
  const Uuid site_;
  SiteFacts facts_;
};

}  // namespace

Result<SiteFacts> read_site_facts(Database& tables, const Uuid& site) {
  return Reading(tables, site).read();
}

}  // namespace kneerail
