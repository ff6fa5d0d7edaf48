#include "core/forecast/one_part.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <tuple>

#include "core/forecast/gauge_walk_inside.h"
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
    site.drift_um.assign(one_.sessions.size(), constant::drift_spread.first);
    site.zone_seen.assign(1, 1);
    site.run_seen.assign(1, 1);
    out.sites.push_back(std::move(site));
    return out;
  }

 private:
  static constexpr int unseen = -1;
  /// A share of one of the model's unknowns.
  struct Followed {
    std::size_t place;
    double weight;
  };

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

  /// The mean of an offset the fit has seen about which it lies.
  [[nodiscard]] double habit_um(const Session& session) const {
    return session.inspector < 0
               ? 0
               : model_.effects.habits_um[static_cast<std::size_t>(session.inspector)];
  }

  /// A session the fit has not seen goes on where its gauge's walk led: given the gauge's offsets b
  /// that were seen, L (b - habits), with k' K^-1 = L, and the variance that is left.
  void follow_gauge(int own, double habit_variance) {
    const Session& session = one_.sessions[static_cast<std::size_t>(own)];
    for (const GaugeDays& gauge : days_by_gauge(model_.data, *site_)) {
      const int first = site_->first_session + gauge.sessions[0];
      const Session& start = model_.data.sessions[static_cast<std::size_t>(first)];
      if (start.gauge != session.gauge || session.day <= start.day) continue;
      const double drift_um = from_->drift_um[static_cast<std::size_t>(gauge.sessions[0])];
      const double own_sd_um = model_.effects.spreads.offset_um;
      const Matrix precision = offset_precision(gauge, drift_um, own_sd_um);
      GaugeDays with = gauge;
      with.years.push_back(years_between(start.day, session.day));
      const Matrix walk = walk_covariance(with.years, drift_um);
      const Eigen::Index n = precision.rows();
      const Vector weights = precision * walk.row(n).head(n).transpose();
      const auto at = static_cast<std::size_t>(core_layout(one_.sites[0]).offset(own));
      const double left = walk(n, n) - weights.dot(walk.row(n).head(n).transpose());
      prior_sd_[at] = std::sqrt(own_sd_um * own_sd_um + habit_variance + std::max(0.0, left));
      for (Eigen::Index i = 0; i < n; ++i) {
        const int s = gauge.sessions[static_cast<std::size_t>(i)];
        const int theirs = core_layout(*site_).offset(s);
        const Session& seen =
            model_.data.sessions[static_cast<std::size_t>(site_->first_session + s)];
        follows_[at].push_back({static_cast<std::size_t>(theirs), weights(i)});
        prior_mean_[at] +=
            weights(i) * (from_->core[static_cast<std::size_t>(theirs)] - habit_um(seen));
      }
    }
  }

  /// For each core place of the one part: its place among the model's site, or unseen; and what it
  /// varies by when unseen.
  void map_places() {
    const CoreLayout own = core_layout(one_.sites[0]);
    const auto size = static_cast<std::size_t>(own.with_globals());
    place_.assign(size, unseen);
    prior_sd_.assign(size, 0);
    prior_mean_.assign(size, 0);
    follows_.assign(size, {});
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
      if (from == unseen && site_ != nullptr) follow_gauge(s, habit.variance);
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

  /// What an unknown of the one part is made of, among the model's site.
  [[nodiscard]] std::vector<Followed> made_of(std::size_t i) const {
    if (place_[i] == unseen) return follows_[i];
    return {{static_cast<std::size_t>(place_[i]), 1.0}};
  }

  [[nodiscard]] double core_covariance(std::size_t i, std::size_t j) const {
    const std::size_t globals_from = place_.size() - global_count;
    if (site_ != nullptr) {
      double sum = i == j && place_[i] == unseen ? prior_sd_[i] * prior_sd_[i] : 0;
      for (const Followed& a : made_of(i))
        for (const Followed& b : made_of(j))
          sum += a.weight * b.weight * from_->covariance[a.place * from_->core.size() + b.place];
      return sum;
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
        for (const Followed& a : made_of(i))
          out.run_cross[r * size + i] +=
              a.weight * from_->run_cross[row * from_->core.size() + a.place];
    }
  }

  /// A check foil of a session the fit has not seen: b + g * thickness read with its own error.
  void take_foils(SiteEffects& out) const {
    const CoreLayout own = core_layout(one_.sites[0]);
    for (int s = 0; s < own.sessions; ++s) {
      if (place_[static_cast<std::size_t>(own.offset(s))] != unseen) continue;
      for (const Foil& foil : one_.sessions[static_cast<std::size_t>(s)].foils)
        take_foil(own.offset(s), own.gain(s), foil, out);
    }
  }

  /// A normal reading of b + g * x moves all that goes along with it.
  void take_foil(int b, int g, const Foil& foil, SiteEffects& out) const {
    const auto size = static_cast<Eigen::Index>(place_.size());
    const double x = foil.true_um;
    Eigen::Map<Vector> core(out.core.data(), size);
    Eigen::Map<Vector> runs(out.runs.data(), run_unknowns);
    Eigen::Map<Matrix> covariance(out.covariance.data(), size, size);
    Eigen::Map<Matrix> cross(out.run_cross.data(), run_unknowns, size);
    Eigen::Map<Matrix> own(out.run_covariance.data(), run_unknowns, run_unknowns);
    const Vector to_core = covariance.col(b) + x * covariance.col(g);
    const Vector to_runs = cross.col(b) + x * cross.col(g);
    const double variance =
        to_core(b) + x * to_core(g) + constant::foil_sd_um * constant::foil_sd_um;
    const double surprise = foil.read_um - x - core(b) - x * core(g);
    core += to_core * (surprise / variance);
    runs += to_runs * (surprise / variance);
    covariance -= to_core * to_core.transpose() / variance;
    cross -= to_runs * to_core.transpose() / variance;
    own -= to_runs * to_runs.transpose() / variance;
  }

  const CoatingModel& model_;
  const CoatingData& one_;
  const CoatingSite* site_ = nullptr;
  const SiteEffects* from_ = nullptr;
  std::vector<int> place_;
  std::vector<std::vector<Followed>> follows_;  ///< of unseen places
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
