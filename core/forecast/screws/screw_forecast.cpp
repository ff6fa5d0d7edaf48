#include "core/forecast/screws/screw_forecast.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/forecast/limit_report.h"
#include "core/forecast/screws/constants.h"
#include "core/forecast/screws/outlook.h"
#include "core/forecast/screws/screw_words.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

template <class Chance>
ChancesByYear by_year(const Chance& chance) {
  ChancesByYear chances{};
  for (std::size_t i = 0; i < chances.size(); ++i) {
    chances[i] = chance(chance_years[i] * days_per_year);
    if (i > 0) chances[i] = std::max(chances[i], chances[i - 1]);
  }
  return chances;
}

/// Whether each screw stood at the minimum or more at a check of the as-of date.
bool proved(const ScrewData& data, const Fitting& fitting, double minimum_nm) {
  return std::all_of(fitting.screws.begin(), fitting.screws.end(), [&](const Screw& screw) {
    const auto& readings = screw.tightenings.back().readings;
    return !readings.empty() && readings.back().day == data.as_of &&
           readings.back().found != TorqueFound::free && readings.back().torque_nm >= minimum_nm;
  });
}

ChancesByYear given_good(const ChancesByYear& chances) {
  ChancesByYear out{};
  for (std::size_t i = 0; i < out.size(); ++i)
    if (chances[0] < 1) out[i] = std::clamp((chances[i] - chances[0]) / (1 - chances[0]), 0.0, 1.0);
  return out;
}

/// All rows of one site, in order.
class SiteReport {
 public:
  SiteReport(const ScrewModel& model, const Portfolio& portfolio, const ScrewOptions& options,
             int site)
      : model_(model), portfolio_(portfolio), date_(options.date), site_(site) {
    for (const SiteLimits& limits : portfolio.limits)
      if (limits.site == model.data.sites[static_cast<std::size_t>(site)].name)
        chance_ = limits.chance;
    for (std::size_t i = 0; i < chance_.size(); ++i)
      if (options.chance[i]) chance_[i] = options.chance[i];
  }

  [[nodiscard]] ScrewForecast row(int index) const {
    const Fitting& fitting = model_.data.fittings[static_cast<std::size_t>(index)];
    const Part& part = portfolio_.parts[static_cast<std::size_t>(fitting.place)];
    ScrewForecast row;
    row.part = fitting.place;
    row.screws = static_cast<int>(fitting.screws.size());
    row.readings_used = fitting.readings;
    if (auto words = put_up_later_words(part, model_.data.as_of))
      row.flags.push_back(std::move(*words));
    const double minimum_nm = part.torque_minimum_nm.value_or(0);
    if (!(minimum_nm > 0) || !std::isfinite(minimum_nm)) {
      row.words = "no torque minimum is set for this fitting";
      return row;
    }
    const auto left_nm = torque_left(fitting);
    if (!left_nm) {
      row.words = "no torque target is set and no torque as left is recorded";
      return row;
    }
    answer(index, ScrewReason{minimum_nm, *left_nm, owners_chance(chance_, part.consequence)}, row);
    return row;
  }

 private:
  /// What a re-torque today leaves: the target, else what the last one left. None where a screw's
  /// own start is not known.
  [[nodiscard]] static std::optional<double> torque_left(const Fitting& fitting) {
    std::optional<double> least;
    for (const Screw& screw : fitting.screws) {
      const double own = screw.tightenings.back().as_left_nm;
      if (own <= 0) return std::nullopt;
      least = std::min(least.value_or(own), own);
    }
    return fitting.target_nm ? fitting.target_nm : least;
  }

  void answer(int index, const ScrewReason& reason, ScrewForecast& row) const {
    const Fitting& fitting = model_.data.fittings[static_cast<std::size_t>(index)];
    const FittingOutlook outlook(model_, site_, index, reason.minimum_nm, reason.left_nm);
    row.answered = true;
    row.as_found = by_year([&](double days) { return outlook.as_found(days); });
    row.as_left = by_year([&](double days) { return outlook.as_left(days); });
    if (proved(model_.data, fitting, reason.minimum_nm)) row.proved_good = given_good(row.as_found);
    if (date_) {
      const double days = std::max(0.0, static_cast<double>(date_->days) - model_.data.as_of.days);
      row.on_date = outlook.as_found(days);
      row.left_on_date = outlook.as_left(days);
    }
    if (const auto days =
            outlook.days_as_found(0.5, screw_constant::longest_years_said * days_per_year))
      row.median_years = *days / days_per_year;
    if (reason.chance) answer_owner(outlook, *reason.chance, row);
    row.own_share = outlook.nodes().own_share;
    constexpr std::array<double, 3> levels{0.1, 0.5, 0.9};
    for (std::size_t i = 0; i < levels.size(); ++i)
      row.loss_nm_per_tenfold[i] = std::exp(quantile(outlook.nodes(), levels[i]));
    const ScrewSite& site = model_.data.sites[static_cast<std::size_t>(site_)];
    ScrewEvidence evidence = evidence_of(site, fitting, reason.minimum_nm);
    evidence.chance_now = row.as_found[0];
    row.words = screw_words(evidence);
    for (auto& flag : screw_flags(model_, fitting, reason.minimum_nm))
      row.flags.push_back(std::move(flag));
    row.sentence = screw_sentence(row, reason);
  }

  void answer_owner(const FittingOutlook& outlook, double chance, ScrewForecast& row) const {
    constexpr double most_days = screw_constant::longest_retorque_years * days_per_year;
    if (const auto days = outlook.days_as_found(chance, most_days))
      row.owners = {chance, *days / days_per_year};
    const auto days = outlook.days_as_left(chance, most_days);
    if (days && *days > 0)
      row.retorque_by = Date{model_.data.as_of.days + static_cast<std::int32_t>(*days)};
    row.target_too_low = days && !row.retorque_by;
  }

  const ScrewModel& model_;
  const Portfolio& portfolio_;
  std::optional<Date> date_;
  int site_;
  std::array<std::optional<double>, 4> chance_;
};

}  // namespace

Result<ScrewForecasts> report_screws(const ScrewModel& model, const Portfolio& portfolio,
                                     const ScrewOptions& options) {
  ScrewForecasts out;
  out.fittings.resize(model.data.fittings.size());
  const Workers workers{.threads = options.threads, .stop = options.stop};
  for_each_unit(static_cast<int>(model.data.sites.size()), workers, [&](int s) {
    const ScrewSite& site = model.data.sites[static_cast<std::size_t>(s)];
    const SiteReport report(model, portfolio, options, s);
    for (int i = site.first_fitting; i < site.first_fitting + site.fittings; ++i)
      out.fittings[static_cast<std::size_t>(i)] = report.row(i);
  });
  if (workers.stopped())
    return fail(
        Fault::cancelled,
        "Set-screw forecast: stopped before its end. Nothing was computed; the readings are "
        "as they were. Start it again when it is wanted.");
  std::sort(out.fittings.begin(), out.fittings.end(),
            [&](const ScrewForecast& a, const ScrewForecast& b) {
              return portfolio.parts[static_cast<std::size_t>(a.part)].id <
                     portfolio.parts[static_cast<std::size_t>(b.part)].id;
            });
  out.left_out = model.data.left_out;
  if (std::any_of(out.fittings.begin(), out.fittings.end(),
                  [](const ScrewForecast& row) { return row.answered; }))
    out.notes = screw_notes(model);
  return out;
}

Result<ScrewForecasts> forecast_screws(const Portfolio& portfolio, const ScrewOptions& options) {
  const auto model = fit_screw_model(portfolio, {.threads = options.threads, .stop = options.stop});
  if (!model) return fail(model.error());
  return report_screws(*model, portfolio, options);
}

Result<std::optional<ScrewForecast>> screws_of_one_part(const ScrewModel& model,
                                                        const Portfolio& one) {
  const auto own = screw_model_of_one_part(model, one);
  if (!own) return fail(own.error());
  if (own->data.fittings.empty()) return std::optional<ScrewForecast>();
  const SiteReport report(*own, one, {}, 0);
  return std::optional(report.row(0));
}

LimitForecast limit_row(const ScrewForecast& fitting) {
  LimitForecast row;
  row.part = fitting.part;
  row.limit = Limit::torque_minimum;
  row.answered = fitting.answered;
  row.has_years = false;
  row.p_by = fitting.as_found;
  row.p_on = fitting.on_date;
  if (fitting.median_years) row.later.push_back({0.5, *fitting.median_years});
  if (fitting.owners) row.later.push_back(*fitting.owners);
  std::ranges::sort(row.later, {}, &ChanceAt::chance);
  row.readings_used = fitting.readings_used;
  row.own_share = fitting.own_share;
  row.words = fitting.words;
  row.sentence = fitting.sentence;
  row.flags = fitting.flags;
  return row;
}

}  // namespace kneerail::forecast
