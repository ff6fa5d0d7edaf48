#include "core/forecast/coating_forecast.h"

#include <algorithm>
#include <utility>

#include "core/forecast/class_report.h"
#include "core/forecast/coating_model.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/preparation.h"
#include "core/forecast/rust.h"
#include "core/forecast/session_report.h"
#include "core/forecast/stage_one.h"
#include "core/forecast/swaps.h"

namespace kneerail::forecast {

namespace {

Error not_computed() {
  return fail(Fault::not_estimable,
              "Coating forecast: not computed: numerical. The readings are kept as they are. Look "
              "for readings, dates or nominal coatings far out of range.");
}

/// Stage 1, and with it which readings were taken on rust: the two lean on each other. Where no
/// reading may be of rust, or no part's answer changes any more, the rounds between are left out.
SharedEffects fit_with_rust(CoatingData& data, const StageOneOptions& whole) {
  if (!guess_rust(data)) return fit_shared_effects(data, first_effects(data), whole);
  StageOneOptions stage = whole;
  stage.passes = std::max(1, whole.passes / constant::rust_rounds);
  SharedEffects effects = fit_shared_effects(data, first_effects(data), stage);
  for (int round = 1; round <= constant::rust_rounds && effects.computed; ++round) {
    const bool last = round == constant::rust_rounds;
    if (weigh_rust(data, effects, whole.workers) == 0 && !last) continue;
    stage.passes = last ? std::max(1, whole.passes / 2) : constant::rust_round_passes;
    effects = fit_shared_effects(data, std::move(effects), stage);
  }
  return effects;
}

Error stopped() {
  return fail(Fault::cancelled,
              "Coating forecast: stopped before its end. Nothing was computed; the readings are as "
              "they were. Start it again when it is wanted.");
}

Workers workers_of(const RunOptions& options) {
  return {.threads = options.threads, .stop = options.stop};
}

CoatingForecast report(const CoatingModel& model, const Portfolio& portfolio,
                       const RunOptions& options) {
  CoatingForecast out;
  out.sessions = session_reports(model);
  out.limits = all_limit_rows({&portfolio, &model, &out.sessions, options.on}, workers_of(options));
  out.track_record = model.back_dated.rows;
  out.left_out = portfolio.left_out;
  out.left_out.insert(out.left_out.end(), model.data.left_out.begin(), model.data.left_out.end());
  out.notes = coating_notes(model);
  out.largest_move = model.effects.largest_move_ln;
  return out;
}

}  // namespace

std::vector<std::string> coating_notes(const CoatingModel& model) {
  std::vector<std::string> notes = model.data.notes;
  for (auto& note : class_notes(model)) notes.push_back(std::move(note));
  for (auto& note : fit_notes(model.effects)) notes.push_back(std::move(note));
  return notes;
}

Result<CoatingModel> fit_coating_model(const Portfolio& portfolio, const RunOptions& options) {
  if (workers_of(options).stopped()) return stopped();
  auto data = prepare_coating(portfolio);
  if (!data) return fail(data.error());
  return fit_coating_data(std::move(*data), options);
}

Result<CoatingModel> fit_coating_data(CoatingData data, const RunOptions& options) {
  const Workers workers = workers_of(options);
  if (workers.stopped()) return stopped();
  CoatingModel model{std::move(data), {}, {}};
  StageOneOptions stage{.passes = options.passes, .workers = workers};
  if (stage.passes <= 0) stage.passes = usual_passes(model.data.parts.size());
  model.effects = fit_with_rust(model.data, stage);
  if (workers.stopped()) return stopped();
  if (!model.effects.computed) return not_computed();
  if (cut_unrecorded_swaps(model.data, model.effects, workers) > 0) {
    weigh_rust(model.data, model.effects, workers);
    stage.passes = constant::passes_after_swaps;
    model.effects = fit_shared_effects(model.data, std::move(model.effects), stage);
    if (!model.effects.computed && !workers.stopped()) return not_computed();
  }
  if (workers.stopped()) return stopped();
  if (options.track_record)
    model.back_dated = back_dated_forecast(model.data, model.effects, workers);
  if (workers.stopped()) return stopped();
  return model;
}

CoatingForecast report_coating(const CoatingModel& model, const Portfolio& portfolio, int threads) {
  return report(model, portfolio, RunOptions{.threads = threads});
}

Result<CoatingForecast> report_coating(const CoatingModel& model, const Portfolio& portfolio,
                                       const RunOptions& options) {
  auto out = report(model, portfolio, options);
  if (workers_of(options).stopped()) return stopped();
  return out;
}

Result<CoatingForecast> forecast_coating(const Portfolio& portfolio, const RunOptions& options) {
  const auto model = fit_coating_model(portfolio, options);
  if (!model) return fail(model.error());
  return report_coating(*model, portfolio, options);
}

}  // namespace kneerail::forecast
