#include "core/forecast/screws/screw_fit.h"

#include <cmath>

#include "core/forecast/screws/constants.h"

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
  ScrewModel model;
  model.data = gather_tightenings(portfolio);
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

RateNodes loss_nodes(const ScrewModel& model, int site, int fitting) {
  return rate_nodes(model.layout, model.fit, *model.likelihood, model.settings, site, fitting);
}

}  // namespace kneerail::forecast
