// The parts of a portfolio from the entity table; visits, works and readings are in
// portfolio_visits.cpp and portfolio_works.cpp.

#include "schema/store/portfolio_tables.h"

#include <algorithm>
#include <utility>

#include "core/corrosion/attack.h"
#include "schema/store/portfolio_store.h"
#include "schema/store/portfolio_tables_inside.h"

namespace kneerail {
namespace {

using forecast::Exposure;
using forecast::Material;
using forecast::PartKind;

std::optional<PartKind> kind_of_role(std::int64_t role) {
  constexpr PartKind kinds[] = {
      PartKind::post_tube, PartKind::rail_tube, PartKind::rail_tube,   PartKind::rail_tube,
      PartKind::fitting,   PartKind::weld,      PartKind::base_fixing, PartKind::toe_board,
      PartKind::infill,    PartKind::gate,      PartKind::cut_edge,    PartKind::welded_section};
  if (role < 1 || role > static_cast<std::int64_t>(std::size(kinds))) return std::nullopt;
  return kinds[role - 1];
}

/// Spray, immersed at times and de-icing salt are one to the forecast.
Exposure exposure_of(std::optional<std::int64_t> code) {
  if (code == 1) return Exposure::open;
  if (code == 2) return Exposure::sheltered;
  return code.value_or(0) >= 3 ? Exposure::spray : Exposure::unknown;
}

Material material_of(std::optional<std::int64_t> material, std::optional<std::int64_t> protection) {
  enum : std::int64_t { aluminium = 3, stainless = 4 };
  enum : std::int64_t { paint_on_steel = 3, bare = 5 };
  if (material == aluminium) return Material::aluminium;
  if (material == stainless) return Material::stainless;
  if (protection == paint_on_steel) return Material::painted_steel;
  if (protection == bare) return Material::bare_steel;
  return Material::zinc_coated_steel;
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
  constexpr int place_field = 3;
  const auto* place = component.rest.find(place_field);
  if (place == nullptr || place->array() == nullptr || place->array()->empty()) return 0;
  const auto* along = place->array()->front().number();
  return along == nullptr ? 0 : *along;
}

}  // namespace

PortfolioTables::PortfolioTables(Database& tables, PortfolioQuestion question)
    : tables_(tables), question_(std::move(question)) {}

Result<std::unique_ptr<PortfolioTables>> PortfolioTables::open(Database& tables,
                                                               PortfolioQuestion question) {
  std::unique_ptr<PortfolioTables> made(new PortfolioTables(tables, std::move(question)));
  if (auto ok = made->load_things_of_parts(); !ok) return fail(ok.error());
  if (auto ok = made->load_parts(); !ok) return fail(ok.error());
  if (auto ok = made->load_visits(); !ok) return fail(ok.error());
  return made;
}

bool PortfolioTables::is_asked(const Uuid& site) const {
  return question_.sites.empty() ||
         std::find(question_.sites.begin(), question_.sites.end(), site) != question_.sites.end();
}

Result<> PortfolioTables::load_things_of_parts() {
  const std::pair<Things*, int> wanted[] = {{&sites_, type_site},
                                            {&zones_, type_zone},
                                            {&runs_, type_run},
                                            {&posts_, type_post},
                                            {&bays_, type_bay},
                                            {&types_, type_component_type},
                                            {&instruments_, type_instrument},
                                            {&people_, type_person},
                                            {&rule_sets_, type_rule_set},
                                            {&depots_, type_depot},
                                            {&components_, type_component}};
  for (const auto& [things, type] : wanted) {
    auto loaded = load_things(tables_, type);
    if (!loaded) return fail(loaded.error());
    *things = std::move(*loaded);
  }
  return Done{};
}

std::optional<std::int64_t> PortfolioTables::rule(const Thing& site, int limit) const {
  enum : int { rule_set_field = 6, limits_field = 3, in_force_field = 4 };
  const auto id = site.id_field(rule_set_field);
  const Thing* rules = id ? rule_sets_.find(*id) : nullptr;
  if (rules == nullptr) return std::nullopt;
  if (const auto from = rules->number(in_force_field);
      from && !is_known_on(Date{static_cast<std::int32_t>(*from)}))
    return std::nullopt;
  const auto* limits = rules->rest.find(limits_field);
  if (limits == nullptr || limits->map() == nullptr) return std::nullopt;
  const auto* value = limits->map()->find(limit);
  if (value == nullptr || value->number() == nullptr) return std::nullopt;
  return *value->number();
}

void PortfolioTables::set_place(const Thing& component, forecast::Part& part) const {
  enum : int { from_post = 1, to_post = 2, consequence = 15 };
  std::int64_t base_mm = 0;
  Uuid run_id;
  if (const Thing* post = posts_.find(component.parent)) {
    base_mm = post->chainage_mm.value_or(0);
    run_id = post->parent;
  } else if (const Thing* bay = bays_.find(component.parent)) {
    const Thing* from = posts_.find(bay->id_field(from_post).value_or(Uuid{}));
    const Thing* to = posts_.find(bay->id_field(to_post).value_or(Uuid{}));
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
  part.consequence = static_cast<int>(run->number(consequence).value_or(0));
  if (const Thing* zone = zones_.find(run->parent)) set_zone(*zone, part);
}

void PortfolioTables::set_zone(const Thing& zone, forecast::Part& part) const {
  enum : int { category = 2, exposure = 3, zinc_loss = 7, spread = 8, steel_loss = 9, from = 10 };
  constexpr std::int64_t from_category = 1;
  if (const auto code = zone.number(category); code && *code >= 1 && *code <= 6)
    part.category = static_cast<forecast::Category>(*code - 1);
  part.exposure = exposure_of(zone.number(exposure));
  part.zinc_rate_um_per_year =
      mean_um(zone.number(zinc_loss), question_.settings.zinc_path_exponent);
  part.prior_is_category = zone.number(from) == from_category;
  part.zinc_rate_ln_sd = divided(zone.number(spread), 1000);
  part.steel_rate_um_per_year =
      mean_um(zone.number(steel_loss), question_.settings.steel_path_exponent);
}

void PortfolioTables::set_type(const Thing& component, forecast::Part& part) const {
  enum : int { material = 2, protection = 3, tube_wall = 5, target = 6, lowest = 7, nominal = 8 };
  constexpr std::int64_t zinc_plus_paint = 2;
  if (!component.component_type) return;
  part.component_type = types_.text(*component.component_type);
  const Thing* type = types_.find(*component.component_type);
  if (type == nullptr) return;
  part.material = material_of(type->number(material), type->number(protection));
  part.painted = type->number(protection) == zinc_plus_paint;
  part.wall_nominal_mm = divided(type->number(tube_wall), 10);
  part.torque_target_nm = divided(type->number(target), 10);
  part.torque_minimum_nm = divided(type->number(lowest), 10);
  part.nominal_coating_um = divided(type->coating_nominal_tenth_um, 10);
  if (!part.nominal_coating_um) part.nominal_coating_um = divided(type->number(nominal), 10);
}

void PortfolioTables::set_rules(const Thing& site, forecast::Part& part) const {
  enum : int { first_maintenance = 2, wall_share = 3, torque_share = 4 };
  constexpr int depot = 9;
  part.depot = depots_.text(site.id_field(depot).value_or(Uuid{}));
  part.first_maintenance_um = divided(rule(site, first_maintenance), 10);
  if (const auto share = divided(rule(site, wall_share), 1000);
      share && !part.wall_limit_mm && part.wall_nominal_mm)
    part.wall_limit_mm = *share * *part.wall_nominal_mm;
  if (const auto share = divided(rule(site, torque_share), 1000);
      share && !part.torque_minimum_nm && part.torque_target_nm)
    part.torque_minimum_nm = *share * *part.torque_target_nm;
}

Result<> PortfolioTables::load_parts() {
  enum : int { spots = 10, exposure = 11, wall_limit = 13 };
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
    if (const auto code = component.number(exposure)) part.exposure = exposure_of(code);
    if (component.date_in_service)
      part.installed = Date{static_cast<std::int32_t>(*component.date_in_service)};
    if (component.coating_nominal_tenth_um)
      part.nominal_coating_um = divided(component.coating_nominal_tenth_um, 10);
    if (const auto* faces = component.rest.find(spots); faces && faces->array())
      part.reference_areas = std::max(1, static_cast<int>(faces->array()->size()));
    part.wall_limit_mm = divided(component.number(wall_limit), 100);
    if (const Thing* site = sites_.find(component.feed)) set_rules(*site, part);
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
  enum : int { zinc_gone = 1, replace_grade = 6 };
  for (const Thing& site : sites_.all()) {
    if (!is_asked(site.id)) continue;
    forecast::SiteLimits limits{sites_.text(site.id), divided(rule(site, zinc_gone), 10), {}};
    if (const auto grade = rule(site, replace_grade))
      limits.replace_grade = static_cast<int>(*grade);
    limits_.push_back(std::move(limits));
  }
  std::sort(limits_.begin(), limits_.end(),
            [](const auto& a, const auto& b) { return a.site < b.site; });
  return Done{};
}

}  // namespace kneerail
