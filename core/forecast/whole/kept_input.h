#pragma once

// The forecast's input as bytes (core/base/archive.h): for digests of what a forecast was made
// from. Includes nothing of the models.

#include "core/base/archive.h"
#include "core/forecast/portfolio.h"

namespace kneerail::structure {

template <class Archive, OrConst<Tube> T>
void fields(Archive& archive, T& tube) {
  archive(tube.outside_mm, tube.wall_mm);
}

template <class Archive, OrConst<LoadedTube> T>
void fields(Archive& archive, T& loaded) {
  archive(loaded.as_new, loaded.member, loaded.line_load_kn_per_m, loaded.spacing_m,
          loaded.height_m, loaded.load_factor, loaded.yield_mpa);
}

}  // namespace kneerail::structure

namespace kneerail::forecast {

template <class Archive, OrConst<Settings> T>
void fields(Archive& archive, T& settings) {
  archive(settings.zinc_path_exponent, settings.steel_path_exponent, settings.steel_over_zinc,
          settings.horizon_years);
}

template <class Archive, OrConst<SiteLimits> T>
void fields(Archive& archive, T& limits) {
  archive(limits.site, limits.zinc_gone_um, limits.replace_grade, limits.chance);
}

template <class Archive, OrConst<Part> T>
void fields(Archive& archive, T& part) {
  archive(part.id, part.site, part.zone, part.run, part.chainage_m, part.kind, part.material,
          part.painted, part.exposure, part.category, part.zinc_rate_um_per_year,
          part.prior_is_category, part.zinc_rate_ln_sd, part.installed, part.nominal_coating_um,
          part.first_maintenance_um, part.reference_areas, part.wall_nominal_mm, part.wall_limit_mm,
          part.steel_rate_um_per_year, part.torque_target_nm, part.torque_minimum_nm, part.carries,
          part.yield_assumed, part.load_not_known, part.out_of_shape, part.screws,
          part.component_type, part.depot, part.consequence);
}

template <class Archive, OrConst<Visit> T>
void fields(Archive& archive, T& visit) {
  archive(visit.id, visit.site, visit.day, visit.inspector, visit.coating_gauge, visit.wall_gauge,
          visit.wrench, visit.foil_true_um, visit.foil_read_um);
}

/// But for the places of its part and visit.
template <class Archive, OrConst<Reading> T>
void fields(Archive& archive, T& reading) {
  archive(reading.id, reading.quantity, reading.spot, reading.replicate, reading.censoring,
          reading.surface, reading.how, reading.carried, reading.value, reading.certificate_add,
          reading.wrench_set_nm, reading.seen);
}

/// But for the place of its part.
template <class Archive, OrConst<Work> T>
void fields(Archive& archive, T& work) {
  archive(work.day, work.action, work.new_nominal_coating_um, work.as_left_nm, work.screw,
          work.same_part_unsure);
}

template <class Archive, OrConst<LeftOut> T>
void fields(Archive& archive, T& left_out) {
  archive(left_out.reading, left_out.part, left_out.reason);
}

}  // namespace kneerail::forecast
