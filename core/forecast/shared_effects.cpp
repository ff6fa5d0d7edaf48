#include "core/forecast/shared_effects.h"

#include <algorithm>

namespace kneerail::forecast {

namespace {

/// sd of a segment's start about its group's mean, um.
double start_sd_um(const Segment& segment, const Spreads& spreads) {
  switch (segment.start_kind) {
    case StartKind::unknown:
      return constant::unknown_start_sd * segment.nominal_um;
    case StartKind::touched_up:
      return constant::touched_up_sd_um;
    case StartKind::known:
      return spreads.start * segment.nominal_um;
  }
  return 0;
}

}  // namespace

SharedEffects first_effects(const CoatingData& data) {
  SharedEffects effects;
  effects.spreads.site *= data.class_ratio;
  effects.spreads.zone *= data.class_ratio;
  effects.spreads.site = std::min(effects.spreads.site, constant::site_spread.most);
  effects.spreads.zone = std::min(effects.spreads.zone, constant::zone_spread.most);
  effects.habits_um.assign(data.inspectors.size(), 0.0);
  effects.habit_variance.assign(data.inspectors.size(),
                                effects.spreads.habit_um * effects.spreads.habit_um);
  for (int kind = 0; kind < kind_count; ++kind)
    effects.globals[static_cast<std::size_t>(global_start_ratio + kind)] =
        constant::start_ratio_first;
  for (const CoatingSite& site : data.sites) {
    const CoreLayout layout = core_layout(site);
    SiteEffects own;
    own.core.assign(static_cast<std::size_t>(layout.with_globals()), 0.0);
    for (int i = 0; i < global_count; ++i)
      own.core[static_cast<std::size_t>(layout.size() + i)] =
          effects.globals[static_cast<std::size_t>(i)];
    own.runs.assign(site.runs.size() * run_unknowns, 0.0);
    own.batch_weights.assign(site.runs.size(), 1.0);
    own.drift_um.assign(static_cast<std::size_t>(site.sessions), constant::drift_spread.first);
    own.zone_seen.assign(site.zones.size(), 0);
    own.run_seen.assign(site.runs.size(), 0);
    effects.sites.push_back(std::move(own));
  }
  return effects;
}

GroupTerms group_terms(const CoreLayout& layout, const CoatingPart& part, const Segment& segment,
                       const Spreads& spreads) {
  GroupTerms terms;
  const auto add = [&](int place) {
    terms.rate[static_cast<std::size_t>(terms.rate_terms++)] = place;
  };
  add(layout.site());
  add(layout.zone(part.zone));
  add(layout.size() + global_overall);
  add(layout.size() + global_kind + part.kind);
  if (part.exposure == Exposure::spray) add(layout.size() + global_spray);
  if (part.exposure == Exposure::sheltered) add(layout.size() + global_sheltered);
  terms.start_sd_um = start_sd_um(segment, spreads);
  if (segment.start_kind == StartKind::known) {
    terms.start = layout.size() + global_start_ratio + part.kind;
    terms.start_scale_um = segment.nominal_um;
    terms.batch = segment.first_coating;
    terms.kind_group = run_kind_group(part.kind);
  } else {
    terms.given_start_um = segment.start_kind == StartKind::touched_up
                               ? constant::touched_up_start_um
                               : constant::unknown_start_ratio * segment.nominal_um;
  }
  return terms;
}

double ln_rate_over_class(const GroupTerms& terms, const SiteEffects& site, int run) {
  double sum = site.runs[static_cast<std::size_t>(run * run_unknowns + run_rate)];
  for (int i = 0; i < terms.rate_terms; ++i)
    sum += site.core[static_cast<std::size_t>(terms.rate[static_cast<std::size_t>(i)])];
  return sum;
}

double mean_start_um(const GroupTerms& terms, const SiteEffects& site, int run) {
  if (terms.start < 0) return terms.given_start_um;
  double ratio = site.core[static_cast<std::size_t>(terms.start)];
  if (terms.batch)
    ratio += site.runs[static_cast<std::size_t>(run * run_unknowns + run_batch)] +
             site.runs[static_cast<std::size_t>(run * run_unknowns + terms.kind_group)];
  return terms.start_scale_um * ratio;
}

}  // namespace kneerail::forecast
