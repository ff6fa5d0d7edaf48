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
  archive(spread.first, spread.weight, spread.least, spread.most);
}

}  // namespace kneerail::forecast::constant

namespace kneerail::forecast {

template <class Archive, OrConst<VisitMean> T>
void fields(Archive& archive, T& mean) {
  archive(mean.day, mean.session, mean.thickness_um, mean.effective_age, mean.known_variance,
          mean.weight, mean.ln_rust_odds, mean.gone, mean.grade, mean.surface);
}

template <class Archive, OrConst<Segment> T>
void fields(Archive& archive, T& segment) {
  archive(segment.part, segment.first, segment.count, segment.start, segment.nominal_um,
          segment.start_kind, segment.first_coating, segment.after_swap, segment.may_be_rust,
          segment.over_rust, segment.over_rust_next, segment.next_share, segment.visible);
}

template <class Archive, OrConst<CoatingPart> T>
void fields(Archive& archive, T& part) {
  archive(part.place, part.site, part.zone, part.run, part.kind, part.exposure, part.teaches,
          part.ln_prior, part.first_segment, part.segments);
}

template <class Archive, OrConst<Foil> T>
void fields(Archive& archive, T& foil) {
  archive(foil.true_um, foil.read_um);
}

template <class Archive, OrConst<Session> T>
void fields(Archive& archive, T& session) {
  archive(session.site, session.day, session.gauge, session.foils, session.inspector_name,
          session.inspector);
}

template <class Archive, OrConst<CoatingSite> T>
void fields(Archive& archive, T& site) {
  archive(site.name, site.first_part, site.parts, site.first_segment, site.segments,
          site.first_session, site.sessions, site.zones, site.zone_sessions, site.runs);
}

/// But for the path, which is made of its exponent.
template <class Archive, OrConst<CoatingData> T>
void fields(Archive& archive, T& data) {
  archive(data.as_of, data.replicate_sd_um, data.area_sd_um, data.class_ratio, data.rust_chance,
          data.inspectors, data.sites, data.parts, data.segments, data.means, data.sessions,
          data.left_out, data.notes);
}

template <class Archive, OrConst<Spreads> T>
void fields(Archive& archive, T& spreads) {
  archive(spreads.rate, spreads.start, spreads.offset_um, spreads.gain, spreads.site, spreads.zone,
          spreads.run, spreads.batch, spreads.run_kind, spreads.habit_um, spreads.spots,
          spreads.rest_um);
}

template <class Archive, OrConst<SiteEffects> T>
void fields(Archive& archive, T& site) {
  archive(site.core, site.covariance, site.runs, site.run_cross, site.run_covariance,
          site.batch_weights, site.zone_seen, site.run_seen);
}

template <class Archive, OrConst<SharedEffects> T>
void fields(Archive& archive, T& effects) {
  archive(effects.spreads, effects.globals, effects.global_covariance, effects.habits_um,
          effects.habit_variance, effects.sites, effects.largest_move_ln, effects.computed);
}

template <class Archive, OrConst<BackDated> T>
void fields(Archive& archive, T& back_dated) {
  archive(back_dated.rows, back_dated.spread_scale);
}

template <class Archive, OrConst<RatePart> T>
void fields(Archive& archive, T& part) {
  archive(part.zone, part.run, part.globals, part.global_terms);
}

template <class Archive, OrConst<RateSite> T>
void fields(Archive& archive, T& site) {
  archive(site.first_part, site.parts, site.zones, site.runs);
}

template <class Archive, OrConst<GlobalEffect> T>
void fields(Archive& archive, T& global) {
  archive(global.mean, global.sd, global.start);
}

template <class Archive, OrConst<RateLayout> T>
void fields(Archive& archive, T& layout) {
  archive(layout.globals, layout.sites, layout.parts);
}

template <class Archive, OrConst<ScoredParameter> T>
void fields(Archive& archive, T& scored) {
  archive(scored.mean, scored.sd, scored.start, scored.step, scored.least, scored.most);
}

/// But for the workers.
template <class Archive, OrConst<RateSettings> T>
void fields(Archive& archive, T& settings) {
  archive(settings.nodes, settings.passes, settings.site, settings.zone, settings.run,
          settings.ln_tau, settings.own, settings.centre, settings.widening);
}

template <class Archive, OrConst<RateSiteEffects> T>
void fields(Archive& archive, T& site) {
  archive(site.core, site.covariance, site.runs, site.run_cross, site.run_variance, site.zone_seen,
          site.run_seen);
}

template <class Archive, OrConst<RateFit> T>
void fields(Archive& archive, T& fit) {
  archive(fit.tau, fit.own, fit.own_sd, fit.site_sd, fit.zone_sd, fit.run_sd, fit.globals,
          fit.global_covariance, fit.sites, fit.ln_likelihood, fit.largest_move_ln, fit.computed,
          fit.stopped);
}

template <class Archive, OrConst<FoundTorque> T>
void fields(Archive& archive, T& found) {
  archive(found.day, found.found, found.torque_nm, found.wrench_set_nm);
}

template <class Archive, OrConst<Tightening> T>
void fields(Archive& archive, T& tightening) {
  archive(tightening.as_left_nm, tightening.strikes, tightening.started, tightening.starts,
          tightening.readings);
}

template <class Archive, OrConst<Screw> T>
void fields(Archive& archive, T& screw) {
  archive(screw.number, screw.tightenings);
}

template <class Archive, OrConst<Fitting> T>
void fields(Archive& archive, T& fitting) {
  archive(fitting.place, fitting.zone, fitting.run, fitting.target_nm, fitting.screws,
          fitting.readings);
}

template <class Archive, OrConst<ScrewSite> T>
void fields(Archive& archive, T& site) {
  archive(site.name, site.first_fitting, site.fittings, site.zones, site.runs, site.zone_measured);
}

template <class Archive, OrConst<UsualSetting> T>
void fields(Archive& archive, T& setting) {
  archive(setting.torque_nm, setting.share);
}

template <class Archive, OrConst<ScrewData> T>
void fields(Archive& archive, T& data) {
  archive(data.as_of, data.sites, data.fittings, data.usual_settings, data.left_out, data.readings,
          data.without_setting);
}

template <class Archive, OrConst<GradeLook> T>
void fields(Archive& archive, T& look) {
  archive(look.day, look.inspector, look.seen, look.fresh, look.ln_years, look.unbroken);
}

template <class Archive, OrConst<GradeSegment> T>
void fields(Archive& archive, T& segment) {
  archive(segment.first, segment.count, segment.starts, segment.ln_ages, segment.start_known);
}

template <class Archive, OrConst<GradePart> T>
void fields(Archive& archive, T& part) {
  archive(part.place, part.site, part.zone, part.kind, part.material, part.painted, part.exposure,
          part.first_segment, part.segments, part.graded_before_start);
}

template <class Archive, OrConst<GradeSite> T>
void fields(Archive& archive, T& site) {
  archive(site.name, site.first_part, site.parts, site.zones);
}

template <class Archive, OrConst<GradeData> T>
void fields(Archive& archive, T& data) {
  archive(data.as_of, data.sites, data.parts, data.segments, data.looks, data.inspectors,
          data.left_out);
}

template <class Archive, OrConst<GradeErrors> T>
void fields(Archive& archive, T& errors) {
  archive(errors.up, errors.down);
}

template <class Archive, OrConst<InspectorCounts> T>
void fields(Archive& archive, T& counts) {
  archive(counts.seen, counts.could_be_up, counts.could_be_down, counts.ups, counts.downs);
}

}  // namespace kneerail::forecast
