#include "schema/exchange/portfolio_entries.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/corrosion/attack.h"
#include "core/records/registers.h"
#include "core/records/rule_set.h"
#include "schema/exchange/import_ids.h"
#include "schema/store/portfolio_store.h"

namespace kneerail::exchange {
namespace {

using forecast::PartKind;
using FileMaterial = forecast::Material;

/// The component type that parts of equal values share.
struct TypeValues {
  PartKind kind;
  FileMaterial material;
  std::optional<std::int64_t> wall_tenth_mm;
  std::optional<std::int64_t> target_tenth_nm;
  std::optional<std::int64_t> minimum_tenth_nm;
  auto operator<=>(const TypeValues&) const = default;
};

TypeValues type_values(const ComponentRow& row) {
  const bool tube = row.kind == PartKind::post_tube || row.kind == PartKind::rail_tube;
  return {tube ? PartKind::post_tube : row.kind, row.material, row.wall_nominal_tenth_mm,
          row.torque_target_tenth_nm, row.torque_minimum_tenth_nm};
}

/// "fitting zinc_coated_steel target 39 lowest 27": what an owner reads, and what its id is from.
std::string type_reference(const TypeValues& values) {
  std::string text(values.kind == PartKind::post_tube
                       ? "tube"
                       : word_of(kind_words(), static_cast<int>(values.kind)));
  text.append(" ").append(word_of(material_words(), static_cast<int>(values.material)));
  if (values.wall_tenth_mm) text.append(" wall ").append(scaled_to_text(*values.wall_tenth_mm, 1));
  if (values.target_tenth_nm)
    text.append(" target ").append(scaled_to_text(*values.target_tenth_nm, 1));
  if (values.minimum_tenth_nm)
    text.append(" lowest ").append(scaled_to_text(*values.minimum_tenth_nm, 1));
  return text;
}

Uuid type_id(const TypeValues& values) {
  return derived_id("component type", {type_reference(values)});
}

Entry create(const Uuid& feed, const Uuid& id, EntityType type, const Uuid& parent,
             cbor::Map fields, std::string_view reference) {
  Create made;
  made.type = type;
  if (!parent.is_zero()) made.parent = parent;
  made.fields = std::move(fields);
  if (!reference.empty() && !uuid_from_text(reference)) made.import_reference = reference;
  made.made_by = MadeBy::import;
  Entry entry;
  entry.feed = feed;
  entry.kind = Create::kind;
  entry.id = id;
  entry.body = to_body(made);
  return entry;
}

/// A number, or a code; nothing where it is not known.
template <class Value>
void set_if(cbor::Map& map, int key, const std::optional<Value>& value) {
  if (value) map.set(key, static_cast<std::int64_t>(*value));
}

std::int64_t code(auto value) {
  return static_cast<std::int64_t>(value);
}

struct Made {
  Material material;
  std::optional<Protection> protection;
};

/// A file does not say whether zinc is painted: taken as not painted.
Made made_of(FileMaterial material) {
  switch (material) {
    case FileMaterial::zinc_coated_steel:
      return {Material::steel, Protection::hot_dip_zinc};
    case FileMaterial::painted_steel:
      return {Material::steel, Protection::paint_on_steel};
    case FileMaterial::bare_steel:
      return {Material::steel, Protection::bare};
    case FileMaterial::aluminium:
      return {Material::aluminium, std::nullopt};
    case FileMaterial::stainless:
      return {Material::stainless_steel, std::nullopt};
  }
  return {Material::steel, std::nullopt};
}

/// Nothing for a fitting or fixing: a file does not say which it is.
std::optional<WhatItDoes> what_a_type_does(PartKind kind) {
  switch (kind) {
    case PartKind::post_tube:
    case PartKind::rail_tube:
      return WhatItDoes::tube;
    case PartKind::weld:
      return WhatItDoes::weld;
    case PartKind::welded_section:
      return WhatItDoes::welded_section;
    default:
      return std::nullopt;
  }
}

Role role_of(PartKind kind) {
  switch (kind) {
    case PartKind::post_tube:
      return Role::post_tube;
    case PartKind::rail_tube:
      return Role::rail_tube;
    case PartKind::fitting:
      return Role::fitting;
    case PartKind::weld:
      return Role::weld;
    case PartKind::base_fixing:
      return Role::base_fixing;
    case PartKind::toe_board:
      return Role::toe_board;
    case PartKind::infill:
      return Role::infill;
    case PartKind::gate:
      return Role::gate;
    case PartKind::cut_edge:
      return Role::cut_edge;
    case PartKind::welded_section:
      return Role::welded_section;
  }
  return Role::fitting;
}

std::optional<Exposure> exposure_of(forecast::Exposure exposure) {
  switch (exposure) {
    case forecast::Exposure::unknown:
      return std::nullopt;
    case forecast::Exposure::open:
      return Exposure::open;
    case forecast::Exposure::sheltered:
      return Exposure::sheltered;
    case forecast::Exposure::spray:
      return Exposure::spray;
  }
  return std::nullopt;
}

/// A 20-year mean as the zone keeps it: the loss of the first year, 0.001 µm.
std::int64_t first_year_thousandth_um(double mean_um_per_year, double exponent) {
  const double factor = corrosion::AttackPath(exponent).first_year_to_mean();
  return std::llround(mean_um_per_year / factor * 1000);
}

cbor::Map fields_of_zone(const ZoneRow& row) {
  const forecast::Settings settings;
  cbor::Map fields;
  fields.set(zone_field::name, row.id);
  if (row.category) fields.set(zone_field::corrosivity_category, code(*row.category) + 1);
  if (row.zinc_rate_um_per_year)
    fields.set(zone_field::first_year_zinc_loss,
               first_year_thousandth_um(*row.zinc_rate_um_per_year, settings.zinc_path_exponent));
  set_if(fields, zone_field::zinc_loss_ln_sd, row.zinc_rate_ln_sd_thousandth);
  if (row.steel_rate_um_per_year)
    fields.set(zone_field::first_year_steel_loss,
               first_year_thousandth_um(*row.steel_rate_um_per_year, settings.steel_path_exponent));
  if (row.zinc_rate_um_per_year && row.category &&
      is_category_rate(*row.zinc_rate_um_per_year, *row.category, settings))
    fields.set(zone_field::loss_from, code(LossFrom::category));
  return fields;
}

std::string mm_text(std::int64_t mm) {
  return std::to_string(mm);
}

}  // namespace

std::string type_reference(const ComponentRow& row) {
  return type_reference(type_values(row));
}

PortfolioEntries::PortfolioEntries(const CheckedPortfolio& portfolio, Uuid organisation,
                                   TimeZone zone)
    : portfolio_(portfolio),
      organisation_(organisation),
      zone_(std::move(zone)),
      layout_(lay_out(portfolio)) {
  for (std::size_t i = 0; i < portfolio.zones.size(); ++i) zone_places_[portfolio.zones[i].id] = i;
  for (const auto& row : portfolio.components)
    component_ids_.push_back(id_of_reference("component", row.id));
  std::map<std::pair<std::string, Date>, std::size_t> first;
  std::map<Uuid, std::size_t> first_row;
  for (std::size_t i = 0; i < portfolio.visits.size(); ++i) {
    const VisitRow& row = portfolio.visits[i];
    first_visit_of_day_.push_back(first.try_emplace({row.site, row.day}, i).first->second);
    first_row_of_visit_.push_back(first_row.try_emplace(visit_id(i), i).first->second);
  }
  works_from_.assign(portfolio.components.size() + 1, portfolio.works.size());
  for (std::size_t i = portfolio.works.size(); i-- > 0;)
    works_from_[static_cast<std::size_t>(portfolio.works[i].component)] = i;
  for (std::size_t i = portfolio.components.size(); i-- > 0;)
    works_from_[i] = std::min(works_from_[i], works_from_[i + 1]);
}

Entry PortfolioEntries::organisation(const Uuid& id, std::string_view name) {
  cbor::Map fields;
  fields.set(organisation_field::name, name);
  return create(id, id, EntityType::organisation, {}, std::move(fields), {});
}

Uuid PortfolioEntries::site_id(std::string_view reference) const {
  return id_of_reference("site", reference);
}

Uuid PortfolioEntries::run_id(std::size_t run) const {
  return id_of_reference("run", portfolio_.runs[run].id);
}

Uuid PortfolioEntries::site_of_run(std::size_t run) const {
  const auto zone = zone_places_.at(portfolio_.runs[run].zone);
  return site_id(portfolio_.zones[zone].site);
}

Uuid PortfolioEntries::post_id(std::size_t run, std::size_t post) const {
  return derived_id("post",
                    {portfolio_.runs[run].id, mm_text(layout_.runs[run].posts[post].chainage_mm)});
}

Uuid PortfolioEntries::bay_id(std::size_t run, std::size_t bay) const {
  const auto& posts = layout_.runs[run].posts;
  return derived_id("bay", {portfolio_.runs[run].id, mm_text(posts[bay].chainage_mm),
                            mm_text(posts[bay + 1].chainage_mm)});
}

/// Empty where the file sets no limit for the site.
std::string PortfolioEntries::rule_set_reference(const SiteRow& site) const {
  std::string text;
  if (portfolio_.zinc_gone_tenth_um)
    text.append(" zinc gone ").append(scaled_to_text(*portfolio_.zinc_gone_tenth_um, 1));
  if (site.first_maintenance_tenth_um)
    text.append(" first maintenance ").append(scaled_to_text(*site.first_maintenance_tenth_um, 1));
  if (portfolio_.replace_grade)
    text.append(" replace at grade ").append(std::to_string(*portfolio_.replace_grade));
  return text.empty() ? text : "limits:" + text;
}

/// Limits 1, 2 and 6. Sites of equal limits share a rule set.
std::vector<Entry> PortfolioEntries::rule_sets() const {
  std::vector<Entry> entries;
  std::set<std::string> made;
  for (const auto& site : portfolio_.sites) {
    const std::string reference = rule_set_reference(site);
    if (reference.empty() || !made.insert(reference).second) continue;
    cbor::Map limits;
    set_if(limits, limit_key::zinc_gone, portfolio_.zinc_gone_tenth_um);
    set_if(limits, limit_key::first_maintenance, site.first_maintenance_tenth_um);
    set_if(limits, limit_key::replace_grade, portfolio_.replace_grade);
    cbor::Map fields;
    fields.set(rule_set_field::name, reference);
    fields.set(rule_set_field::limits, std::move(limits));
    entries.push_back(create(organisation_, derived_id("rule set", {reference}),
                             EntityType::rule_set, organisation_, std::move(fields), reference));
  }
  return entries;
}

std::vector<Entry> PortfolioEntries::component_types() const {
  using namespace component_type_field;
  std::set<TypeValues> made;
  for (const auto& row : portfolio_.components) made.insert(type_values(row));
  std::vector<Entry> entries;
  for (const auto& values : made) {
    cbor::Map fields;
    const Made made_from = made_of(values.material);
    set_if(fields, what_it_does, what_a_type_does(values.kind));
    fields.set(material, code(made_from.material));
    set_if(fields, protection, made_from.protection);
    set_if(fields, tube_wall, values.wall_tenth_mm);
    set_if(fields, torque_target, values.target_tenth_nm);
    set_if(fields, torque_lowest, values.minimum_tenth_nm);
    const std::string reference = type_reference(values);
    fields.set(owners_name, reference);
    entries.push_back(create(organisation_, type_id(values), EntityType::component_type,
                             organisation_, std::move(fields), reference));
  }
  return entries;
}

std::vector<Entry> PortfolioEntries::people() const {
  constexpr std::size_t initials_max = 6;
  std::set<std::string> made;
  for (const auto& row : portfolio_.visits)
    if (!row.inspector.empty()) made.insert(row.inspector);
  std::vector<Entry> entries;
  for (const auto& person : made) {
    cbor::Map fields;
    if (person.size() <= initials_max) fields.set(person_field::initials, person);
    entries.push_back(create(organisation_, id_of_reference("person", person), EntityType::person,
                             organisation_, std::move(fields), person));
  }
  return entries;
}

std::vector<Entry> PortfolioEntries::instruments() const {
  constexpr std::size_t serial_max = 40;
  std::set<std::pair<InstrumentKind, std::string>> made;
  for (const auto& row : portfolio_.visits) {
    made.insert({InstrumentKind::coating_gauge, row.coating_gauge});
    made.insert({InstrumentKind::torque_wrench, row.wrench});
    made.insert({InstrumentKind::wall_gauge, row.wall_gauge});
  }
  std::vector<Entry> entries;
  for (const auto& [kind, reference] : made) {
    if (reference.empty()) continue;
    cbor::Map fields;
    fields.set(instrument_field::kind, code(kind));
    if (reference.size() <= serial_max && !uuid_from_text(reference))
      fields.set(instrument_field::serial, reference);
    entries.push_back(create(organisation_, instrument_id(kind, reference), EntityType::instrument,
                             organisation_, std::move(fields), reference));
  }
  return entries;
}

std::vector<Entry> PortfolioEntries::sites() const {
  std::vector<Entry> entries;
  for (const auto& row : portfolio_.sites) {
    cbor::Map fields;
    fields.set(site_field::name, row.id);
    if (const auto reference = rule_set_reference(row); !reference.empty())
      fields.set(site_field::rule_set, derived_id("rule set", {reference}));
    entries.push_back(create(organisation_, site_id(row.id), EntityType::site, organisation_,
                             std::move(fields), row.id));
  }
  return entries;
}

std::vector<Entry> PortfolioEntries::zones() const {
  std::vector<Entry> entries;
  for (const auto& row : portfolio_.zones) {
    const Uuid site = site_id(row.site);
    entries.push_back(create(site, id_of_reference("zone", row.id), EntityType::zone, site,
                             fields_of_zone(row), row.id));
  }
  return entries;
}

std::vector<Entry> PortfolioEntries::runs() const {
  std::vector<Entry> entries;
  for (std::size_t run = 0; run < portfolio_.runs.size(); ++run) {
    const RunRow& row = portfolio_.runs[run];
    cbor::Map fields;
    fields.set(run_field::name, row.id);
    fields.set(run_field::order, code(run) + 1);
    entries.push_back(create(site_of_run(run), run_id(run), EntityType::run,
                             id_of_reference("zone", row.zone), std::move(fields), row.id));
  }
  return entries;
}

std::vector<Entry> PortfolioEntries::posts_and_bays(std::size_t run) const {
  const auto& posts = layout_.runs[run].posts;
  const Uuid site = site_of_run(run);
  std::vector<Entry> entries;
  for (std::size_t post = 0; post < posts.size(); ++post) {
    cbor::Map fields;
    fields.set(post_field::label, std::to_string(post + 1));
    fields.set(post_field::chainage, posts[post].chainage_mm);
    fields.set(post_field::order, code(post) + 1);
    entries.push_back(
        create(site, post_id(run, post), EntityType::post, run_id(run), std::move(fields), {}));
  }
  for (std::size_t bay = 0; bay + 1 < posts.size(); ++bay) {
    cbor::Map fields;
    fields.set(bay_field::from_post, post_id(run, bay));
    fields.set(bay_field::to_post, post_id(run, bay + 1));
    fields.set(bay_field::kind, code(BayKind::rails));
    entries.push_back(
        create(site, bay_id(run, bay), EntityType::bay, run_id(run), std::move(fields), {}));
  }
  return entries;
}

Entry PortfolioEntries::component(std::size_t place) const {
  using namespace component_field;
  const ComponentRow& row = portfolio_.components[place];
  const Placement& at = layout_.placements[place];
  const auto run = static_cast<std::size_t>(at.run);
  const auto parent = static_cast<std::size_t>(at.parent);
  cbor::Map fields;
  fields.set(role, code(role_of(row.kind)));
  fields.set(component_type, type_id(type_values(row)));
  fields.set(component_field::place, cbor::Array{at.along_mm, std::int64_t{0}});
  if (row.installed) fields.set(date_in_service, std::int64_t{row.installed->days});
  set_if(fields, coating_nominal, row.coating_nominal_tenth_um);
  if (row.reference_areas > 1)
    fields.set(spots,
               cbor::Array(static_cast<std::size_t>(row.reference_areas), code(Face::all_round)));
  set_if(fields, exposure, exposure_of(row.exposure));
  set_if(fields, wall_limit, row.wall_limit_hundredth_mm);
  return create(site_of_run(run), component_ids_[place], EntityType::component,
                at.in_bay ? bay_id(run, parent) : post_id(run, parent), std::move(fields), row.id);
}

}  // namespace kneerail::exchange
