// One site's part of a portfolio and of what was fitted to it, with every place counted anew.

#include <algorithm>
#include <memory>
#include <string_view>
#include <utility>

#include "core/forecast/whole/portfolio_fit.h"

namespace kneerail::forecast {

namespace {

template <class T>
std::vector<T> piece(const std::vector<T>& from, std::int32_t first, std::int32_t count) {
  return {from.begin() + first, from.begin() + first + count};
}

template <class Sites>
auto site_named(Sites& sites, const std::string& name) {
  const auto at = std::ranges::lower_bound(
      sites, name, {}, [](const auto& site) -> const auto& { return site.name; });
  return at != sites.end() && at->name == name ? at : sites.end();
}

/// Where the visit means of a site lie.
struct Range {
  std::int32_t first = 0;
  std::int32_t count = 0;
};
template <class Segment>
Range range_of(const std::vector<Segment>& segments) {
  if (segments.empty()) return {};
  const Segment& last = segments.back();
  return {segments.front().first, last.first + last.count - segments.front().first};
}

/// Without the site's own.
CoatingData learnt_data_of(const CoatingData& all) {
  CoatingData own;
  own.as_of = all.as_of;
  own.path = all.path;
  own.replicate_sd_um = all.replicate_sd_um;
  own.area_sd_um = all.area_sd_um;
  own.class_ratio = all.class_ratio;
  own.rust_chance = all.rust_chance;
  own.inspectors = all.inspectors;
  return own;
}

void add_site(const CoatingData& all, const CoatingSite& site, const PlaceInSite& places,
              CoatingData& own) {
  own.parts = piece(all.parts, site.first_part, site.parts);
  own.segments = piece(all.segments, site.first_segment, site.segments);
  own.sessions = piece(all.sessions, site.first_session, site.sessions);
  const Range means = range_of(own.segments);
  own.means = piece(all.means, means.first, means.count);
  for (CoatingPart& part : own.parts) {
    part.place = places(part.place);
    part.site = 0;
    part.first_segment -= site.first_segment;
  }
  for (Segment& segment : own.segments) {
    segment.part -= site.first_part;
    segment.first -= means.first;
  }
  for (VisitMean& mean : own.means) mean.session -= site.first_session;
  for (Session& session : own.sessions) session.site = 0;
  own.sites.push_back(site);
  own.sites[0].first_part = own.sites[0].first_segment = own.sites[0].first_session = 0;
}

/// A site of which the model serves no part has none in it.
CoatingModel coating_of(const CoatingModel& all, const std::string& name,
                        const PlaceInSite& places) {
  CoatingModel own{learnt_data_of(all.data), {}, {}};
  own.effects.spreads = all.effects.spreads;
  own.effects.globals = all.effects.globals;
  own.effects.global_covariance = all.effects.global_covariance;
  own.effects.habits_um = all.effects.habits_um;
  own.effects.habit_variance = all.effects.habit_variance;
  own.effects.largest_move_ln = all.effects.largest_move_ln;
  own.back_dated.spread_scale = all.back_dated.spread_scale;
  const auto site = site_named(all.data.sites, name);
  if (site == all.data.sites.end()) return own;
  add_site(all.data, *site, places, own.data);
  own.effects.sites = {all.effects.sites[static_cast<std::size_t>(site - all.data.sites.begin())]};
  return own;
}

/// With the site's parts.
RateLayout layout_of(const RateLayout& all, std::ptrdiff_t site) {
  RateLayout own = layout_of_site(all, site);
  if (site < 0) return own;
  const RateSite& from = all.sites[static_cast<std::size_t>(site)];
  own.parts = piece(all.parts, from.first_part, from.parts);
  return own;
}

RateSettings without_workers(RateSettings settings) {
  settings.workers = {};
  return settings;
}

ScrewModel screws_of(const ScrewModel& all, const std::string& name, const PlaceInSite& places) {
  const auto site = site_named(all.data.sites, name);
  const bool some = site != all.data.sites.end();
  const std::ptrdiff_t at = some ? site - all.data.sites.begin() : -1;
  ScrewModel own;
  own.data.as_of = all.data.as_of;
  own.data.usual_settings = all.data.usual_settings;
  own.data.readings = all.data.readings;
  own.data.without_setting = all.data.without_setting;
  if (some) {
    own.data.sites.push_back(*site);
    own.data.fittings = piece(all.data.fittings, site->first_fitting, site->fittings);
    own.data.sites[0].first_fitting = 0;
  }
  for (Fitting& fitting : own.data.fittings) fitting.place = places(fitting.place);
  own.layout = layout_of(all.layout, at);
  own.settings = without_workers(all.settings);
  own.fit = fit_of_site(all.fit, at);
  own.likelihood = std::make_unique<ScrewLikelihood>(own.data);
  own.likelihood->begin_pass(own.fit.own);
  return own;
}

GradeData grade_data_of(const GradeData& all, const GradeSite& site, const PlaceInSite& places) {
  GradeData own;
  own.as_of = all.as_of;
  own.inspectors = all.inspectors;
  own.sites.push_back(site);
  own.parts = piece(all.parts, site.first_part, site.parts);
  if (own.parts.empty()) return own;
  const std::int32_t first_segment = own.parts.front().first_segment;
  const GradePart& last = own.parts.back();
  own.segments =
      piece(all.segments, first_segment, last.first_segment + last.segments - first_segment);
  const Range looks = range_of(own.segments);
  own.looks = piece(all.looks, looks.first, looks.count);
  own.sites[0].first_part = 0;
  for (GradePart& part : own.parts) {
    part.place = places(part.place);
    part.site = 0;
    part.first_segment -= first_segment;
  }
  for (GradeSegment& segment : own.segments) segment.first -= looks.first;
  return own;
}

GradeModel grades_of(const GradeModel& all, const std::string& name, const PlaceInSite& places) {
  const auto site = site_named(all.data.sites, name);
  const bool some = site != all.data.sites.end();
  const std::ptrdiff_t at = some ? site - all.data.sites.begin() : -1;
  GradeModel own;
  own.data.as_of = all.data.as_of;
  own.data.inspectors = all.data.inspectors;
  if (some) own.data = grade_data_of(all.data, *site, places);
  own.layout = layout_of(all.layout, at);
  own.settings = without_workers(all.settings);
  own.fit = fit_of_site(all.fit, at);
  own.pooled_errors = all.pooled_errors;
  own.errors = all.errors;
  own.counts = all.counts;
  own.table = all.table;
  return own;
}

}  // namespace

PortfolioFit fit_of_site(const PortfolioFit& fit, const std::string& site,
                         const PlaceInSite& places) {
  PortfolioFit own;
  own.others.grades = grades_of(fit.others.grades, site, places);
  own.others.screws = screws_of(fit.others.screws, site, places);
  own.coating.why_none = fit.coating.why_none;
  if (!fit.coating.model) return own;
  const CoatingData& all = fit.coating.model->data;
  own.coating.model = coating_of(*fit.coating.model, site, places);
  const auto at = site_named(all.sites, site);
  if (at != all.sites.end()) own.sessions = piece(fit.sessions, at->first_session, at->sessions);
  return own;
}

}  // namespace kneerail::forecast
