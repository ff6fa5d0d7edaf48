#pragma once

// The fitted models as bytes (core/base/archive.h). What follows from the rest is not among them
// (the likelihood of screws, the table of the grades' chain): kept_models.cpp makes it again.

#include "core/forecast/coating_model.h"
#include "core/forecast/grade/grade_model.h"
#include "core/forecast/screws/screw_fit.h"
#include "core/forecast/whole/kept_rows.h"

namespace kneerail::forecast::constant {

template <class Archive, OrConst<Spread> T>
void fields(Archive& archive, T& spread) {
  auto& [first, weight, least, most] = spread;
  archive(first, weight, least, most);
}

}  // namespace kneerail::forecast::constant

namespace kneerail::forecast {

constexpr SeenSurface last_of(SeenSurface) {
  return SeenSurface::rust;
}
constexpr StartKind last_of(StartKind) {
  return StartKind::touched_up;
}
constexpr TorqueFound last_of(TorqueFound) {
  return TorqueFound::free;
}

template <class Archive, OrConst<VisitMean> T>
void fields(Archive& archive, T& mean) {
  auto& [day, session, thickness_um, effective_age, known_variance, weight, ln_rust_odds, gone,
         grade, surface] = mean;
  archive(day, session, thickness_um, effective_age, known_variance, weight, ln_rust_odds, gone,
          grade, surface);
}

template <class Archive, OrConst<Segment> T>
void fields(Archive& archive, T& segment) {
  auto& [part, first, count, start, nominal_um, start_kind, first_coating, after_swap, may_be_rust,
         over_rust, over_rust_next, next_share, visible] = segment;
  archive(part, first, count, start, nominal_um, start_kind, first_coating, after_swap, may_be_rust,
          over_rust, over_rust_next, next_share, visible);
}

template <class Archive, OrConst<CoatingPart> T>
void fields(Archive& archive, T& part) {
  auto& [place, site, zone, run, kind, exposure, teaches, ln_prior, first_segment, segments] = part;
  archive(place, site, zone, run, kind, exposure, teaches, ln_prior, first_segment, segments);
}

template <class Archive, OrConst<Foil> T>
void fields(Archive& archive, T& foil) {
  auto& [true_um, read_um] = foil;
  archive(true_um, read_um);
}

template <class Archive, OrConst<Session> T>
void fields(Archive& archive, T& session) {
  auto& [site, day, gauge, foils, inspector_name, inspector, not_in_order] = session;
  archive(site, day, gauge, foils, inspector_name, inspector, not_in_order);
}

template <class Archive, OrConst<ZoneClass> T>
void fields(Archive& archive, T& zone) {
  auto& [category, ln_upper_over_prior] = zone;
  archive(category, ln_upper_over_prior);
}

template <class Archive, OrConst<CoatingSite> T>
void fields(Archive& archive, T& site) {
  auto& [name, first_part, parts, first_segment, segments, first_session, sessions, zones,
         zone_sessions, zone_classes, runs] = site;
  archive(name, first_part, parts, first_segment, segments, first_session, sessions, zones,
          zone_sessions, zone_classes, runs);
}

/// But for the path, which is made of its exponent.
template <class Archive, OrConst<CoatingData> T>
void fields(Archive& archive, T& data) {
  auto& [as_of, path, replicate_sd_um, area_sd_um, class_ratio, rust_chance, inspectors, sites,
         parts, segments, means, sessions, left_out, notes] = data;
  archive(as_of, replicate_sd_um, area_sd_um, class_ratio, rust_chance, inspectors, sites, parts,
          segments, means, sessions, left_out, notes);
}

template <class Archive, OrConst<Spreads> T>
void fields(Archive& archive, T& spreads) {
  auto& [rate, start, offset_um, gain, site, zone, run, batch, run_kind, habit_um, spots, rest_um] =
      spreads;
  archive(rate, start, offset_um, gain, site, zone, run, batch, run_kind, habit_um, spots, rest_um);
}

template <class Archive, OrConst<SiteEffects> T>
void fields(Archive& archive, T& site) {
  auto& [core, covariance, runs, run_cross, run_covariance, batch_weights, drift_um, zone_seen,
         run_seen] = site;
  archive(core, covariance, runs, run_cross, run_covariance, batch_weights, drift_um, zone_seen,
          run_seen);
}

template <class Archive, OrConst<SharedEffects> T>
void fields(Archive& archive, T& effects) {
  auto& [spreads, globals, global_covariance, habits_um, habit_variance, sites, largest_move_ln,
         computed] = effects;
  archive(spreads, globals, global_covariance, habits_um, habit_variance, sites, largest_move_ln,
          computed);
}

template <class Archive, OrConst<BackDated> T>
void fields(Archive& archive, T& back_dated) {
  auto& [rows, spread_scale] = back_dated;
  archive(rows, spread_scale);
}

template <class Archive, OrConst<RatePart> T>
void fields(Archive& archive, T& part) {
  auto& [zone, run, globals, global_terms] = part;
  archive(zone, run, globals, global_terms);
}

template <class Archive, OrConst<RateSite> T>
void fields(Archive& archive, T& site) {
  auto& [first_part, parts, zones, runs] = site;
  archive(first_part, parts, zones, runs);
}

template <class Archive, OrConst<GlobalEffect> T>
void fields(Archive& archive, T& global) {
  auto& [mean, sd, start] = global;
  archive(mean, sd, start);
}

template <class Archive, OrConst<RateLayout> T>
void fields(Archive& archive, T& layout) {
  auto& [globals, sites, parts] = layout;
  archive(globals, sites, parts);
}

template <class Archive, OrConst<ScoredParameter> T>
void fields(Archive& archive, T& scored) {
  auto& [mean, sd, start, step, least, most] = scored;
  archive(mean, sd, start, step, least, most);
}

/// But for the workers.
template <class Archive, OrConst<RateSettings> T>
void fields(Archive& archive, T& settings) {
  auto& [nodes, passes, site, zone, run, ln_tau, own, centre, widening, workers] = settings;
  archive(nodes, passes, site, zone, run, ln_tau, own, centre, widening);
}

template <class Archive, OrConst<RateSiteEffects> T>
void fields(Archive& archive, T& site) {
  auto& [core, covariance, runs, run_cross, run_variance, zone_seen, run_seen] = site;
  archive(core, covariance, runs, run_cross, run_variance, zone_seen, run_seen);
}

template <class Archive, OrConst<RateFit> T>
void fields(Archive& archive, T& fit) {
  auto& [tau, own, own_sd, site_sd, zone_sd, run_sd, globals, global_covariance, sites,
         ln_likelihood, largest_move_ln, computed, stopped] = fit;
  archive(tau, own, own_sd, site_sd, zone_sd, run_sd, globals, global_covariance, sites,
          ln_likelihood, largest_move_ln, computed, stopped);
}

template <class Archive, OrConst<FoundTorque> T>
void fields(Archive& archive, T& reading) {
  auto& [day, found, torque_nm, wrench_set_nm] = reading;
  archive(day, found, torque_nm, wrench_set_nm);
}

template <class Archive, OrConst<Tightening> T>
void fields(Archive& archive, T& tightening) {
  auto& [as_left_nm, strikes, started, starts, readings] = tightening;
  archive(as_left_nm, strikes, started, starts, readings);
}

template <class Archive, OrConst<Screw> T>
void fields(Archive& archive, T& screw) {
  auto& [number, tightenings] = screw;
  archive(number, tightenings);
}

template <class Archive, OrConst<Fitting> T>
void fields(Archive& archive, T& fitting) {
  auto& [place, zone, run, target_nm, screws, readings] = fitting;
  archive(place, zone, run, target_nm, screws, readings);
}

template <class Archive, OrConst<ScrewSite> T>
void fields(Archive& archive, T& site) {
  auto& [name, first_fitting, fittings, zones, runs, zone_measured] = site;
  archive(name, first_fitting, fittings, zones, runs, zone_measured);
}

template <class Archive, OrConst<UsualSetting> T>
void fields(Archive& archive, T& setting) {
  auto& [torque_nm, share] = setting;
  archive(torque_nm, share);
}

template <class Archive, OrConst<ScrewData> T>
void fields(Archive& archive, T& data) {
  auto& [as_of, sites, fittings, usual_settings, left_out, readings, without_setting] = data;
  archive(as_of, sites, fittings, usual_settings, left_out, readings, without_setting);
}

template <class Archive, OrConst<GradeLook> T>
void fields(Archive& archive, T& look) {
  auto& [day, inspector, seen, fresh, ln_years, unbroken] = look;
  archive(day, inspector, seen, fresh, ln_years, unbroken);
}

template <class Archive, OrConst<GradeSegment> T>
void fields(Archive& archive, T& segment) {
  auto& [first, count, starts, ln_ages, start_known] = segment;
  archive(first, count, starts, ln_ages, start_known);
}

template <class Archive, OrConst<GradePart> T>
void fields(Archive& archive, T& part) {
  auto& [place, site, zone, kind, material, painted, exposure, first_segment, segments,
         graded_before_start] = part;
  archive(place, site, zone, kind, material, painted, exposure, first_segment, segments,
          graded_before_start);
}

template <class Archive, OrConst<GradeSite> T>
void fields(Archive& archive, T& site) {
  auto& [name, first_part, parts, zones] = site;
  archive(name, first_part, parts, zones);
}

template <class Archive, OrConst<GradeData> T>
void fields(Archive& archive, T& data) {
  auto& [as_of, sites, parts, segments, looks, inspectors, left_out] = data;
  archive(as_of, sites, parts, segments, looks, inspectors, left_out);
}

template <class Archive, OrConst<GradeErrors> T>
void fields(Archive& archive, T& errors) {
  auto& [up, down] = errors;
  archive(up, down);
}

template <class Archive, OrConst<InspectorCounts> T>
void fields(Archive& archive, T& counts) {
  auto& [seen, could_be_up, could_be_down, ups, downs] = counts;
  archive(seen, could_be_up, could_be_down, ups, downs);
}

}  // namespace kneerail::forecast
