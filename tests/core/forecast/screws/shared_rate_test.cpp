// The engine where its answer is known: readings of ln rate that are normal, so that the whole is a
// linear mixed model and can be solved in one dense piece.

#include "core/forecast/shared_rate.h"

#include <Eigen/Dense>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/base/world.h"
#include "core/statistics/normal.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using Catch::Matchers::WithinAbs;

namespace {

struct NormalReading {
  double value = 0;
  double sd = 0;  ///< 0: no reading
};

/// Own parameter 0 shifts every reading; it is there to be found as nothing.
class NormalLikelihood final : public RateLikelihood {
 public:
  std::vector<NormalReading> readings;
  double shift = 0;

  void begin_pass(std::span<const double> own) override { shift = own.empty() ? 0 : own[0]; }
  [[nodiscard]] bool tells(int part) const override {
    return readings[static_cast<std::size_t>(part)].sd > 0;
  }
  [[nodiscard]] bool depends(int part, int) const override { return part % 2 == 1; }
  void ln_likelihood(int part, int shifted, std::span<const double> x,
                     std::span<double> out) const override {
    const NormalReading& own = readings[static_cast<std::size_t>(part)];
    const double by = part % 2 == 1 ? shift + (shifted == 0 ? 0.001 : 0) : 0;
    for (std::size_t k = 0; k < x.size(); ++k) {
      const double z = (own.value - by - x[k]) / own.sd;
      out[k] = -z * z / 2;
    }
  }
};

struct Truth {
  double mu = 1;
  double site_sd = 0.2;
  double zone_sd = 0.3;
  double run_sd = 0.15;
  double tau = 0.5;
  double shift = 0;
};

struct World {
  RateLayout layout;
  NormalLikelihood likelihood;
  std::vector<int> site_of;
};

double normal(SplitMix64& random, double sd) {
  return sd * statistics::normal_quantile((random.uniform() + 1e-12) / (1 + 2e-12));
}

World made(const Truth& truth, int sites, int parts_per_run, std::uint64_t seed) {
  SplitMix64 random(seed);
  World world;
  world.layout.globals = {{.mean = 1.1, .sd = 0.5, .start = 1.1}};
  constexpr int zones = 3;
  constexpr int runs = 4;
  for (int s = 0; s < sites; ++s) {
    world.layout.sites.push_back({static_cast<std::int32_t>(world.layout.parts.size()),
                                  zones * runs * parts_per_run, zones, zones * runs});
    const double site = normal(random, truth.site_sd);
    for (int z = 0; z < zones; ++z) {
      const double zone = normal(random, truth.zone_sd);
      for (int r = 0; r < runs; ++r) {
        const double run = normal(random, truth.run_sd);
        for (int i = 0; i < parts_per_run; ++i) {
          RatePart part;
          part.zone = z;
          part.run = z * runs + r;
          part.add_global(0);
          const int place = static_cast<int>(world.layout.parts.size());
          const double x = truth.mu + site + zone + run + normal(random, truth.tau);
          NormalReading reading;
          if (random.uniform() < 0.9) {
            reading.sd = 0.25 + 0.3 * random.uniform();
            reading.value = x + normal(random, reading.sd) + (place % 2 == 1 ? truth.shift : 0);
          }
          world.layout.parts.push_back(part);
          world.likelihood.readings.push_back(reading);
          world.site_of.push_back(s);
        }
      }
    }
  }
  return world;
}

RateSettings settings_with(int passes) {
  RateSettings settings;
  settings.passes = passes;
  settings.ln_tau = {.mean = std::log(0.5), .sd = 0.4, .start = std::log(0.5)};
  settings.workers.threads = 2;
  return settings;
}

/// The whole model in one: mu, sites, zones, runs.
struct Dense {
  Eigen::VectorXd estimate;
  Eigen::MatrixXd covariance;
};

/// Row of one part: 1 at mu, its site, its zone and its run.
Eigen::VectorXd row_of(const World& world, std::size_t part) {
  const auto sites = static_cast<Eigen::Index>(world.layout.sites.size());
  const auto& site = world.layout.sites.front();
  Eigen::VectorXd row = Eigen::VectorXd::Zero(1 + sites * (1 + site.zones + site.runs));
  const int s = world.site_of[part];
  row(0) = 1;
  row(1 + s) = 1;
  row(1 + sites + s * site.zones + world.layout.parts[part].zone) = 1;
  row(1 + sites * (1 + site.zones) + s * site.runs + world.layout.parts[part].run) = 1;
  return row;
}

Dense dense_solution(const World& world, const Truth& sds) {
  const auto sites = static_cast<Eigen::Index>(world.layout.sites.size());
  const auto& site = world.layout.sites.front();
  const Eigen::Index n = 1 + sites * (1 + site.zones + site.runs);
  Eigen::VectorXd prior(n);
  prior(0) = 1 / (0.5 * 0.5);
  prior.segment(1, sites).setConstant(1 / (sds.site_sd * sds.site_sd));
  prior.segment(1 + sites, sites * site.zones).setConstant(1 / (sds.zone_sd * sds.zone_sd));
  prior.tail(sites * site.runs).setConstant(1 / (sds.run_sd * sds.run_sd));
  Eigen::MatrixXd equations = prior.asDiagonal();
  Eigen::VectorXd right = Eigen::VectorXd::Zero(n);
  right(0) = prior(0) * 1.1;
  for (std::size_t i = 0; i < world.layout.parts.size(); ++i) {
    const NormalReading& reading = world.likelihood.readings[i];
    if (reading.sd == 0) continue;
    const Eigen::VectorXd row = row_of(world, i);
    const double weight = 1 / (sds.tau * sds.tau + reading.sd * reading.sd);
    equations += weight * row * row.transpose();
    right += weight * reading.value * row;
  }
  const Eigen::MatrixXd covariance = equations.inverse();
  return {covariance * right, covariance};
}

}  // namespace

TEST_CASE("one pass over normal readings is the dense mixed model's solution",
          "[core][shared_rate]") {
  const auto seed = kneerail::test::seed_or(5);
  INFO(kneerail::test::reproduce(seed));
  World world = made({}, 3, 6, seed);
  const RateSettings settings = settings_with(1);
  const RateFit fit = fit_shared_rate(world.layout, world.likelihood, settings);
  REQUIRE(fit.computed);
  const Dense dense = dense_solution(world, {});
  for (std::size_t i = 0; i < world.layout.parts.size(); ++i) {
    const RatePrior prior = rate_prior(world.layout, fit, world.site_of[i], static_cast<int>(i));
    const Eigen::VectorXd row = row_of(world, i);
    // Readings far from the first guess lie in the nodes' cut-off tails.
    REQUIRE_THAT(prior.mean, WithinAbs(row.dot(dense.estimate), 0.02));
    REQUIRE_THAT(prior.shared_variance, WithinAbs(row.dot(dense.covariance * row), 0.002));
  }
}

TEST_CASE("many passes find spreads, tau and the likelihood's own parameter again",
          "[core][shared_rate]") {
  const auto seed = kneerail::test::seed_or(6);
  INFO(kneerail::test::reproduce(seed));
  const Truth truth{
      .mu = 0.8, .site_sd = 0.3, .zone_sd = 0.4, .run_sd = 0.2, .tau = 0.35, .shift = 0.15};
  World world = made(truth, 25, 10, seed);
  RateSettings settings = settings_with(40);
  settings.own = {{.mean = 0, .sd = 1, .start = 0, .step = 0.001}};
  const RateFit fit = fit_shared_rate(world.layout, world.likelihood, settings);
  REQUIRE(fit.computed);
  INFO("tau " << fit.tau << ", shift " << fit.own[0] << ", zone " << fit.zone_sd);
  CHECK(fit.largest_move_ln < 1e-4);
  CHECK_THAT(fit.tau, WithinAbs(truth.tau, 0.04));
  CHECK_THAT(fit.own[0], WithinAbs(truth.shift, 0.08));
  CHECK(fit.own_sd[0] < 0.05);
  CHECK_THAT(fit.zone_sd, WithinAbs(truth.zone_sd, 0.15));
  CHECK_THAT(fit.run_sd, WithinAbs(truth.run_sd, 0.05));
  CHECK_THAT(fit.globals[0], WithinAbs(truth.mu, 0.3));
}

TEST_CASE("what is said of a part is its exact posterior", "[core][shared_rate]") {
  World world = made({}, 2, 5, 9);
  RateSettings settings = settings_with(5);
  settings.nodes = 61;
  const RateFit fit = fit_shared_rate(world.layout, world.likelihood, settings);
  for (std::size_t i = 0; i < world.layout.parts.size(); ++i) {
    const int part = static_cast<int>(i);
    const RatePrior prior = rate_prior(world.layout, fit, world.site_of[i], part);
    const RateNodes nodes =
        rate_nodes(world.layout, fit, world.likelihood, settings, world.site_of[i], part);
    const double before = fit.tau * fit.tau + prior.shared_variance;
    const NormalReading& reading = world.likelihood.readings[i];
    const double data = reading.sd > 0 ? 1 / (reading.sd * reading.sd) : 0;
    const double variance = 1 / (1 / before + data);
    const double mean = variance * (prior.mean / before + data * reading.value);
    REQUIRE_THAT(nodes.mean, WithinAbs(mean, 0.01));
    REQUIRE_THAT(nodes.variance, WithinAbs(variance, 0.01));
    REQUIRE_THAT(quantile(nodes, 0.5), WithinAbs(mean, 0.03));
    REQUIRE_THAT(quantile(nodes, 0.9), WithinAbs(mean + 1.2816 * std::sqrt(variance), 0.03));
    REQUIRE(nodes.own_share >= 0);
    REQUIRE(nodes.own_share <= 1);
    if (reading.sd == 0) REQUIRE(nodes.own_share == 0);
  }
}

TEST_CASE("threads change no digit of the shared rates", "[core][shared_rate]") {
  const auto fitted = [](int threads) {
    World world = made({}, 6, 5, 12);
    RateSettings settings = settings_with(6);
    settings.workers.threads = threads;
    return fit_shared_rate(world.layout, world.likelihood, settings);
  };
  const RateFit one = fitted(1);
  for (const int threads : {2, 4}) {
    const RateFit other = fitted(threads);
    CHECK(other.tau == one.tau);
    CHECK(other.globals == one.globals);
    for (std::size_t s = 0; s < one.sites.size(); ++s) {
      CHECK(other.sites[s].core == one.sites[s].core);
      CHECK(other.sites[s].covariance == one.sites[s].covariance);
    }
  }
}
