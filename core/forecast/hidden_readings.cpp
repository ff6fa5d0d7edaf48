#include "core/forecast/hidden_readings.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/thickness_bound.h"
#include "core/statistics/normal.h"
#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

namespace {

/// The forecast of one reading as a mixture of normals with one variance of its own per node; the
/// spread of the posterior about its centre times a scale, as in scaled().
struct ReadingForecast {
  Posterior posterior;
  double effective_age;
  double ahead;  ///< effective years since the last reading kept
  double error_variance;
  double offset_um;
  std::optional<ThicknessBound> bound;  ///< what was read was a bound

  struct Normal {
    double mean_um;
    double sd_um;
  };
  [[nodiscard]] Normal at(const RateNode& node, const Centre& centre, double scale) const {
    const double rate = std::exp(centre.ln_rate + scale * (node.ln_rate - centre.ln_rate));
    const double start = centre.start_um + scale * (node.start_um - centre.start_um);
    const double drift = constant::future_sd * rate * ahead;
    return {std::max(start - rate * effective_age, 0.0) + offset_um,
            std::sqrt(scale * scale * node.start_variance + error_variance + drift * drift +
                      weather_um2(rate, ahead))};
  }
  [[nodiscard]] double below(double thickness_um, const Centre& centre, double scale) const {
    const statistics::NormalTable& table = statistics::normal_table();
    double sum = 0;
    for (int k = 0; k < posterior.count; ++k) {
      const RateNode& node = posterior.nodes[static_cast<std::size_t>(k)];
      const Normal normal = at(node, centre, scale);
      sum += node.weight * table((thickness_um - normal.mean_um) / normal.sd_um);
    }
    return sum;
  }
  [[nodiscard]] double density(double thickness_um, const Centre& centre, double scale) const {
    double sum = 0;
    for (int k = 0; k < posterior.count; ++k) {
      const RateNode& node = posterior.nodes[static_cast<std::size_t>(k)];
      const Normal normal = at(node, centre, scale);
      sum += node.weight *
             statistics::normal_density((thickness_um - normal.mean_um) / normal.sd_um) /
             normal.sd_um;
    }
    return sum;
  }
};

int stratum_of(int readings) {
  if (readings >= 4) return 3;
  return readings >= 2 ? 2 : readings;
}

/// Bare metal or rust already.
bool over_before_cut(const CoatingData& data, const Segment& segment) {
  for (int i = segment.first; i < segment.first + segment.visible; ++i)
    if (data.means[static_cast<std::size_t>(i)].gone || read_on_rust(segment, i)) return true;
  return false;
}

bool can_be_foretold(const CoatingData& data, const Segment& segment) {
  if (segment.visible == segment.count || over_before_cut(data, segment)) return false;
  const bool start_is_hidden = segment.start_kind == StartKind::unknown || segment.after_swap;
  return segment.visible > 0 || !start_is_hidden;
}

/// The loss of a part of middling rate by then.
double usual_loss_um(const Posterior& posterior, double effective_age) {
  return std::exp(posterior.prior_centre) * effective_age;
}

ReadingForecast forecast_of(const CoatingData& data, const SharedEffects& effects,
                            const Segment& segment, const VisitMean& hidden) {
  const double last_kept =
      segment.visible > 0
          ? data.means[static_cast<std::size_t>(segment.first + segment.visible - 1)].effective_age
          : 0;
  ReadingForecast forecast{
      segment_posterior({&data, &effects}, segment),
      hidden.effective_age,
      std::max(0.0, hidden.effective_age - last_kept),
      0,
      0,
      bound_of(data, effects.spreads, segment, segment.first + segment.count - 1)};
  forecast.error_variance = mean_variance(hidden, effects.spreads,
                                          usual_loss_um(forecast.posterior, hidden.effective_age));
  if (forecast.bound) {
    forecast.error_variance = forecast.bound->variance;
    return forecast;
  }
  const Correction session = session_correction(data, effects, hidden.session, hidden.thickness_um);
  forecast.offset_um = session.mean_um;
  forecast.error_variance += session.variance;
  return forecast;
}

double score(const ReadingForecast& forecast, const VisitMean& hidden, const Centre& centre,
             double scale) {
  constexpr double least = 1e-12;  // a reading that nothing foretold must not outweigh all others
  return std::log(least + (forecast.bound ? forecast.below(forecast.bound->limit_um, centre, scale)
                                          : forecast.density(hidden.thickness_um, centre, scale)));
}

}  // namespace

double ln_scale_at(int step) {
  return constant::scale_reach_ln * (2.0 * step / (constant::scale_steps - 1) - 1);
}

std::optional<Date> cut_day(const CoatingData& data, const CoatingSite& site) {
  std::vector<Date> days;
  for (int s = site.first_session; s < site.first_session + site.sessions; ++s) {
    const Date day = data.sessions[static_cast<std::size_t>(s)].day;
    if (days.empty() || days.back() != day) days.push_back(day);
  }
  if (days.size() < 2) return std::nullopt;
  const auto index =
      static_cast<std::size_t>(constant::cut_share * static_cast<double>(days.size()));
  return days[std::max<std::size_t>(1, index)];
}

void foretell(const CoatingData& data, const SharedEffects& effects, const CoatingSite& site,
              const Workers& workers, HiddenSite& out) {
  for (int i = site.first_segment; i < site.first_segment + site.segments; ++i) {
    if (workers.stopped()) return;
    const Segment& segment = data.segments[static_cast<std::size_t>(i)];
    if (!can_be_foretold(data, segment)) continue;
    const VisitMean& hidden =
        data.means[static_cast<std::size_t>(segment.first + segment.count - 1)];
    const ReadingForecast plain = forecast_of(data, effects, segment, hidden);
    HiddenReading reading;
    reading.years_ahead = years_between(*out.cut, hidden.day);
    reading.session = hidden.session;
    reading.stratum = stratum_of(segment.visible);
    reading.bound = plain.bound.has_value();
    const Centre centre = centre_of(plain.posterior);
    reading.below =
        plain.below(plain.bound ? plain.bound->limit_um : hidden.thickness_um, centre, 1);
    out.readings.push_back(reading);
    for (int step = 0; step < constant::scale_steps; ++step)
      out.ln_score[static_cast<std::size_t>(reading.stratum)][static_cast<std::size_t>(step)] +=
          score(plain, hidden, centre, std::exp(ln_scale_at(step)));
  }
}

}  // namespace kneerail::forecast
