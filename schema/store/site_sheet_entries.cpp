#include <algorithm>
#include <utility>

#include "core/records/registers.h"
#include "schema/store/site_sheet.h"
#include "schema/store/standing_run.h"

namespace kneerail {
namespace {

cbor::Value ids_of(const std::vector<Uuid>& ids) {
  cbor::Array list;
  for (const Uuid& id : ids) list.emplace_back(id);
  return list;
}

class Writing {
 public:
  Writing(const SaidSite& site, const SiteFacts& facts, Database& tables, const SiteWriter& writer)
      : site_(site), facts_(facts), tables_(tables), writer_(writer) {}

  Result<std::vector<Entry>> write() {
    organisation_ = facts_.organisation;
    if (organisation_.is_zero()) add_organisation();
    for (const auto& [id, name] : site_.new_depots)
      if (site_.depot == id)
        create(organisation_, id, EntityType::depot, organisation_, {{depot_field::name, name}});
    for (const NewPerson& person : site_.new_people)
      if (std::find(site_.people.begin(), site_.people.end(), person.id) != site_.people.end())
        add_person(person);
    facts_.there ? change_site(*facts_.there) : add_site();
    for (const SiteZone& zone : site_.zones) add_zone(zone);
    if (trouble_) return fail(*trouble_);
    return std::move(entries_);
  }

 private:
  void create(const Uuid& feed, const Uuid& id, EntityType type, std::optional<Uuid> parent,
              cbor::Map fields) {
    const Create made{type, parent, std::move(fields), std::nullopt, MadeBy::typing};
    entries_.push_back({feed, Create::kind, id, writer_.who, to_body(made), id});
  }

  void add_organisation() {
    organisation_ = writer_.mint();
    cbor::Map fields{{organisation_field::name, site_.owner}};
    if (!writer_.time_zone.empty()) fields.set(organisation_field::time_zone, writer_.time_zone);
    create(organisation_, organisation_, EntityType::organisation, {}, std::move(fields));
  }

  void add_person(const NewPerson& person) {
    cbor::Map fields{{person_field::initials, person.initials}};
    if (person.particulars)
      fields.set(person_field::particulars,
                 cbor::Bytes(person.particulars->begin(), person.particulars->end()));
    create(organisation_, person.id, EntityType::person, organisation_, std::move(fields));
  }

  void add_site() {
    cbor::Map fields{{site_field::name, site_.name}};
    if (site_.rule_set) fields.set(site_field::rule_set, *site_.rule_set);
    if (site_.depot) fields.set(site_field::depot, *site_.depot);
    if (!site_.people.empty()) fields.set(site_field::people_to_tell, ids_of(site_.people));
    create(organisation_, site_.id, EntityType::site, organisation_, std::move(fields));
  }

  void change_site(const SaidSite& before) {
    Set set;
    if (site_.name != before.name) change(set, site_.id, site_field::name, site_.name);
    if (site_.rule_set && site_.rule_set != before.rule_set)
      change(set, site_.id, site_field::rule_set, *site_.rule_set);
    if (site_.depot && site_.depot != before.depot)
      change(set, site_.id, site_field::depot, *site_.depot);
    if (site_.people != before.people)
      change(set, site_.id, site_field::people_to_tell, ids_of(site_.people));
    save(organisation_, site_.id, set);
  }

  void add_zone(const SiteZone& zone) {
    const SiteZone* before = nullptr;
    if (facts_.there)
      for (const SiteZone& one : facts_.there->zones)
        if (one.id == zone.id) before = &one;
    if (before == nullptr) {
      cbor::Map fields{{zone_field::name, zone.name},
                       {zone_field::exposure, static_cast<int>(zone.exposure)}};
      if (zone.category > 0) fields.set(zone_field::corrosivity_category, zone.category);
      return create(site_.id, zone.id, EntityType::zone, site_.id, std::move(fields));
    }
    Set set;
    if (zone.name != before->name) change(set, zone.id, zone_field::name, zone.name);
    if (zone.category != before->category && zone.category > 0)
      change(set, zone.id, zone_field::corrosivity_category, zone.category);
    if (zone.exposure != before->exposure)
      change(set, zone.id, zone_field::exposure, static_cast<int>(zone.exposure));
    save(site_.id, zone.id, set);
  }

  void change(Set& set, const Uuid& thing, int field, cbor::Value value) {
    auto seen = seen_values(tables_, thing, field);
    if (!seen) {
      trouble_ = seen.error();
      return;
    }
    set.changes.push_back({field, std::move(value), std::move(*seen)});
  }

  void save(const Uuid& feed, const Uuid& thing, const Set& set) {
    if (set.changes.empty()) return;
    entries_.push_back({feed, Set::kind, thing, writer_.who, to_body(set), {}});
  }

  const SaidSite& site_;
  const SiteFacts& facts_;
  Database& tables_;
  const SiteWriter& writer_;
  Uuid organisation_;
  std::vector<Entry> entries_;
  std::optional<Error> trouble_;
};

Result<> check_site(const SaidSite& site, const SiteFacts& facts) {
  const auto refused = [](std::string sentence) {
    return fail(Fault::invalid_input, std::move(sentence));
  };
  if (facts.organisation.is_zero() && site.owner.empty())
    return refused("Nobody has said yet whose rails these are. Touch the first key and type it.");
  if (site.name.empty())
    return refused("The site has no name yet. Touch the key of its name and type one.");
  if (std::find(facts.names.begin(), facts.names.end(), site.name) != facts.names.end())
    return refused("Another site is named " + site.name + " already. Type another name.");
  if (site.zones.empty())
    return refused(
        "The site has no zone yet: a run stands in one. Touch the key for one more zone.");
  for (auto zone = site.zones.begin(); zone != site.zones.end(); ++zone) {
    if (zone->name.empty()) return refused("A zone has no name yet. Touch its key and type one.");
    const bool twice = std::any_of(site.zones.begin(), zone,
                                   [&](const SiteZone& other) { return other.name == zone->name; });
    if (twice) return refused("Two zones are named " + zone->name + ". Type another name for one.");
  }
  return Done{};
}

}  // namespace

Result<std::vector<Entry>> entries_of(const SaidSite& site, const SiteFacts& facts,
                                      Database& tables, const SiteWriter& writer) {
  if (auto fits = check_site(site, facts); !fits) return fail(fits.error());
  return Writing(site, facts, tables, writer).write();
}

}  // namespace kneerail
