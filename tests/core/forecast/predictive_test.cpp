// Stage 2 against slow judges: quantiles against bisection on the closed form, and the whole
// posterior against integration over a fine grid of the rate with plainly inverted matrices.

#include "core/forecast/predictive.h"

#include <Eigen/Dense>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/coating_model.h"
#include "core/forecast/shared_covariance.h"
#include "core/statistics/normal.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

CoatingModel fitted(const Portfolio& portfolio) {
  auto model = fit_coating_model(portfolio, {.track_record = false});
  if (!model) FAIL(model.error().message);
  return std::move(*model);
}

/// P(limit reached) on a grid of 4001 rates, each with start and readings as one joint normal.
class BruteForce {
 public:
  BruteForce(const CoatingModel& model, const Segment& segment)
      : clock_(clock_of(model.data, segment)) {
    const CoatingData& data = model.data;
    const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
    const CoatingSite& site = data.sites[static_cast<std::size_t>(part.site)];
    const CoreLayout layout = core_layout(site);
    const Spreads& spreads = model.effects.spreads;
    const GroupTerms terms = group_terms(layout, part, segment, spreads);
    const SharedCovariance shared(model.effects.sites[static_cast<std::size_t>(part.site)], layout,
                                  part.run);
    const Combination rate = rate_combination(terms);
    const Combination start = start_combination(terms);
    const double spread = std::log1p(spreads.rate * spreads.rate);
    const double centre = part.ln_prior + shared.estimate(rate) - spread / 2;
    const double variance = 1.8 * spread + shared.covariance(rate, rate);
    const int n = segment.count;
    // Joint of (start, start + session of each reading) and its covariance with ln rate.
    Eigen::VectorXd mean(n + 1);
    Eigen::MatrixXd joint(n + 1, n + 1);
    Eigen::VectorXd with_rate(n + 1);
    std::vector<Combination> sums{start};
    for (int j = 0; j < n; ++j) {
      const VisitMean& visit = data.means[static_cast<std::size_t>(segment.first + j)];
      sums.push_back(
          session_combination(layout, visit.session - site.first_session, visit.thickness_um));
    }
    for (int i = 0; i <= n; ++i) {
      const auto& a = sums[static_cast<std::size_t>(i)];
      mean(i) = terms.given_start_um + shared.estimate(start) + (i > 0 ? shared.estimate(a) : 0);
      with_rate(i) = shared.covariance(start, rate) + (i > 0 ? shared.covariance(a, rate) : 0);
      for (int j = 0; j <= n; ++j) {
        const auto& b = sums[static_cast<std::size_t>(j)];
        joint(i, j) = shared.covariance(start, start) + terms.start_sd_um * terms.start_sd_um +
                      (i > 0 ? shared.covariance(a, start) : 0) +
                      (j > 0 ? shared.covariance(b, start) : 0) +
                      (i > 0 && j > 0 ? shared.covariance(a, b) : 0);
      }
    }
    Eigen::VectorXd y(n);
    Eigen::VectorXd h(n);
    for (int j = 0; j < n; ++j) {
      const VisitMean& visit = data.means[static_cast<std::size_t>(segment.first + j)];
      y(j) = visit.thickness_um;
      h(j) = visit.effective_age;
      last_ = std::max(last_, h(j));
      joint(j + 1, j + 1) += 1.2 *
                             (spreads.rest_um * spreads.rest_um + visit.known_variance +
                              std::pow(spreads.spots * std::exp(centre) * visit.effective_age, 2)) /
                             visit.weight;
    }
    // The weather up to each reading, counted back from the last, where the line ahead begins.
    const double weather = std::pow(0.27 * std::exp(centre), 2);
    joint(0, 0) += weather * last_;
    for (int i = 0; i < n; ++i) {
      joint(0, i + 1) += weather * h(i);
      joint(i + 1, 0) += weather * h(i);
      for (int j = 0; j < n; ++j) joint(i + 1, j + 1) += weather * std::min(h(i), h(j));
    }
    const Eigen::MatrixXd given = joint - with_rate * with_rate.transpose() / variance;
    const Eigen::MatrixXd inverse = given.bottomRightCorner(n, n).inverse();
    const Eigen::VectorXd gain = inverse * given.bottomLeftCorner(n, 1);
    left_ = given(0, 0) - given.bottomLeftCorner(n, 1).col(0).dot(gain);
    constexpr int steps = 4001;
    double largest = -1e300;
    for (int k = 0; k < steps; ++k) {
      const double x = std::sqrt(variance) * 8 * (2.0 * k / (steps - 1) - 1);
      const double u = centre + x;
      const Eigen::VectorXd shift = mean + with_rate * (x / variance);
      const Eigen::VectorXd off = y - shift.tail(n) + std::exp(u) * h;
      const double ln = -0.5 * off.dot(inverse * off) - 4.5 * std::log1p(x * x / (6 * variance));
      points_.push_back({ln, std::exp(u), shift(0) + gain.dot(off)});
      largest = std::max(largest, ln);
    }
    double total = 0;
    for (Point& point : points_) total += point.weight = std::exp(point.weight - largest);
    for (Point& point : points_) point.weight /= total;
  }

  [[nodiscard]] double chance(double years, double limit_um) const {
    const double h = clock_.effective(clock_.age_now + years);
    const double ahead = std::max(0.0, h - clock_.effective(clock_.age_now));
    double sum = 0;
    for (const Point& point : points_) {
      const double drift = std::hypot(0.15 * point.rate * ahead,
                                      0.27 * point.rate * std::sqrt(std::max(0.0, h - last_)));
      sum += point.weight * statistics::normal_cdf((point.rate * h - point.start_um + limit_um) /
                                                   std::sqrt(left_ + drift * drift));
    }
    return sum;
  }

 private:
  struct Point {
    double weight;
    double rate;
    double start_um;
  };
  Clock clock_;
  std::vector<Point> points_;
  double left_ = 0;
  double last_ = 0;
};

bool all_numbers(const CoatingModel& model, const Segment& segment) {
  for (int i = segment.first; i < segment.first + segment.count; ++i)
    if (model.data.means[static_cast<std::size_t>(i)].gone) return false;
  return true;
}

}  // namespace

TEST_CASE("quantiles solve the closed form to their tolerance", "[core]") {
  const CoatingModel model = fitted(made_portfolio({.seed = 17}).portfolio);
  for (std::size_t i = 0; i < model.data.segments.size(); i += 7) {
    const Segment& segment = model.data.segments[i];
    if (segment.start_kind == StartKind::unknown) continue;
    const Posterior posterior = segment_posterior({&model.data, &model.effects}, segment);
    const Clock clock = clock_of(model.data, segment);
    const auto years = limit_quantiles(posterior, clock, 0, 1e-10);
    for (std::size_t q = 0; q < years.size(); ++q) {
      if (std::isinf(years[q]) || years[q] <= -clock.age_now) continue;
      double low = -clock.age_now;
      double high = constant::longest_years;
      for (int step = 0; step < 60; ++step) {
        const double middle = (low + high) / 2;
        (chance_by(posterior, clock, 0, middle) < quantile_levels[q] ? low : high) = middle;
      }
      CHECK(years[q] == Approx(low).margin(1e-7).epsilon(1e-8));
    }
  }
}

TEST_CASE("chances agree with integration over a fine grid of rates", "[core][reference]") {
  const CoatingModel model = fitted(made_portfolio({.seed = 18, .parts = 8}).portfolio);
  int compared = 0;
  for (std::size_t i = 0; i < model.data.segments.size(); i += 3) {
    const Segment& segment = model.data.segments[i];
    if (segment.count == 0 || !all_numbers(model, segment)) continue;
    const BruteForce slow(model, segment);
    const Posterior posterior = segment_posterior({&model.data, &model.effects}, segment);
    const Clock clock = clock_of(model.data, segment);
    const auto years = limit_quantiles(posterior, clock, 20, 1e-10);
    for (std::size_t q = 0; q < years.size(); ++q) {
      if (std::isinf(years[q])) continue;
      INFO("segment " << i << ", readings " << segment.count << ", quantile " << q);
      // 21 nodes reach 5.4 sds either side of the mode; the prior's tails reach further.
      CHECK(slow.chance(years[q], 20) == Approx(quantile_levels[q]).margin(1e-3));
      ++compared;
    }
  }
  CHECK(compared > 100);
}

TEST_CASE("a chance that stays below the level within 300 years has no upper bound", "[core]") {
  Posterior posterior;
  posterior.count = 1;
  posterior.nodes[0] = {1, std::log(0.05), 70, 9};
  const corrosion::AttackPath path(0.9);
  const Clock clock{&path, 10, true};
  const auto years = limit_quantiles(posterior, clock, 0);
  CHECK(std::isinf(years[3]));
  CHECK(std::is_sorted(years.begin(), years.end()));
}

TEST_CASE("paint that gives way shortens a touched-up life, never its past", "[core]") {
  Made made = made_portfolio({.seed = 21});
  Work work;
  work.part = 2;
  work.day = date_from_civil(2024, 3, 1);
  work.action = Action::touch_up;
  made.portfolio.works.push_back(work);
  const CoatingModel model = fitted(made.portfolio);
  const Segment* touched = nullptr;
  for (const Segment& segment : model.data.segments)
    if (segment.start_kind == StartKind::touched_up) touched = &segment;
  REQUIRE(touched != nullptr);
  const PosteriorInput input{&model.data, &model.effects};
  const Posterior plain = segment_posterior(input, *touched);
  Posterior life = life_posterior(input, *touched);
  CHECK(life.count == 2 * plain.count);
  life.spots_excess_um2 = 0;
  const Clock clock = clock_of(model.data, *touched);
  CHECK(chance_by(life, clock, 0, 0) == Approx(chance_by(plain, clock, 0, 0)));
  // 60 % hold, 40 % lose three times as fast from now on: checked node by node.
  const double years = 9;
  const double now = clock.effective(clock.age_now);
  const double then = clock.effective(clock.age_now + years);
  double slow = 0;
  for (int k = 0; k < plain.count; ++k)
    for (const double factor : {1.0, 3.0}) {
      const RateNode& node = plain.nodes[static_cast<std::size_t>(k)];
      const double rate = std::exp(node.ln_rate);
      const double drift = std::hypot(0.15 * factor * rate * (then - now),
                                      0.27 * rate * std::sqrt(now - plain.last_read),
                                      0.27 * factor * rate * std::sqrt(then - now));
      const double left = node.start_um - rate * now - factor * rate * (then - now);
      slow += node.weight * (factor > 1 ? 0.4 : 0.6) *
              statistics::normal_cdf(-left / std::sqrt(node.start_variance + drift * drift));
    }
  CHECK(chance_by(life, clock, 0, years) == Approx(slow));
  const auto short_life = limit_quantiles(life, clock, 0, 1e-10);
  const auto long_life = limit_quantiles(plain, clock, 0, 1e-10);
  for (std::size_t q = 0; q < short_life.size(); ++q) {
    CHECK(short_life[q] <= long_life[q] + 1e-9);
    if (std::isfinite(short_life[q]))
      CHECK(chance_by(life, clock, 0, short_life[q]) == Approx(quantile_levels[q]).margin(1e-8));
  }
}

TEST_CASE("spots that do not stand for their part widen its band, both ways", "[core]") {
  Posterior posterior;
  posterior.count = 1;
  posterior.nodes[0] = {1, std::log(2.0), 70, 9, 1};
  const corrosion::AttackPath path(0.9);
  const Clock clock{&path, 10, true};
  const auto narrow = limit_quantiles(posterior, clock, 0, 1e-10);
  posterior.spots_excess_um2 = 12;
  const auto wide = limit_quantiles(posterior, clock, 0, 1e-10);
  CHECK(wide[1] < narrow[1]);
  CHECK(wide[3] == Approx(narrow[3]).margin(1e-6));
  CHECK(wide[5] > narrow[5]);
  const double h = path.effective_age(10 + 25);
  const double now = path.effective_age(10);
  const double sd = std::sqrt(9 + std::pow(0.15 * 2 * (h - now), 2) + 0.27 * 0.27 * 4 * h +
                              0.49 * 12 + 4 * 12 / 2500.0 * std::pow(2 * h, 2));
  CHECK(chance_by(posterior, clock, 0, 25) == Approx(statistics::normal_cdf((2 * h - 70) / sd)));
}
