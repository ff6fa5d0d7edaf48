#include "core/forecast/one_part.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <tuple>

#include "core/forecast/limit_report.h"
#include "core/forecast/preparation.h"
#include "core/forecast/rust.h"
#include "core/forecast/segment_fit.h"
#include "core/forecast/session_report.h"
#include "core/forecast/swaps.h"

namespace kneerail::forecast {

namespace {

constexpr int weight_passes = 10;

std::optional<std::size_t> found(const std::vector<std::string>& sorted, const std::string& name) {
  const auto at = std::lower_bound(sorted.begin(), sorted.end(), name);
  if (at == sorted.end() || *at != name) return std::nullopt;
  return static_cast<std::size_t>(at - sorted.begin());
}

/// Takes from the model's effects those that the one part touches, in the one part's own layout.
class EffectsOfOne {
 public:
  EffectsOfOne(const CoatingModel& model, const CoatingData& one) : model_(model), one_(one) {
    const auto& sites = model.data.sites;
    const auto at = std::lower_bound(
        sites.begin(), sites.end(), one.sites[0].name,
        [](const CoatingSite& site, const std::string& name) { return site.name < name; });
    if (at != sites.end() && at->name == one.sites[0].name) {
      site_ = &*at;
      from_ = &model.effects.sites[static_cast<std::size_t>(at - sites.begin())];
    }
  }

  SharedEffects take() {
    SharedEffects out;
    out.spreads = model_.effects.spreads;
    out.globals = model_.effects.globals;
    out.global_covariance = model_.effects.global_covariance;
    map_places();
    SiteEffects site;
    take_core(site);
    take_run(site);
    take_foils(site);
    site.zone_seen.assign(1, 1);
    site.run_seen.assign(1, 1);
    out.sites.push_back(std::move(site));
    return out;
  }

 private:
  static constexpr int unseen = -1;

  [[nodiscard]] int seen_session(const Session& session) const {
    const auto first = model_.data.sessions.begin() + site_->first_session;
    const auto last = first + site_->sessions;
    const auto at = std::lower_bound(first, last, session, [](const Session& a, const Session& b) {
      return std::tie(a.day, a.gauge) < std::tie(b.day, b.gauge);
    });
    const bool same = at != last && at->day == session.day && at->gauge == session.gauge;
    return same ? static_cast<int>(at - first) : unseen;
  }

  struct Habit {
    double mean_um = 0;
    double variance = 0;
  };
  /// What the fit knows of who read.
  [[nodiscard]] Habit habit_of(const Session& session) const {
    const auto inspector = found(model_.data.inspectors, session.inspector_name);
    if (!inspector) return {};
    return {model_.effects.habits_um[*inspector], model_.effects.habit_variance[*inspector]};
  }

  /// For each core place of the one part: its place among the model's site, or unseen; and what it
  /// varies by when unseen.
  void map_places() {
    const CoreLayout own = core_layout(one_.sites[0]);
    const auto size = static_cast<std::size_t>(own.with_globals());
    place_.assign(size, unseen);
    prior_sd_.assign(size, 0);
    prior_mean_.assign(size, 0);
    const Spreads& spreads = model_.effects.spreads;
    const auto set = [&](int at, int from, double sd) {
      place_[static_cast<std::size_t>(at)] = from;
      prior_sd_[static_cast<std::size_t>(at)] = sd;
    };
    const CoreLayout theirs = site_ != nullptr ? core_layout(*site_) : CoreLayout{};
    for (int s = 0; s < own.sessions; ++s) {
      const int from =
          site_ != nullptr ? seen_session(one_.sessions[static_cast<std::size_t>(s)]) : unseen;
      const Habit habit = habit_of(one_.sessions[static_cast<std::size_t>(s)]);
      set(own.offset(s), from == unseen ? unseen : theirs.offset(from),
          std::sqrt(spreads.offset_um * spreads.offset_um + habit.variance));
      prior_mean_[static_cast<std::size_t>(own.offset(s))] = habit.mean_um;
      set(own.gain(s), from == unseen ? unseen : theirs.gain(from), spreads.gain);
    }
    set(own.site(), site_ != nullptr ? theirs.site() : unseen, spreads.site);
    const auto zone = site_ != nullptr ? found(site_->zones, one_.sites[0].zones[0]) : std::nullopt;
    set(own.zone(0), zone ? theirs.zone(static_cast<int>(*zone)) : unseen, spreads.zone);
    for (int g = 0; g < global_count; ++g)
      set(own.size() + g, site_ != nullptr ? theirs.size() + g : unseen, 0);
  }

  void take_core(SiteEffects& out) const {
    const std::size_t size = place_.size();
    const auto globals_from = size - global_count;
    out.core.assign(size, 0);
    out.covariance.assign(size * size, 0);
    for (std::size_t i = 0; i < size; ++i) {
      out.core[i] = prior_mean_[i];
      if (i >= globals_from) out.core[i] = model_.effects.globals[i - globals_from];
      if (place_[i] != unseen) out.core[i] = from_->core[static_cast<std::size_t>(place_[i])];
      for (std::size_t j = 0; j < size; ++j) out.covariance[i * size + j] = core_covariance(i, j);
    }
  }

  [[nodiscard]] double core_covariance(std::size_t i, std::size_t j) const {
    const std::size_t globals_from = place_.size() - global_count;
    if (place_[i] != unseen && place_[j] != unseen) {
      const auto theirs = from_->core.size();
      return from_->covariance[static_cast<std::size_t>(place_[i]) * theirs +
                               static_cast<std::size_t>(place_[j])];
    }
    if (i >= globals_from && j >= globals_from)
      return model_.effects.global_covariance[(i - globals_from) * global_count + j - globals_from];
    return i == j ? prior_sd_[i] * prior_sd_[i] : 0;
  }

  void take_run(SiteEffects& out) const {
    const std::size_t size = place_.size();
    const Spreads& spreads = model_.effects.spreads;
    out.runs.assign(run_unknowns, 0);
    out.run_cross.assign(run_unknowns * size, 0);
    out.run_covariance.assign(run_unknowns * run_unknowns, 0);
    const std::array<double, run_unknowns> sds{spreads.run, spreads.batch, spreads.run_kind,
                                               spreads.run_kind, spreads.run_kind};
    for (std::size_t r = 0; r < run_unknowns; ++r)
      out.run_covariance[r * run_unknowns + r] = sds[r] * sds[r];
    out.batch_weights.assign(1, 1);
    const auto run = site_ != nullptr ? found(site_->runs, one_.sites[0].runs[0]) : std::nullopt;
    if (!run) return;
    for (std::size_t r = 0; r < run_unknowns; ++r) {
      const std::size_t row = *run * run_unknowns + r;
      out.runs[r] = from_->runs[row];
      for (std::size_t c = 0; c < run_unknowns; ++c)
        out.run_covariance[r * run_unknowns + c] = from_->run_covariance[row * run_unknowns + c];
      for (std::size_t i = 0; i < size; ++i)
        if (place_[i] != unseen)
          out.run_cross[r * size + i] =
              from_->run_cross[row * from_->core.size() + static_cast<std::size_t>(place_[i])];
    }
  }

  /// A check foil of a session the fit has not seen: b + g * thickness read with its own error.
  void take_foils(SiteEffects& out) const {
    const CoreLayout own = core_layout(one_.sites[0]);
    const std::size_t size = place_.size();
    for (int s = 0; s < own.sessions; ++s) {
      const auto b = static_cast<std::size_t>(own.offset(s));
      const auto g = static_cast<std::size_t>(own.gain(s));
      if (place_[b] != unseen) continue;
      double* cov = out.covariance.data();
      for (const Foil& foil : one_.sessions[static_cast<std::size_t>(s)].foils) {
        const double x = foil.true_um;
        const double to_b = cov[b * size + b] + x * cov[b * size + g];
        const double to_g = cov[g * size + b] + x * cov[g * size + g];
        const double variance = to_b + x * to_g + constant::foil_sd_um * constant::foil_sd_um;
        const double surprise = foil.read_um - x - out.core[b] - x * out.core[g];
        out.core[b] += to_b / variance * surprise;
        out.core[g] += to_g / variance * surprise;
        cov[b * size + b] -= to_b * to_b / variance;
        cov[b * size + g] -= to_b * to_g / variance;
        cov[g * size + b] -= to_b * to_g / variance;
        cov[g * size + g] -= to_g * to_g / variance;
      }
    }
  }

  const CoatingModel& model_;
  const CoatingData& one_;
  const CoatingSite* site_ = nullptr;
  const SiteEffects* from_ = nullptr;
  std::vector<int> place_;
  std::vector<double> prior_sd_;
  std::vector<double> prior_mean_;
};

/// The weights that stage 1 would come to with these effects.
void settle_weights(CoatingData& one, const SharedEffects& effects) {
  const FitInput input{&one, &effects.spreads, &effects.sites[0], core_layout(one.sites[0]), 0};
  SegmentFit fit;
  for (const Segment& segment : one.segments)
    for (int pass = 0; pass < weight_passes; ++pass) {
      fit_segment(input, segment, fit);
      for (const SegmentRow& row : fit.rows)
        if (row.mean >= 0)
          one.means[static_cast<std::size_t>(row.mean)].weight =
              robust_weight(fit, row, one.means[static_cast<std::size_t>(row.mean)]);
    }
}

}  // namespace

Result<CoatingModel> model_of_one_part(const CoatingModel& model, const Portfolio& one) {
  if (one.parts.size() != 1)
    return fail(Fault::invalid_input,
                "Forecast of one part: exactly one part must be given. Nothing was computed.");
  auto data = prepare_coating(one, learnt_from(model.data));
  if (!data) return fail(data.error());
  CoatingModel own{std::move(*data), {}, {}};
  own.effects = EffectsOfOne(model, own.data).take();
  own.back_dated.spread_scale = model.back_dated.spread_scale;
  weigh_rust(own.data, own.effects, {.threads = 1});
  if (cut_unrecorded_swaps(own.data, own.effects, {.threads = 1}) > 0)
    weigh_rust(own.data, own.effects, {.threads = 1});
  settle_weights(own.data, own.effects);
  note_zone_sessions(model.data, own.data);
  return own;
}

Result<std::vector<LimitForecast>> forecast_one_part(const CoatingModel& model,
                                                     const Portfolio& one) {
  if (one.parts.size() == 1 && !why_not_served(one.parts[0]).empty())
    return std::vector<LimitForecast>{unserved_row(one, 0)};
  const auto own = model_of_one_part(model, one);
  if (!own) return fail(own.error());
  return rows_of_one_model(*own, one);
}

std::vector<LimitForecast> rows_of_one_model(const CoatingModel& own, const Portfolio& one) {
  const auto sessions = session_reports(own);
  return limit_rows({&one, &own, &sessions}, 0);
}

}  // namespace kneerail::forecast
