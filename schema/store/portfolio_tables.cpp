// The parts of a portfolio from the entity table; visits, works and readings are in
// portfolio_visits.cpp and portfolio_works.cpp.

#include "schema/store/portfolio_tables.h"

#include <algorithm>
#include <initializer_list>
#include <utility>

#include "core/corrosion/attack.h"
#include "core/records/entities.h"
#include "core/records/rule_set.h"
#include "schema/store/portfolio_store.h"

namespace kneerail {
namespace {

using forecast::PartKind;
using PartExposure = forecast::Exposure;
using PartMaterial = forecast::Material;

std::optional<PartKind> kind_of_role(std::int64_t role) {
  constexpr PartKind kinds[] = {
      PartKind::post_tube, PartKind::rail_tube, PartKind::rail_tube,   PartKind::rail_tube,
      PartKind::fitting,   PartKind::weld,      PartKind::base_fixing, PartKind::toe_board,
      PartKind::infill,    PartKind::gate,      PartKind::cut_edge,    PartKind::welded_section};
  if (role < 1 || role > static_cast<std::int64_t>(std::size(kinds))) return std::nullopt;
  return kinds[role - 1];
}

/// Spray, immersed at times and de-icing salt are one to the forecast.
PartExposure exposure_of(std::optional<std::int64_t> code) {
  switch (static_cast<Exposure>(code.value_or(0))) {
    case Exposure::open:
      return PartExposure::open;
    case Exposure::sheltered:
      return PartExposure::sheltered;
    case Exposure::spray:
    case Exposure::immersed_at_times:
    case Exposure::de_icing_salt:
      return PartExposure::spray;
    default:
      return PartExposure::unknown;
  }
}

PartMaterial material_of(std::optional<std::int64_t> material,
                         std::optional<std::int64_t> protection) {
  const auto made_of = static_cast<Material>(material.value_or(0));
  const auto kept_by = static_cast<Protection>(protection.value_or(0));
  if (made_of == Material::aluminium) return PartMaterial::aluminium;
  if (made_of == Material::stainless_steel) return PartMaterial::stainless;
  if (kept_by == Protection::paint_on_steel) return PartMaterial::painted_steel;
  if (kept_by == Protection::bare) return PartMaterial::bare_steel;
  return PartMaterial::zinc_coated_steel;
}

std::optional<double> divided(std::optional<std::int64_t> number, double by) {
  if (!number) return std::nullopt;
  return static_cast<double>(*number) / by;
}

std::optional<double> mean_um(std::optional<std::int64_t> first_year_thousandth, double exponent) {
  const auto first_year = divided(first_year_thousandth, 1000);
  if (!first_year) return std::nullopt;
  return *first_year * corrosion::AttackPath(exponent).first_year_to_mean();
}

/// Millimetres along from the post, or from the middle of the bay.
std::int64_t along_mm(const Thing& component) {
  const auto* place = component.rest.find(component_field::place);
  if (place == nullptr || place->array() == nullptr || place->array()->empty()) return 0;
  const auto* along = place->array()->front().number();
  return along == nullptr ? 0 : *along;
}

}  // namespace

PortfolioTables::PortfolioTables(Database& tables, PortfolioQuestion question)
    : tables_(tables),
      question_(std::move(question)),
      sites_asked_(question_.sites.begin(), question_.sites.end()) {}

Result<std::unique_ptr<PortfolioTables>> PortfolioTables::open(Database& tables,
                                                               PortfolioQuestion question) {
  std::unique_ptr<PortfolioTables> made(new PortfolioTables(tables, std::move(question)));
  auto days = organisation_days(tables);
  if (!days) return fail(days.error());
  made->zone_ = std::move(days->zone);
  if (auto ok = made->load_things_of_all(); !ok) return fail(ok.error());
  if (auto ok = made->load_things_of_parts(); !ok) return fail(ok.error());
  made->find_post_spacings();
  if (auto ok = made->mark_out_of_shape(); !ok) return fail(ok.error());
  if (auto ok = made->load_parts(); !ok) return fail(ok.error());
  if (auto ok = made->load_visits(); !ok) return fail(ok.error());
  made->make_visits();
  return made;
}

Result<std::unique_ptr<PortfolioTables>> PortfolioTables::open_for_sites(
    Database& tables, PortfolioQuestion question) {
  question.sites.clear();
  std::unique_ptr<PortfolioTables> made(new PortfolioTables(tables, std::move(question)));
  made->site_by_site_ = true;
  auto days = organisation_days(tables);
  if (!days) return fail(days.error());
  made->zone_ = std::move(days->zone);
  if (auto ok = made->load_things_of_all(); !ok) return fail(ok.error());
  const auto without = without_own_reference(tables);
  if (!without) return fail(without.error());
  made->without_reference_.insert(without->begin(), without->end());
  return made;
}

Result<> PortfolioTables::turn_to(const Uuid& site, const std::vector<Uuid>& components) {
  check(site_by_site_, "it was opened for sites");
  if (!read_for_all_) {
    if (auto ok = mark_out_of_shape(); !ok) return ok;
    if (auto ok = load_visits(); !ok) return ok;
    read_for_all_ = true;
  }
  for (const Uuid& before : sites_asked_)
    for (const std::size_t p : visits_of_site_[before]) visit_parts_[p].asked = false;
  for (VisitPart* part : std::exchange(asked_late_, {})) part->asked = false;
  sites_asked_ = {site};
  for (const std::size_t p : visits_of_site_[site]) visit_parts_[p].asked = true;
  spacing_of_post_mm_.clear();
  parts_.clear();
  visits_.clear();
  limits_.clear();
  foils_.clear();
  part_places_.clear();
  parts_of_run_.clear();
  if (auto ok = load_things_of_site(components); !ok) return ok;
  find_post_spacings();
  if (auto ok = load_parts(); !ok) return ok;
  make_visits();
  std::vector<Uuid> subjects;
  for (const auto& [id, place] : part_places_) subjects.push_back(id);
  for (const auto& [id, places] : parts_of_run_) subjects.push_back(id);
  std::sort(subjects.begin(), subjects.end());
  subjects.erase(std::unique(subjects.begin(), subjects.end()), subjects.end());
  subjects_ = bytes_of_ids(subjects);
  return Done{};
}

bool PortfolioTables::is_asked(const Uuid& site) const {
  if (sites_asked_.empty()) return !site_by_site_;
  return sites_asked_.contains(site);
}

namespace {

Result<> load_each(Database& tables, std::initializer_list<std::pair<Things*, EntityType>> wanted) {
  for (const auto& [things, type] : wanted) {
    auto loaded = load_things(tables, static_cast<int>(type));
    if (!loaded) return fail(loaded.error());
    *things = std::move(*loaded);
  }
  return Done{};
}

void keep_each_once(std::vector<Uuid>& ids) {
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
}

std::vector<Uuid> parents_of(std::initializer_list<const Things*> lists) {
  std::vector<Uuid> parents;
  for (const Things* things : lists)
    for (const Thing& thing : things->all()) parents.push_back(thing.parent);
  keep_each_once(parents);
  return parents;
}

/// The posts that bays stand between.
std::vector<Uuid> ends_of(const Things& bays) {
  std::vector<Uuid> ends;
  for (const Thing& bay : bays.all())
    for (const int field : {bay_field::from_post, bay_field::to_post})
      if (const auto post = bay.id_field(field)) ends.push_back(*post);
  return ends;
}

}  // namespace

Result<> PortfolioTables::load_things_of_all() {
  return load_each(tables_, {{&sites_, EntityType::site},
                             {&types_, EntityType::component_type},
                             {&instruments_, EntityType::instrument},
                             {&people_, EntityType::person},
                             {&rule_sets_, EntityType::rule_set},
                             {&depots_, EntityType::depot}});
}

Result<> PortfolioTables::load_things_of_parts() {
  return load_each(tables_, {{&zones_, EntityType::zone},
                             {&runs_, EntityType::run},
                             {&posts_, EntityType::post},
                             {&bays_, EntityType::bay},
                             {&components_, EntityType::component}});
}

Result<std::vector<Thing>> PortfolioTables::with_references(
    Result<std::vector<Thing>> things) const {
  if (things)
    for (Thing& thing : *things)
      if (without_reference_.contains(thing.id)) thing.reference.clear();
  return things;
}

Result<std::vector<std::string>> PortfolioTables::part_ids(
    const std::vector<Uuid>& components) const {
  auto things =
      with_references(things_among(tables_, static_cast<int>(EntityType::component), components));
  if (!things) return fail(things.error());
  const Things known(std::move(*things));
  std::vector<std::string> ids;
  for (const Thing& component : known.all())
    if (kind_of_role(component.role.value_or(0))) ids.push_back(known.text(component.id));
  std::sort(ids.begin(), ids.end());
  return ids;
}

/// The site's components, and what they stand in, whichever site that was made for.
Result<> PortfolioTables::load_things_of_site(const std::vector<Uuid>& components) {
  const auto load = [&](Things& into, EntityType type, const std::vector<Uuid>& ids) -> Result<> {
    auto things = with_references(things_among(tables_, static_cast<int>(type), ids));
    if (!things) return fail(things.error());
    into = Things(std::move(*things));
    return Done{};
  };
  if (auto ok = load(components_, EntityType::component, components); !ok) return ok;
  const auto places = parents_of({&components_});
  if (auto ok = load(posts_, EntityType::post, places); !ok) return ok;
  if (auto ok = load(bays_, EntityType::bay, places); !ok) return ok;
  const auto runs = parents_of({&posts_, &bays_});
  if (auto ok = load(runs_, EntityType::run, runs); !ok) return ok;
  if (auto ok = load(zones_, EntityType::zone, parents_of({&runs_})); !ok) return ok;
  // How far a post stands from the next hangs on all posts of its run.
  auto posts = things_under(tables_, static_cast<int>(EntityType::post), runs);
  if (!posts) return fail(posts.error());
  auto wanted = ends_of(bays_);
  wanted.insert(wanted.end(), places.begin(), places.end());
  for (const Thing& post : *posts) wanted.push_back(post.id);
  keep_each_once(wanted);
  return load(posts_, EntityType::post, wanted);
}

const cbor::Value* PortfolioTables::rule_value(const Thing& site, int limit) const {
  const auto id = site.id_field(site_field::rule_set);
  const Thing* rules = id ? rule_sets_.find(*id) : nullptr;
  if (rules == nullptr) return nullptr;
  if (const auto from = rules->number(rule_set_field::in_force_from);
      from && !is_known_on(Date{static_cast<std::int32_t>(*from)}))
    return nullptr;
  const auto* limits = rules->rest.find(rule_set_field::limits);
  return limits == nullptr || limits->map() == nullptr ? nullptr : limits->map()->find(limit);
}

std::optional<std::int64_t> PortfolioTables::rule(const Thing& site, int limit) const {
  const auto* value = rule_value(site, limit);
  if (value == nullptr || value->number() == nullptr) return std::nullopt;
  return *value->number();
}

forecast::SiteLimits PortfolioTables::limits_of(const Thing& site) const {
  forecast::SiteLimits limits;
  limits.site = sites_.text(site.id);
  limits.zinc_gone_um = divided(rule(site, limit_key::zinc_gone), 10);
  if (const auto grade = rule(site, limit_key::replace_grade))
    limits.replace_grade = static_cast<int>(*grade);
  const auto* chances = rule_value(site, limit_key::limit_chance);
  if (chances == nullptr || chances->map() == nullptr) return limits;
  for (int what = 1; what <= 3; ++what) {
    const auto* one = chances->map()->find(what);
    if (one != nullptr && one->number() != nullptr)
      limits.chance[static_cast<std::size_t>(what)] = static_cast<double>(*one->number()) / 1000;
  }
  return limits;
}

void PortfolioTables::set_place(const Thing& component, forecast::Part& part) const {
  std::int64_t base_mm = 0;
  Uuid run_id;
  if (const Thing* post = posts_.find(component.parent)) {
    base_mm = post->chainage_mm.value_or(0);
    run_id = post->parent;
  } else if (const Thing* bay = bays_.find(component.parent)) {
    const Thing* from = posts_.find(bay->id_field(bay_field::from_post).value_or(Uuid{}));
    const Thing* to = posts_.find(bay->id_field(bay_field::to_post).value_or(Uuid{}));
    const std::int64_t start = from == nullptr ? 0 : from->chainage_mm.value_or(0);
    const std::int64_t end = to == nullptr ? start : to->chainage_mm.value_or(start);
    base_mm = start + (end - start) / 2;
    run_id = bay->parent;
  }
  part.chainage_m = static_cast<double>(base_mm + along_mm(component)) / 1000;
  part.run = runs_.text(run_id);
  const Thing* run = runs_.find(run_id);
  if (run == nullptr) return;
  part.zone = zones_.text(run->parent);
  part.consequence = static_cast<int>(run->number(run_field::consequence).value_or(0));
  if (const Thing* zone = zones_.find(run->parent)) set_zone(*zone, part);
}

void PortfolioTables::set_zone(const Thing& zone, forecast::Part& part) const {
  using namespace zone_field;
  if (const auto code = zone.number(corrosivity_category); code && *code >= 1 && *code <= 6)
    part.category = static_cast<forecast::Category>(*code - 1);
  part.exposure = exposure_of(zone.number(exposure));
  part.zinc_rate_um_per_year =
      mean_um(zone.number(first_year_zinc_loss), question_.settings.zinc_path_exponent);
  part.prior_is_category = zone.number(loss_from) == static_cast<int>(LossFrom::category);
  part.zinc_rate_ln_sd = divided(zone.number(zinc_loss_ln_sd), 1000);
  part.steel_rate_um_per_year =
      mean_um(zone.number(first_year_steel_loss), question_.settings.steel_path_exponent);
}

void PortfolioTables::set_type(const Thing& component, forecast::Part& part) const {
  using namespace component_type_field;
  if (!component.component_type) return;
  part.component_type = types_.text(*component.component_type);
  const Thing* type = types_.find(*component.component_type);
  if (type == nullptr) return;
  part.material = material_of(type->number(material), type->number(protection));
  part.painted = type->number(protection) == static_cast<int>(Protection::zinc_plus_paint);
  part.wall_nominal_mm = divided(type->number(tube_wall), 10);
  part.torque_target_nm = divided(type->number(torque_target), 10);
  part.torque_minimum_nm = divided(type->number(torque_lowest), 10);
  part.nominal_coating_um = divided(type->coating_nominal_tenth_um, 10);
  if (!part.nominal_coating_um)
    part.nominal_coating_um = divided(type->number(coating_nominal), 10);
}

void PortfolioTables::set_rules(const Thing& site, forecast::Part& part) const {
  part.depot = depots_.text(site.id_field(site_field::depot).value_or(Uuid{}));
  part.first_maintenance_um = divided(rule(site, limit_key::first_maintenance), 10);
  if (const auto share = divided(rule(site, limit_key::wall_share_least), 1000);
      share && !part.wall_limit_mm && part.wall_nominal_mm)
    part.wall_limit_mm = *share * *part.wall_nominal_mm;
  if (const auto share = divided(rule(site, limit_key::torque_share_least), 1000);
      share && !part.torque_minimum_nm && part.torque_target_nm)
    part.torque_minimum_nm = *share * *part.torque_target_nm;
}

Result<> PortfolioTables::load_parts() {
  std::vector<std::pair<forecast::Part, const Thing*>> made;
  for (const Thing& component : components_.all()) {
    const auto kind = kind_of_role(component.role.value_or(0));
    if (!kind || !is_asked(component.feed)) continue;
    forecast::Part part;
    part.id = components_.text(component.id);
    part.site = sites_.text(component.feed);
    part.kind = *kind;
    set_place(component, part);
    set_type(component, part);
    if (const auto code = component.number(component_field::exposure))
      part.exposure = exposure_of(code);
    if (component.date_in_service)
      part.installed = Date{static_cast<std::int32_t>(*component.date_in_service)};
    if (component.coating_nominal_tenth_um)
      part.nominal_coating_um = divided(component.coating_nominal_tenth_um, 10);
    if (const auto* faces = component.rest.find(component_field::spots); faces && faces->array())
      part.reference_areas = std::max(1, static_cast<int>(faces->array()->size()));
    part.wall_limit_mm = divided(component.number(component_field::wall_limit), 100);
    part.screws = static_cast<int>(component.number(component_field::screws_count).value_or(0));
    if (const Thing* site = sites_.find(component.feed)) {
      set_rules(*site, part);
      set_load(*site, component, part);
    }
    part.out_of_shape = is_out_of_shape(component);
    take_off_unused(part);
    made.emplace_back(std::move(part), &component);
  }
  std::sort(made.begin(), made.end(),
            [](const auto& a, const auto& b) { return a.first.id < b.first.id; });
  for (auto& [part, component] : made) {
    const auto place = static_cast<std::int32_t>(parts_.size());
    part_places_[component->id] = place;
    const Thing* post = posts_.find(component->parent);
    const Thing* bay = bays_.find(component->parent);
    if (post || bay) parts_of_run_[post ? post->parent : bay->parent].push_back(place);
    if (component->part_of) parts_of_run_[*component->part_of].push_back(place);
    parts_.push_back(std::move(part));
  }
  if (site_by_site_) {
    for (const Uuid& id : sites_asked_)
      if (const Thing* site = sites_.find(id)) limits_.push_back(limits_of(*site));
    return Done{};
  }
  for (const Thing& site : sites_.all())
    if (is_asked(site.id)) limits_.push_back(limits_of(site));
  std::sort(limits_.begin(), limits_.end(),
            [](const auto& a, const auto& b) { return a.site < b.site; });
  return Done{};
}

}  // namespace kneerail
