#include "core/forecast/screws/screw_fit.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include "core/forecast/screws/constants.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

RateLayout layout_of(const ScrewData& data) {
  RateLayout layout;
  layout.globals = {{.mean = screw_constant::ln_loss_mean,
                     .sd = screw_constant::ln_loss_sd,
                     .start = screw_constant::ln_loss_mean}};
  for (const ScrewSite& site : data.sites)
    layout.sites.push_back({site.first_fitting, site.fittings,
                            static_cast<std::int32_t>(site.zones.size()),
                            static_cast<std::int32_t>(site.runs.size())});
  for (const Fitting& fitting : data.fittings) {
    RatePart part;
    part.zone = fitting.zone;
    part.run = fitting.run;
    part.add_global(0);
    layout.parts.push_back(part);
  }
  return layout;
}

/// Where a part alone stands among the sites of a fit.
struct PlaceAmong {
  std::size_t site = 0;
  RatePart part;
};

Error not_seen(std::string_view what, const std::string& name) {
  return fail(Fault::not_found,
              concat({what, " ", name, " is not in the forecast yet: reckon it anew."}));
}

Result<PlaceAmong> place_among(const std::vector<ScrewSite>& sites, const ScrewSite& own) {
  const auto site = std::ranges::lower_bound(sites, own.name, {}, &ScrewSite::name);
  if (site == sites.end() || site->name != own.name) return not_seen("Site", own.name);
  const auto zone = std::ranges::lower_bound(site->zones, own.zones.front());
  if (zone == site->zones.end() || *zone != own.zones.front())
    return not_seen("Zone", own.zones.front());
  const auto run = std::ranges::lower_bound(site->runs, own.runs.front());
  if (run == site->runs.end() || *run != own.runs.front()) return not_seen("Run", own.runs.front());
  PlaceAmong place;
  place.site = static_cast<std::size_t>(site - sites.begin());
  place.part.zone = static_cast<std::int32_t>(zone - site->zones.begin());
  place.part.run = static_cast<std::int32_t>(run - site->runs.begin());
  place.part.add_global(0);
  return place;
}

RateSettings settings_of(const Workers& workers) {
  RateSettings settings;
  settings.nodes = screw_constant::nodes;
  settings.passes = screw_constant::passes;
  settings.ln_tau = {.mean = std::log(screw_constant::tau_mean),
                     .sd = screw_constant::ln_tau_sd,
                     .start = std::log(screw_constant::tau_mean),
                     .least = std::log(screw_constant::tau_least),
                     .most = std::log(screw_constant::tau_most)};
  settings.own = {{.mean = screw_constant::wear_mean,
                   .sd = screw_constant::wear_sd,
                   .start = screw_constant::wear_mean,
                   .step = screw_constant::wear_step,
                   .least = screw_constant::wear_least,
                   .most = screw_constant::wear_most}};
  settings.widening = screw_constant::widening;
  settings.workers = workers;
  return settings;
}

}  // namespace

Result<ScrewModel> fit_screw_model(const Portfolio& portfolio, const Workers& workers) {
  InstalledDates installed(portfolio);
  ScrewData data = gather_tightenings(portfolio, installed);
  return fit_screw_data(std::move(installed), std::move(data), workers);
}

Result<ScrewModel> fit_screw_data(InstalledDates installed, ScrewData data,
                                  const Workers& workers) {
  ScrewModel model;
  model.installed = std::move(installed);
  model.data = std::move(data);
  model.layout = layout_of(model.data);
  model.settings = settings_of(workers);
  model.likelihood = std::make_unique<ScrewLikelihood>(model.data);
  model.fit = fit_shared_rate(model.layout, *model.likelihood, model.settings);
  if (model.fit.stopped)
    return fail(
        Fault::cancelled,
        "Set-screw forecast: stopped before its end. Nothing was computed; the readings are "
        "as they were. Start it again when it is wanted.");
  if (!model.fit.computed)
    return fail(Fault::not_estimable,
                "Set-screw forecast: not computed: numerical. The readings are kept as they are. "
                "Look for torques or dates far out of range.");
  return model;
}

Result<ScrewModel> screw_model_of_one_part(const ScrewModel& model, const Portfolio& one) {
  if (one.parts.size() != 1)
    return fail(Fault::invalid_input,
                "Set-screw forecast of one part: exactly one part must be given. Nothing was "
                "computed.");
  ScrewModel own;
  own.data = gather_tightenings(one, model.installed);
  own.data.usual_settings = model.data.usual_settings;
  if (own.data.fittings.empty()) return own;
  const auto site = place_among(model.data.sites, own.data.sites.front());
  if (!site) return fail(site.error());
  const auto at = static_cast<std::ptrdiff_t>(site->site);
  own.layout = layout_of_site(model.layout, at);
  own.layout.parts = {site->part};
  own.layout.sites.front().parts = 1;
  own.settings = model.settings;
  own.fit = fit_of_site(model.fit, at);
  Fitting& fitting = own.data.fittings.front();
  const bool moved = own.data.sites.front().zone_measured.front() != 0;
  ScrewSite& among = own.data.sites.front();
  among = model.data.sites[site->site];
  among.first_fitting = 0;
  among.fittings = 1;
  fitting.zone = site->part.zone;
  fitting.run = site->part.run;
  if (moved) among.zone_measured[static_cast<std::size_t>(fitting.zone)] = 1;
  own.likelihood = std::make_unique<ScrewLikelihood>(own.data);
  own.likelihood->begin_pass(own.fit.own);
  return own;
}

RateNodes loss_nodes(const ScrewModel& model, int site, int fitting) {
  return rate_nodes(model.layout, model.fit, *model.likelihood, model.settings, site, fitting);
}

}  // namespace kneerail::forecast
