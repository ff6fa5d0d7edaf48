#include "core/forecast/posterior.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/forecast/shared_covariance.h"
#include "core/forecast/small_matrix.h"
#include "core/forecast/thickness_bound.h"
#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

namespace {

/// Everything about a segment's readings that the density of u needs.
class RateDensity {
 public:
  RateDensity(const PosteriorInput& input, const Segment& segment) {
    const CoatingData& data = *input.data;
    const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
    const CoatingSite& site = data.sites[static_cast<std::size_t>(part.site)];
    const CoreLayout layout = core_layout(site);
    const Spreads& spreads = input.effects->spreads;
    const GroupTerms terms = group_terms(layout, part, segment, spreads);
    const SharedCovariance shared(input.effects->sites[static_cast<std::size_t>(part.site)], layout,
                                  part.run);
    const Combination rate = rate_combination(terms);
    const Combination start = start_combination(terms);
    const double spread = std::log1p(spreads.rate * spreads.rate);
    const double rate_variance = shared.covariance(rate, rate);
    centre_ = part.ln_prior + shared.estimate(rate) - spread / 2;
    variance_ = constant::rate_variance_widening * spread + rate_variance;
    if (segment.start_kind == StartKind::touched_up) {
      // Paint rich in zinc is another material: about a fifth faster, and who knows how much.
      centre_ += constant::touched_up_ln_rate;
      variance_ += constant::touched_up_ln_rate_sd * constant::touched_up_ln_rate_sd;
    }
    start_um_ = terms.given_start_um + shared.estimate(start);
    start_slope_ = shared.covariance(start, rate) / variance_;
    start_variance_ = terms.start_sd_um * terms.start_sd_um + shared.covariance(start, start) -
                      start_slope_ * start_slope_ * variance_;
    if (segment.visible > 0)
      last_read_ =
          data.means[static_cast<std::size_t>(segment.first + segment.visible - 1)].effective_age;
    gather(input, segment, layout, site.first_session);
    whiten(shared, rate, start);
  }

  /// ln of prior times likelihood at u.
  [[nodiscard]] double operator()(double u) const {
    const double x = u - centre_;
    const double e = std::exp(u);
    const double square = aa_ + e * e * bb_ + x * x * dd_ + 2 * (e * ab_ - x * ad_ - e * x * bd_);
    double ln =
        ln_constant_ - 0.5 * square -
        (constant::rate_tail + 1) / 2 * std::log1p(x * x / ((constant::rate_tail - 2) * variance_));
    if (bounds_.empty()) return ln;
    const double start = start_at(u);
    double product = 1;
    for (const Bound& bound : bounds_) {
      product *= constant::gone_floor +
                 normal_((bound.limit_um - start + e * bound.age) * bound.precision_root);
      if (product > 1e-200) continue;
      ln += std::log(product);
      product = 1;
    }
    return ln + std::log(product);
  }

  /// Mean of the start given u and the readings.
  [[nodiscard]] double start_at(double u) const {
    const double x = u - centre_;
    return start_um_ + start_slope_ * x + ka_ + std::exp(u) * kb_ - x * kd_;
  }

  [[nodiscard]] double centre() const { return centre_; }
  [[nodiscard]] double variance() const { return variance_; }
  [[nodiscard]] double left_variance() const { return left_variance_; }
  [[nodiscard]] double last_read() const { return last_read_; }
  [[nodiscard]] int numbers() const { return static_cast<int>(residual_.size()); }
  [[nodiscard]] int gone() const { return static_cast<int>(bounds_.size()); }

 private:
  void gather(const PosteriorInput& input, const Segment& segment, const CoreLayout& layout,
              std::int32_t first_session) {
    const Spreads& spreads = input.effects->spreads;
    const double rate = std::exp(centre_);
    for (int i = segment.first; i < segment.first + segment.visible; ++i) {
      const VisitMean& mean = input.data->means[static_cast<std::size_t>(i)];
      if (const auto bound = bound_of(*input.data, spreads, segment, i)) {
        bounds_.push_back({bound->limit_um, bound->variance, mean.effective_age, 0});
        continue;
      }
      const double weight = input.weights == MeanWeights::all_one ? 1 : mean.weight;
      sessions_.push_back(
          session_combination(layout, mean.session - first_session, mean.thickness_um));
      residual_.push_back(mean.thickness_um - start_um_);
      age_.push_back(mean.effective_age);
      error_.push_back(constant::error_variance_widening *
                       mean_variance(mean, spreads, rate * mean.effective_age) / weight);
    }
  }

  /// Covariance of the readings given u, factored, and the six dot products.
  void whiten(const SharedCovariance& shared, const Combination& rate, const Combination& start) {
    const std::size_t n = residual_.size();
    std::vector<double> with_start(n);
    std::vector<double> slope(n);
    std::vector<double> cross(n);
    std::vector<double> walked(n);  // variance of the weather up to each reading
    for (std::size_t j = 0; j < n; ++j) {
      residual_[j] -= shared.estimate(sessions_[j]);
      with_start[j] = shared.covariance(sessions_[j], start);
      walked[j] = weather_um2(std::exp(centre_), age_[j]);
      slope[j] = shared.covariance(sessions_[j], rate) / variance_ + start_slope_;
      cross[j] = start_variance_ + start_slope_ * start_slope_ * variance_ + with_start[j] -
                 start_slope_ * slope[j] * variance_ + walked[j];
    }
    const double start_all = start_variance_ + start_slope_ * start_slope_ * variance_;
    SmallCholesky factor;
    factor.resize(n);
    for (std::size_t j = 0; j < n; ++j) {
      for (std::size_t k = 0; k <= j; ++k)
        factor.at(j, k) = start_all + with_start[j] + with_start[k] +
                          shared.covariance(sessions_[j], sessions_[k]) -
                          slope[j] * slope[k] * variance_ + std::min(walked[j], walked[k]);
      factor.at(j, j) += error_[j];
    }
    factor.factor();
    factor.whiten(residual_);
    factor.whiten(age_);
    factor.whiten(slope);
    factor.whiten(cross);
    aa_ = dot(residual_, residual_);
    bb_ = dot(age_, age_);
    dd_ = dot(slope, slope);
    ab_ = dot(residual_, age_);
    ad_ = dot(residual_, slope);
    bd_ = dot(age_, slope);
    ka_ = dot(cross, residual_);
    kb_ = dot(cross, age_);
    kd_ = dot(cross, slope);
    const double rate_then = std::exp(centre_);
    left_variance_ =
        std::max(start_variance_ + weather_um2(rate_then, last_read_) - dot(cross, cross), 1e-9);
    for (Bound& bound : bounds_)
      bound.precision_root = 1 / std::sqrt(left_variance_ + bound.variance +
                                           weather_um2(rate_then, last_read_ - bound.age));
    ln_constant_ =
        -0.5 * (factor.ln_determinant() + static_cast<double>(n) * std::log(2 * std::numbers::pi)) +
        ln_prior_constant();
  }

  /// Of Student's t with 8 degrees of freedom and variance_: ln of gamma(9/2) / gamma(4), which is
  /// 105 sqrt(pi) / 96, over sqrt(6 pi variance). Not by lgamma, which writes a variable that all
  /// threads share.
  [[nodiscard]] double ln_prior_constant() const {
    static_assert(constant::rate_tail == 8);
    return std::log(105.0 / 96) - 0.5 * std::log(6 * variance_);
  }

  const statistics::NormalTable& normal_ = statistics::normal_table();
  double centre_ = 0, variance_ = 0, last_read_ = 0;
  double start_um_ = 0, start_slope_ = 0, start_variance_ = 0, left_variance_ = 0;
  std::vector<Combination> sessions_;
  std::vector<double> residual_, age_, error_;
  struct Bound {
    double limit_um;
    double variance;
    double age;
    double precision_root;  ///< with the variance of the start
  };
  std::vector<Bound> bounds_;
  double aa_ = 0, bb_ = 0, dd_ = 0, ab_ = 0, ad_ = 0, bd_ = 0, ka_ = 0, kb_ = 0, kd_ = 0;
  double ln_constant_ = 0;
};

struct Peak {
  double at;
  double sd;
};

/// Best of a grid, then Newton with central differences, kept within one grid step.
Peak peak_of(const RateDensity& density) {
  const double sd = std::sqrt(density.variance());
  const double step = 2 * constant::mode_grid_reach * sd / (constant::mode_grid - 1);
  double best = density.centre();
  double best_value = -1e300;
  for (int i = 0; i < constant::mode_grid; ++i) {
    const double u = density.centre() - constant::mode_grid_reach * sd + i * step;
    const double value = density(u);
    if (value > best_value) {
      best_value = value;
      best = u;
    }
  }
  const double small = 0.01 * sd;
  double at = best;
  double curvature = 0;
  for (int i = 0; i < constant::mode_steps; ++i) {
    const double low = density(at - small);
    const double mid = density(at);
    const double high = density(at + small);
    curvature = (high - 2 * mid + low) / (small * small);
    const double slope = (high - low) / (2 * small);
    const double move = curvature < 0 ? -slope / curvature : (slope > 0 ? step : -step) / 4;
    at = std::clamp(at + move, best - step, best + step);
  }
  return {at, curvature < 0 ? 1 / std::sqrt(-curvature) : sd};
}

void fill_nodes(const RateDensity& density, Posterior& posterior) {
  const Peak peak = peak_of(density);
  const double step = 2 * constant::node_reach / (constant::node_count - 1);
  std::array<double, constant::node_count> ln_weight{};
  std::array<double, constant::node_count> at{};
  double largest = -1e300;
  for (int k = 0; k < constant::node_count; ++k) {
    const auto i = static_cast<std::size_t>(k);
    const double x = -constant::node_reach + k * step;
    at[i] = peak.at + constant::node_scale * peak.sd * std::sinh(x);
    ln_weight[i] = density(at[i]) + std::log(constant::node_scale * peak.sd * std::cosh(x) * step);
    largest = std::max(largest, ln_weight[i]);
  }
  double total = 0;
  for (std::size_t i = 0; i < at.size(); ++i) {
    const double weight = std::exp(ln_weight[i] - largest);
    if (weight < constant::node_weight_least) continue;
    total += weight;
    posterior.nodes[static_cast<std::size_t>(posterior.count++)] = {
        weight, at[i], density.start_at(at[i]), density.left_variance(), 1};
  }
  for (int k = 0; k < posterior.count; ++k)
    posterior.nodes[static_cast<std::size_t>(k)].weight /= total;
  posterior.ln_evidence = largest + std::log(total);
}

/// Adds another posterior of the same part with its share of the weight.
void mix_in(const Posterior& other, double share, Posterior& posterior) {
  for (int k = 0; k < posterior.count; ++k)
    posterior.nodes[static_cast<std::size_t>(k)].weight *= 1 - share;
  for (int k = 0; k < other.count; ++k) {
    RateNode node = other.nodes[static_cast<std::size_t>(k)];
    node.weight *= share;
    posterior.nodes[static_cast<std::size_t>(posterior.count++)] = node;
  }
  posterior.own_share = (1 - share) * posterior.own_share + share * other.own_share;
}

void let_paint_give_way(Posterior& posterior) {
  const int count = posterior.count;
  for (int k = 0; k < count; ++k) {
    RateNode& holds = posterior.nodes[static_cast<std::size_t>(k)];
    RateNode gives_way = holds;
    gives_way.weight *= constant::paint_gives_way_chance;
    gives_way.ahead = constant::paint_gives_way_factor;
    holds.weight *= 1 - constant::paint_gives_way_chance;
    posterior.nodes[static_cast<std::size_t>(posterior.count++)] = gives_way;
  }
}

}  // namespace

Centre centre_of(const Posterior& posterior) {
  Centre centre;
  for (int k = 0; k < posterior.count; ++k) {
    const RateNode& node = posterior.nodes[static_cast<std::size_t>(k)];
    centre.ln_rate += node.weight * node.ln_rate;
    centre.start_um += node.weight * node.start_um;
  }
  for (int k = 0; k < posterior.count; ++k) {
    const RateNode& node = posterior.nodes[static_cast<std::size_t>(k)];
    centre.variance +=
        node.weight * (node.ln_rate - centre.ln_rate) * (node.ln_rate - centre.ln_rate);
  }
  return centre;
}

Posterior segment_posterior(const PosteriorInput& input, const Segment& segment) {
  const RateDensity density(input, segment);
  Posterior posterior;
  posterior.prior_centre = density.centre();
  posterior.prior_variance = density.variance();
  posterior.last_read = density.last_read();
  posterior.numbers = density.numbers();
  posterior.gone = density.gone();
  fill_nodes(density, posterior);
  if (posterior.numbers + posterior.gone > 0)
    posterior.own_share =
        std::clamp(1 - centre_of(posterior).variance / posterior.prior_variance, 0.0, 1.0);
  return posterior;
}

Posterior life_posterior(const PosteriorInput& input, const Segment& segment) {
  Posterior life = segment_posterior(input, segment);
  if (segment.next_share > 0) {
    Segment next = segment;
    next.over_rust = segment.over_rust_next;
    mix_in(segment_posterior(input, next), static_cast<double>(segment.next_share), life);
  }
  if (segment.start_kind == StartKind::touched_up) let_paint_give_way(life);
  const double rest = input.effects->spreads.rest_um;
  life.spots_excess_um2 = std::max(0.0, rest * rest - constant::spots_stand_um2);
  return life;
}

Correction session_correction(const CoatingData& data, const SharedEffects& effects,
                              std::int32_t session, double thickness_um) {
  const auto site = static_cast<std::size_t>(data.sessions[static_cast<std::size_t>(session)].site);
  const CoreLayout layout = core_layout(data.sites[site]);
  const SharedCovariance shared(effects.sites[site], layout, 0);
  const Combination c =
      session_combination(layout, session - data.sites[site].first_session, thickness_um);
  return {shared.estimate(c), shared.covariance(c, c)};
}

Posterior scaled(Posterior posterior, double scale) {
  const Centre centre = centre_of(posterior);
  for (int k = 0; k < posterior.count; ++k) {
    RateNode& node = posterior.nodes[static_cast<std::size_t>(k)];
    node.ln_rate = centre.ln_rate + scale * (node.ln_rate - centre.ln_rate);
    node.start_um = centre.start_um + scale * (node.start_um - centre.start_um);
    node.start_variance *= scale * scale;
  }
  return posterior;
}

}  // namespace kneerail::forecast
