#include "core/forecast/predictive.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

namespace {

struct Chance {
  double value = 0;
  double slope = 0;  ///< per effective year
};

/// The mixture with what does not change along it worked out once.
class Mixture {
 public:
  Mixture(const Posterior& posterior, const Clock& clock, double limit_um)
      : now_(clock.effective(clock.age_now)),
        last_read_(posterior.last_read),
        fixed_um2_(constant::spots_fixed * posterior.spots_excess_um2),
        of_loss_(constant::spots_of_loss * posterior.spots_excess_um2) {
    for (int k = 0; k < posterior.count; ++k) {
      const RateNode& node = posterior.nodes[static_cast<std::size_t>(k)];
      parts_[static_cast<std::size_t>(count_++)] = {node.weight, std::exp(node.ln_rate),
                                                    node.start_um - limit_um,
                                                    node.start_variance + fixed_um2_, node.ahead};
    }
  }

  [[nodiscard]] Chance at(double h) const {
    Chance chance;
    const double ahead = std::max(0.0, h - now_);
    for (int k = 0; k < count_; ++k) {
      const Component& part = parts_[static_cast<std::size_t>(k)];
      const double rate = ahead > 0 ? part.ahead * part.rate : part.rate;
      const double drift = constant::future_sd * rate;
      const double loss = part.rate * h + (rate - part.rate) * ahead;
      const double unread = std::min(h, now_) - last_read_;
      const double variance = part.variance + drift * drift * ahead * ahead +
                              weather_um2(part.rate, unread) + weather_um2(rate, ahead) +
                              of_loss_ * loss * loss;
      const double weather = h > last_read_ ? weather_um2(rate, 1) : 0;
      const double sd = std::sqrt(variance);
      const double z = (loss - part.reserve_um) / sd;
      const auto normal = table_.with_density(z);
      chance.value += part.weight * normal.cdf;
      chance.slope +=
          part.weight * normal.density *
          (rate / sd -
           z * (drift * drift * ahead + weather / 2 + of_loss_ * loss * rate) / variance);
    }
    return chance;
  }

  /// Where the components' own crossings add up to `level`: a first guess of the quantile.
  [[nodiscard]] double crossing(double level) const {
    std::array<std::pair<double, double>, node_count_most> crossings;
    for (int k = 0; k < count_; ++k) {
      const Component& part = parts_[static_cast<std::size_t>(k)];
      const double h = part.reserve_um / part.rate;
      crossings[static_cast<std::size_t>(k)] = {h > now_ ? now_ + (h - now_) / part.ahead : h,
                                                part.weight};
    }
    std::sort(crossings.begin(), crossings.begin() + count_);
    double sum = 0;
    for (int k = 0; k < count_; ++k) {
      sum += crossings[static_cast<std::size_t>(k)].second;
      if (sum >= level) return crossings[static_cast<std::size_t>(k)].first;
    }
    return crossings[static_cast<std::size_t>(count_ - 1)].first;
  }

 private:
  struct Component {
    double weight;
    double rate;
    double reserve_um;
    double variance;
    double ahead;
  };
  std::array<Component, node_count_most> parts_;
  int count_ = 0;
  double now_;
  double last_read_;
  double fixed_um2_;
  double of_loss_;
  const statistics::NormalTable& table_ = statistics::normal_table();
};

struct Bracket {
  double low;
  double high;
};

double solve(const Mixture& mixture, double level, Bracket bracket, double tolerance) {
  double h = std::clamp(mixture.crossing(level), bracket.low, bracket.high);
  for (int i = 0; i < 200; ++i) {
    const Chance chance = mixture.at(h);
    (chance.value < level ? bracket.low : bracket.high) = h;
    double next = chance.slope > 0 ? h + (level - chance.value) / chance.slope : bracket.low - 1;
    if (!(next > bracket.low && next < bracket.high)) next = (bracket.low + bracket.high) / 2;
    const double moved = std::abs(next - h);
    h = next;
    if (moved <= tolerance * std::max(std::abs(h), 1e-3)) break;
  }
  return h;
}

}  // namespace

Clock clock_of(const CoatingData& data, const Segment& segment) {
  return {&data.path, years_between(segment.start, data.as_of),
          segment.start_kind != StartKind::unknown};
}

double chance_at(const Posterior& posterior, const Clock& clock, double limit_um,
                 double effective_age) {
  return Mixture(posterior, clock, limit_um).at(effective_age).value;
}

double chance_by(const Posterior& posterior, const Clock& clock, double limit_um, double years) {
  return chance_at(posterior, clock, limit_um, clock.effective(clock.age_now + years));
}

std::array<double, 7> limit_quantiles(const Posterior& posterior, const Clock& clock,
                                      double limit_um, double tolerance) {
  const Mixture mixture(posterior, clock, limit_um);
  const double longest = clock.effective(clock.age_now + constant::longest_years);
  const double earliest = clock.start_known ? 0 : -constant::earliest_years;
  const double chance_early = mixture.at(earliest).value;
  const double chance_late = mixture.at(longest).value;
  std::array<double, 7> years{};
  for (std::size_t i = 0; i < years.size(); ++i) {
    const double level = quantile_levels[i];
    if (chance_late < level)
      years[i] = std::numeric_limits<double>::infinity();
    else if (chance_early >= level)
      years[i] = clock.age(earliest) - clock.age_now;
    else
      years[i] = clock.age(solve(mixture, level, {earliest, longest}, tolerance)) - clock.age_now;
    if (i > 0) years[i] = std::max(years[i], years[i - 1]);
  }
  return years;
}

double median_now_um(const Posterior& posterior, const Clock& clock) {
  const double h = clock.effective(clock.age_now);
  const auto count = static_cast<std::size_t>(posterior.count);
  std::array<double, node_count_most> left_um;
  std::array<double, node_count_most> precision_root;
  for (std::size_t k = 0; k < count; ++k) {
    const RateNode& node = posterior.nodes[k];
    left_um[k] = node.start_um - std::exp(node.ln_rate) * h;
    precision_root[k] = 1 / std::sqrt(node.start_variance +
                                      weather_um2(std::exp(node.ln_rate), h - posterior.last_read));
  }
  const statistics::NormalTable& normal = statistics::normal_table();
  const auto chance_under = [&](double thickness_um) {
    double sum = 0;
    for (std::size_t k = 0; k < count; ++k)
      sum += posterior.nodes[k].weight * normal((thickness_um - left_um[k]) * precision_root[k]);
    return sum;
  };
  double low = 0;
  double high = constant::largest_coating_um;
  if (chance_under(low) >= 0.5) return 0;
  constexpr int halvings = 16;  // 300 um to under 0.005 um
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (chance_under(middle) < 0.5 ? low : high) = middle;
  }
  return (low + high) / 2;
}

std::array<double, 3> thickness_quantiles_um(const Posterior& posterior, const Clock& clock,
                                             double years) {
  // The chance that a thickness is under x is the chance that the limit x is reached.
  constexpr std::array<double, 3> levels{0.1, 0.5, 0.9};
  constexpr int halvings = 16;  // 300 um to under 0.005 um
  const double h = clock.effective(clock.age_now + years);
  std::array<double, 3> out{};
  for (std::size_t i = 0; i < levels.size(); ++i) {
    double low = 0;
    double high = constant::largest_coating_um;
    if (chance_at(posterior, clock, low, h) >= levels[i]) continue;
    for (int n = 0; n < halvings; ++n) {
      const double middle = (low + high) / 2;
      (chance_at(posterior, clock, middle, h) < levels[i] ? low : high) = middle;
    }
    out[i] = (low + high) / 2;
  }
  return out;
}

}  // namespace kneerail::forecast
