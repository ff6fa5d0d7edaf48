#include "core/forecast/whole/kept_bounds.h"

#include <algorithm>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace kneerail::forecast {

namespace {

bool place_in(std::int64_t place, std::size_t list) {
  return place >= 0 && place < static_cast<std::int64_t>(list);
}

bool range_in(std::int64_t first, std::int64_t count, std::size_t list) {
  return first >= 0 && count >= 0 && first + count <= static_cast<std::int64_t>(list);
}

bool upto(std::int64_t count, std::int64_t most) {
  return count >= 0 && count <= most;
}

template <class List, class Good>
bool all(const List& list, Good good) {
  return std::ranges::all_of(list, good);
}

/// Every part is in the range of its own site, and of no other.
template <class Site, class Part>
bool parts_are_of(const std::vector<Site>& sites, const std::vector<Part>& parts) {
  std::int64_t counted = 0;
  for (std::size_t s = 0; s < sites.size(); ++s) {
    const Site& site = sites[s];
    if (!range_in(site.first_part, site.parts, parts.size())) return false;
    const std::span own(parts.data() + site.first_part, static_cast<std::size_t>(site.parts));
    if (!all(own, [&](const Part& part) { return std::cmp_equal(part.site, s); })) return false;
    counted += site.parts;
  }
  return counted == std::ssize(parts);
}

// Coatings.

bool is_site(const CoatingData& data, const CoatingSite& site) {
  return range_in(site.first_segment, site.segments, data.segments.size()) &&
         range_in(site.first_session, site.sessions, data.sessions.size()) &&
         site.zone_sessions.size() == site.zones.size() &&
         site.zone_classes.size() == site.zones.size();
}

bool is_part(const CoatingData& data, const CoatingPart& part) {
  if (!place_in(part.site, data.sites.size())) return false;
  const CoatingSite& site = data.sites[static_cast<std::size_t>(part.site)];
  return place_in(part.zone, site.zones.size()) && place_in(part.run, site.runs.size()) &&
         place_in(part.kind, kind_count) && part.segments >= 1 &&
         range_in(part.first_segment, part.segments, data.segments.size());
}

/// A session of the segment's own site; grades up to the worst.
bool is_mean(const CoatingData& data, const CoatingSite& site, const VisitMean& mean) {
  const std::int64_t in_site = std::int64_t{mean.session} - site.first_session;
  return place_in(mean.session, data.sessions.size()) && place_in(in_site, site.sessions) &&
         upto(mean.grade, grade_worst);
}

bool is_segment(const CoatingData& data, const Segment& segment) {
  if (!place_in(segment.part, data.parts.size()) ||
      !range_in(segment.first, segment.count, data.means.size()))
    return false;
  const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
  const CoatingSite& site = data.sites[static_cast<std::size_t>(part.site)];
  const std::span means(data.means.data() + segment.first, static_cast<std::size_t>(segment.count));
  return upto(segment.over_rust, segment.count) && upto(segment.over_rust_next, segment.count) &&
         upto(segment.visible, segment.count) &&
         all(means, [&](const VisitMean& mean) { return is_mean(data, site, mean); });
}

bool is_session(const CoatingData& data, const Session& session) {
  return place_in(session.site, data.sites.size()) &&
         (session.inspector == -1 || place_in(session.inspector, data.inspectors.size()));
}

bool holds(const CoatingData& data) {
  return all(data.sites, [&](const CoatingSite& site) { return is_site(data, site); }) &&
         parts_are_of(data.sites, data.parts) &&
         all(data.parts, [&](const CoatingPart& part) { return is_part(data, part); }) &&
         all(data.segments, [&](const Segment& segment) { return is_segment(data, segment); }) &&
         all(data.sessions, [&](const Session& session) { return is_session(data, session); });
}

bool are_effects(const CoatingSite& site, const SiteEffects& effects) {
  const auto core = static_cast<std::size_t>(core_layout(site).with_globals());
  const std::size_t runs = site.runs.size();
  return effects.core.size() == core && effects.covariance.size() == core * core &&
         effects.runs.size() == runs * run_unknowns &&
         effects.run_cross.size() == runs * run_unknowns * core &&
         effects.run_covariance.size() == runs * run_unknowns * run_unknowns &&
         effects.batch_weights.size() == runs &&
         effects.drift_um.size() == static_cast<std::size_t>(site.sessions) &&
         effects.zone_seen.size() == site.zones.size() && effects.run_seen.size() == runs;
}

bool holds(const CoatingModel& model) {
  const SharedEffects& effects = model.effects;
  const std::size_t inspectors = model.data.inspectors.size();
  if (!holds(model.data) || effects.sites.size() != model.data.sites.size() ||
      effects.habits_um.size() != inspectors || effects.habit_variance.size() != inspectors)
    return false;
  for (std::size_t s = 0; s < effects.sites.size(); ++s)
    if (!are_effects(model.data.sites[s], effects.sites[s])) return false;
  return true;
}

// Screws and grades: one log rate per part.

bool is_rate_part(const RateLayout& layout, const RateSite& site, const RatePart& part) {
  if (!place_in(part.zone, static_cast<std::size_t>(site.zones)) || part.run < -1 ||
      part.run >= site.runs || !upto(part.global_terms, std::ssize(part.globals)))
    return false;
  const std::span terms(part.globals.data(), static_cast<std::size_t>(part.global_terms));
  return all(terms, [&](std::int8_t global) { return place_in(global, layout.globals.size()); });
}

bool are_rate_effects(const RateSite& site, std::size_t globals, const RateSiteEffects& effects) {
  const std::size_t core = 1 + static_cast<std::size_t>(site.zones) + globals;
  const auto runs = static_cast<std::size_t>(site.runs);
  return effects.core.size() == core && effects.covariance.size() == core * core &&
         effects.runs.size() == runs && effects.run_cross.size() == runs * core &&
         effects.run_variance.size() == runs &&
         effects.zone_seen.size() == static_cast<std::size_t>(site.zones) &&
         effects.run_seen.size() == runs;
}

struct Counted {
  std::int32_t first;
  std::int32_t count;
  std::size_t zones;
};

/// `of(s)`: what the data say of their site s.
template <class Of>
bool holds(const RateLayout& layout, const RateFit& fit, const RateSettings& settings, Of of,
           std::size_t sites, std::size_t parts) {
  constexpr int most_nodes = 1000;
  const std::size_t globals = layout.globals.size();
  if (layout.sites.size() != sites || layout.parts.size() != parts || fit.sites.size() != sites ||
      fit.globals.size() != globals || fit.global_covariance.size() != globals * globals ||
      settings.nodes < 3 || settings.nodes > most_nodes)
    return false;
  for (std::size_t s = 0; s < sites; ++s) {
    const RateSite& site = layout.sites[s];
    const Counted counted = of(s);
    if (site.first_part != counted.first || site.parts != counted.count ||
        !range_in(site.first_part, site.parts, parts) || site.runs < 0 ||
        site.zones != static_cast<std::int64_t>(counted.zones) ||
        !are_rate_effects(site, globals, fit.sites[s]))
      return false;
    const std::span own(layout.parts.data() + site.first_part,
                        static_cast<std::size_t>(site.parts));
    if (!all(own, [&](const RatePart& part) { return is_rate_part(layout, site, part); }))
      return false;
  }
  return true;
}

bool is_grade_part(const GradeData& data, const GradePart& part) {
  return place_in(part.site, data.sites.size()) &&
         place_in(part.zone, data.sites[static_cast<std::size_t>(part.site)].zones.size()) &&
         part.segments >= 1 && range_in(part.first_segment, part.segments, data.segments.size());
}

bool is_grade_segment(const GradeData& data, const GradeSegment& segment) {
  return range_in(segment.first, segment.count, data.looks.size()) && !segment.starts.empty();
}

bool holds(const GradeModel& model) {
  const GradeData& data = model.data;
  const std::size_t inspectors = data.inspectors.size();
  const auto of = [&](std::size_t s) {
    const GradeSite& site = data.sites[s];
    return Counted{site.first_part, site.parts, site.zones.size()};
  };
  const auto is_look = [&](const GradeLook& look) {
    return place_in(look.inspector, inspectors) && look.seen >= 1 && look.seen <= grade_worst;
  };
  return model.fit.own.size() + 2 == grade_count && model.errors.size() == inspectors &&
         model.counts.size() == inspectors && all(data.looks, is_look) &&
         parts_are_of(data.sites, data.parts) &&
         all(data.parts, [&](const GradePart& part) { return is_grade_part(data, part); }) &&
         all(data.segments,
             [&](const GradeSegment& segment) { return is_grade_segment(data, segment); }) &&
         holds(model.layout, model.fit, model.settings, of, data.sites.size(), data.parts.size());
}

bool is_fitting(const ScrewSite& site, const Fitting& fitting) {
  const auto is_tightening = [](const Tightening& tightening) {
    return !tightening.starts.empty();
  };
  return place_in(fitting.zone, site.zones.size()) && place_in(fitting.run, site.runs.size()) &&
         all(fitting.screws, [&](const Screw& screw) {
           return !screw.tightenings.empty() && all(screw.tightenings, is_tightening);
         });
}

bool holds(const ScrewModel& model) {
  const ScrewData& data = model.data;
  for (const ScrewSite& site : data.sites) {
    if (!range_in(site.first_fitting, site.fittings, data.fittings.size()) ||
        site.zone_measured.size() != site.zones.size())
      return false;
    const std::span own(data.fittings.data() + site.first_fitting,
                        static_cast<std::size_t>(site.fittings));
    if (!all(own, [&](const Fitting& fitting) { return is_fitting(site, fitting); })) return false;
  }
  const auto of = [&](std::size_t s) {
    const ScrewSite& site = data.sites[s];
    return Counted{site.first_fitting, site.fittings, site.zones.size()};
  };
  return model.fit.own.size() == 1 && holds(model.layout, model.fit, model.settings, of,
                                            data.sites.size(), data.fittings.size());
}

}  // namespace

bool fits_together(const PortfolioFit& fit) {
  const auto& coating = fit.coating.model;
  const std::size_t sessions = coating ? coating->data.sessions.size() : 0;
  return (!coating || holds(*coating)) && fit.sessions.size() == sessions &&
         holds(fit.others.grades) && holds(fit.others.screws);
}

bool within(const PortfolioFit& fit, std::size_t parts) {
  const auto is_place = [&](const auto& part) { return place_in(part.place, parts); };
  return (!fit.coating.model || all(fit.coating.model->data.parts, is_place)) &&
         all(fit.others.grades.data.parts, is_place) &&
         all(fit.others.screws.data.fittings, is_place);
}

}  // namespace kneerail::forecast
