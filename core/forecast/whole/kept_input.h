#pragma once

// The forecast's input as bytes (core/base/archive.h): for digests of what a forecast was made
// from. Includes nothing of the models. The fields are bound by name, all of them, so that one that
// is added to a struct and forgotten here does not compile.

#include "core/base/archive.h"
#include "core/forecast/portfolio.h"

namespace kneerail::structure {

constexpr Member last_of(Member) {
  return Member::rail;
}

template <class Archive, OrConst<Tube> T>
void fields(Archive& archive, T& tube) {
  auto& [outside_mm, wall_mm] = tube;
  archive(outside_mm, wall_mm);
}

template <class Archive, OrConst<LoadedTube> T>
void fields(Archive& archive, T& loaded) {
  auto& [as_new, member, line_load_kn_per_m, spacing_m, height_m, load_factor, yield_mpa] = loaded;
  archive(as_new, member, line_load_kn_per_m, spacing_m, height_m, load_factor, yield_mpa);
}

}  // namespace kneerail::structure

namespace kneerail::forecast {

constexpr Material last_of(Material) {
  return Material::bare_steel;
}
constexpr Exposure last_of(Exposure) {
  return Exposure::spray;
}
constexpr PartKind last_of(PartKind) {
  return PartKind::gate;
}
constexpr Category last_of(Category) {
  return Category::cx;
}
constexpr Quantity last_of(Quantity) {
  return Quantity::grade;
}
constexpr Censoring last_of(Censoring) {
  return Censoring::at_most;
}
constexpr Surface last_of(Surface) {
  return Surface::paint;
}
constexpr How last_of(How) {
  return How::picture;
}
constexpr Action last_of(Action) {
  return Action::re_erect;
}

template <class Archive, OrConst<Settings> T>
void fields(Archive& archive, T& settings) {
  auto& [zinc_path_exponent, steel_path_exponent, steel_over_zinc, horizon_years] = settings;
  archive(zinc_path_exponent, steel_path_exponent, steel_over_zinc, horizon_years);
}

template <class Archive, OrConst<SiteLimits> T>
void fields(Archive& archive, T& limits) {
  auto& [site, zinc_gone_um, replace_grade, chance] = limits;
  archive(site, zinc_gone_um, replace_grade, chance);
}

template <class Archive, OrConst<Part> T>
void fields(Archive& archive, T& part) {
  auto& [id, site, zone, run, chainage_m, kind, material, painted, exposure, category,
         zinc_rate_um_per_year, prior_is_category, zinc_rate_ln_sd, installed, nominal_coating_um,
         first_maintenance_um, reference_areas, wall_nominal_mm, wall_limit_mm,
         steel_rate_um_per_year, torque_target_nm, torque_minimum_nm, carries, yield_assumed,
         load_not_known, out_of_shape, screws, component_type, depot, consequence] = part;
  archive(id, site, zone, run, chainage_m, kind, material, painted, exposure, category,
          zinc_rate_um_per_year, prior_is_category, zinc_rate_ln_sd, installed, nominal_coating_um,
          first_maintenance_um, reference_areas, wall_nominal_mm, wall_limit_mm,
          steel_rate_um_per_year, torque_target_nm, torque_minimum_nm, carries, yield_assumed,
          load_not_known, out_of_shape, screws, component_type, depot, consequence);
}

template <class Archive, OrConst<Visit> T>
void fields(Archive& archive, T& visit) {
  auto& [id, site, day, inspector, coating_gauge, wall_gauge, wrench, foil_true_um, foil_read_um,
         gauge_not_in_order] = visit;
  archive(id, site, day, inspector, coating_gauge, wall_gauge, wrench, foil_true_um, foil_read_um,
          gauge_not_in_order);
}

/// But for the places of its part and visit.
template <class Archive, OrConst<Reading> T>
void fields(Archive& archive, T& reading) {
  auto& [id, part, visit, quantity, spot, replicate, censoring, surface, how, carried, value,
         certificate_add, wrench_set_nm, seen] = reading;
  archive(id, quantity, spot, replicate, censoring, surface, how, carried, value, certificate_add,
          wrench_set_nm, seen);
}

/// But for the place of its part.
template <class Archive, OrConst<Work> T>
void fields(Archive& archive, T& work) {
  auto& [part, day, action, new_nominal_coating_um, as_left_nm, screw, same_part_unsure] = work;
  archive(day, action, new_nominal_coating_um, as_left_nm, screw, same_part_unsure);
}

template <class Archive, OrConst<LeftOut> T>
void fields(Archive& archive, T& left_out) {
  auto& [reading, part, reason] = left_out;
  archive(reading, part, reason);
}

}  // namespace kneerail::forecast
