#include "core/forecast/grade/grade_model.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/forecast/constants.h"

namespace kneerail::forecast {

namespace {

// Places of the global effects.
constexpr int at_middle = 0;
constexpr int at_kinds = 1;
constexpr int kinds = 10;
constexpr int at_materials = at_kinds + kinds;
constexpr int materials = 5;  ///< zinc under paint, and those that are not zinc
constexpr int at_exposures = at_materials + materials;
constexpr int exposures = 3;

constexpr double node_weight_least = 0.001;

void add_globals(const GradePart& part, RatePart& rate) {
  rate.add_global(at_middle);
  rate.add_global(at_kinds + static_cast<int>(part.kind));
  const int material = static_cast<int>(part.material);
  if (part.material != Material::zinc_coated_steel)
    rate.add_global(at_materials + material);
  else if (part.painted)
    rate.add_global(at_materials);
  if (part.exposure != Exposure::unknown)
    rate.add_global(at_exposures + static_cast<int>(part.exposure) - 1);
}

RateSettings engine_settings(const GradeOptions& options) {
  RateSettings settings;
  settings.nodes = options.nodes > 0 ? options.nodes : constant::grade_nodes;
  settings.passes = options.passes > 0 ? options.passes : constant::grade_passes;
  settings.site = settings.zone = constant::grade_place_spread;
  settings.ln_tau = {.mean = std::log(constant::grade_tau_mean),
                     .sd = constant::grade_tau_ln_sd,
                     .start = std::log(constant::grade_tau_first),
                     .step = constant::grade_step_ln,
                     .least = std::log(constant::grade_tau_least),
                     .most = std::log(constant::grade_tau_most)};
  settings.own.assign(grade_count - 2, {.mean = 0,
                                        .sd = constant::grade_ratio_sd,
                                        .start = 0,
                                        .step = constant::grade_step_ln,
                                        .least = -constant::grade_ratio_most_ln,
                                        .most = constant::grade_ratio_most_ln});
  settings.centre = at_middle;
  settings.workers = options.workers;
  return settings;
}

double share(double weight, double prior, double counted, double of) {
  return std::min(constant::grade_error_most, (weight * prior + counted) / (weight + of));
}

}  // namespace

RateLayout grade_layout(const GradeData& data) {
  RateLayout layout;
  const double middle = std::log(constant::grade_speed_mean);
  layout.globals.push_back({middle, constant::grade_speed_ln_sd, middle});
  layout.globals.insert(layout.globals.end(), kinds, {0, constant::grade_kind_sd, 0});
  layout.globals.insert(layout.globals.end(), materials, {0, constant::grade_material_sd, 0});
  layout.globals.insert(layout.globals.end(), exposures, {0, constant::grade_exposure_sd, 0});
  for (const GradeSite& site : data.sites)
    layout.sites.push_back({.first_part = site.first_part,
                            .parts = site.parts,
                            .zones = static_cast<std::int32_t>(site.zones.size())});
  for (const GradePart& part : data.parts) {
    RatePart& rate = layout.parts.emplace_back();
    rate.zone = part.zone;
    add_globals(part, rate);
  }
  return layout;
}

GradeRates relative_rates(std::span<const double> ln_ratios) {
  GradeRates rates;
  rates[0] = 1;
  for (std::size_t k = 1; k < rates.size(); ++k) rates[k] = std::exp(ln_ratios[k - 1]);
  return rates;
}

GradeLikelihood::GradeLikelihood(const GradeData& data, std::vector<GradeErrors> errors)
    : data_(&data), errors_(std::move(errors)), emissions_(errors_), sites_(data.sites.size()) {
  counts_.resize(data.inspectors.size());
}

GradeLikelihood::GradeLikelihood(const GradeData& data, std::vector<GradeErrors> errors,
                                 const ChainTable& fitted)
    : GradeLikelihood(data, std::move(errors)) {
  fitted_ = &fitted;
}

void GradeLikelihood::begin_pass(std::span<const double> own) {
  tables_.clear();
  tables_.emplace_back(relative_rates(own));
  for (std::size_t k = 0; k < own.size(); ++k) {
    std::vector<double> shifted(own.begin(), own.end());
    shifted[k] += constant::grade_step_ln;
    tables_.emplace_back(relative_rates(shifted));
  }
}

bool GradeLikelihood::tells(int part) const {
  const GradePart& own = data_->parts[static_cast<std::size_t>(part)];
  for (int i = own.first_segment; i < own.first_segment + own.segments; ++i)
    if (data_->segments[static_cast<std::size_t>(i)].count > 0) return true;
  return false;
}

bool GradeLikelihood::depends(int part, int /*k*/) const {
  return tells(part);
}

void GradeLikelihood::ln_likelihood(int part, int shifted, std::span<const double> x,
                                    std::span<double> out) const {
  const GradeChain chain(*data_, of_shift(shifted), emissions_);
  const GradePart& own = data_->parts[static_cast<std::size_t>(part)];
  std::ranges::fill(out, 0);
  for (int i = own.first_segment; i < own.first_segment + own.segments; ++i) {
    const GradeSegment& segment = data_->segments[static_cast<std::size_t>(i)];
    if (segment.count == 0) continue;
    for (std::size_t k = 0; k < x.size(); ++k) out[k] += chain.forward(segment, x[k]).ln_likelihood;
  }
}

void GradeLikelihood::note_posterior(int site, int part, std::span<const double> x,
                                     std::span<const double> weights) {
  const GradePart& own = data_->parts[static_cast<std::size_t>(part)];
  SiteCounts& into = sites_[static_cast<std::size_t>(site)];
  for (int i = own.first_segment; i < own.first_segment + own.segments; ++i) {
    const GradeSegment& segment = data_->segments[static_cast<std::size_t>(i)];
    if (segment.count > 0) note_segment(segment, x, weights, into);
  }
}

void GradeLikelihood::note_segment(const GradeSegment& segment, std::span<const double> x,
                                   std::span<const double> weights, SiteCounts& site) const {
  const GradeChain now = chain();
  site.mean.assign(static_cast<std::size_t>(segment.count), GradeChances{});
  for (std::size_t k = 0; k < x.size(); ++k) {
    if (weights[k] < node_weight_least) continue;
    now.smooth(segment, x[k], site.at_looks);
    for (std::size_t n = 0; n < site.mean.size(); ++n)
      for (std::size_t j = 0; j < grade_count; ++j)
        site.mean[n][j] += weights[k] * site.at_looks[n][j];
  }
  for (std::size_t n = 0; n < site.mean.size(); ++n) {
    const GradeLook& look = data_->looks[static_cast<std::size_t>(segment.first) + n];
    if (!look.fresh) continue;
    const auto place = std::ranges::lower_bound(site.inspectors, look.inspector);
    const auto at = place - site.inspectors.begin();
    if (place == site.inspectors.end() || *place != look.inspector) {
      site.inspectors.insert(place, look.inspector);
      site.counts.insert(site.counts.begin() + at, InspectorCounts{});
    }
    InspectorCounts& counts = site.counts[static_cast<std::size_t>(at)];
    const GradeChances& truth = site.mean[n];
    const auto seen = static_cast<std::size_t>(look.seen - 1);
    counts.seen += 1;
    counts.could_be_up += 1 - truth[grade_count - 1];
    counts.could_be_down += 1 - truth[0];
    if (seen > 0) counts.ups += truth[seen - 1];
    if (seen + 1 < grade_count) counts.downs += truth[seen + 1];
  }
}

void GradeLikelihood::end_pass() {
  counts_.assign(errors_.size(), InspectorCounts{});
  InspectorCounts all;
  const auto add = [](const InspectorCounts& from, InspectorCounts& to) {
    to.seen += from.seen;
    to.could_be_up += from.could_be_up;
    to.could_be_down += from.could_be_down;
    to.ups += from.ups;
    to.downs += from.downs;
  };
  for (SiteCounts& site : sites_) {
    for (std::size_t i = 0; i < site.inspectors.size(); ++i) {
      add(site.counts[i], counts_[static_cast<std::size_t>(site.inspectors[i])]);
      add(site.counts[i], all);
    }
    site.counts.assign(site.inspectors.size(), InspectorCounts{});
  }
  pooled_.up =
      share(constant::grade_error_weight, constant::grade_error_first, all.ups, all.could_be_up);
  pooled_.down = share(constant::grade_error_weight, constant::grade_error_first, all.downs,
                       all.could_be_down);
  for (std::size_t i = 0; i < errors_.size(); ++i) {
    const InspectorCounts& own = counts_[i];
    errors_[i].up = share(constant::grade_error_weight, pooled_.up, own.ups, own.could_be_up);
    errors_[i].down =
        share(constant::grade_error_weight, pooled_.down, own.downs, own.could_be_down);
  }
  emissions_ = GradeEmissions(errors_);
}

Result<GradeModel> fit_grade_model(const Portfolio& portfolio, const GradeOptions& options) {
  InstalledDates installed(portfolio);
  GradeData data = prepare_grades(portfolio, installed);
  return fit_grade_data(std::move(installed), std::move(data), options);
}

Result<GradeModel> fit_grade_data(InstalledDates installed, GradeData data,
                                  const GradeOptions& options) {
  GradeModel model{.installed = std::move(installed),
                   .data = std::move(data),
                   .layout = {},
                   .settings = engine_settings(options),
                   .fit = {},
                   .pooled_errors = {},
                   .errors = {},
                   .counts = {},
                   .table = {}};
  if (!options.repeats_are_weak)
    for (GradeLook& look : model.data.looks) look.fresh = true;
  model.layout = grade_layout(model.data);
  GradeLikelihood likelihood(model.data, std::vector<GradeErrors>(model.data.inspectors.size()));
  model.fit = fit_shared_rate(model.layout, likelihood, model.settings);
  if (model.fit.stopped)
    return fail(Fault::cancelled,
                "Grade forecast: stopped before its end. Nothing was computed; the grades are as "
                "they were. Ask again for the whole.");
  if (!model.fit.computed)
    return fail(
        Fault::not_estimable,
        "Grade forecast: not computed: numerical. The grades are kept as they are. Look for "
        "dates far out of range.");
  model.pooled_errors = likelihood.pooled();
  model.errors = likelihood.errors();
  model.counts = likelihood.counts();
  model.table.emplace(relative_rates(model.fit.own));
  return model;
}

GradeRates rates_per_year(const GradeModel& model) {
  GradeRates rates = relative_rates(model.fit.own);
  for (double& rate : rates) rate *= std::exp(model.fit.globals[at_middle]);
  return rates;
}

}  // namespace kneerail::forecast
