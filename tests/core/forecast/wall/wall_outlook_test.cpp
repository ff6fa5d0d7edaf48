// The mixture against a slow simulation of the same law, and what holds of any tube.

#include "core/forecast/wall/wall_outlook.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/base/world.h"
#include "core/forecast/wall/constants.h"
#include "core/statistics/normal.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

const Date as_of = date_from_civil(2026, 6, 30);
const corrosion::AttackPath zinc_path(0.9);
const corrosion::AttackPath steel_path(0.75);
const PathTable zinc_table(zinc_path);
const PathTable steel_table(steel_path);

/// A coating whose rate is known to some 15 %.
Posterior coating(double rate_um, double start_um, double start_sd_um) {
  Posterior posterior;
  double sum = 0;
  for (int k = 0; k < 15; ++k) {
    const double z = (k - 7) * 0.45;
    posterior.nodes[static_cast<std::size_t>(k)] = {
        std::exp(-z * z / 2), std::log(rate_um) + 0.15 * z, start_um, start_sd_um * start_sd_um, 1};
    sum += std::exp(-z * z / 2);
  }
  posterior.count = 15;
  for (int k = 0; k < 15; ++k) posterior.nodes[static_cast<std::size_t>(k)].weight /= sum;
  return posterior;
}

WallTube tube(double limit_mm = 2.56) {
  WallTube made;
  made.limit_mm = limit_mm;
  made.start_mm = 0.97 * 3.2;
  made.start_sd_mm = 0.03 * 3.2;
  made.steel_over_zinc = 22;
  made.class_steel_um_per_year = 66;
  made.open_chance = 0.35;
  return made;
}

WallQuestion question(const WallTube& of, const Posterior* posterior, double age) {
  return {&of, posterior, {&zinc_path, age, true}, age, as_of, &zinc_table, &steel_table};
}

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}
  double normal() { return statistics::normal_quantile((random_.uniform() + 1e-12) / (1 + 2e-12)); }
  double uniform() { return random_.uniform(); }

 private:
  SplitMix64 random_;
};

/// One life by the law's own words, nothing on nodes but the coating's rate.
struct Life {
  double zinc_end;  ///< age
  double steel;
  double inside;
  double inside_from;
  double wall_mm;

  double wall_at(double age) const {
    return wall_mm - (steel * steel_path.effective_age(std::max(0.0, age - zinc_end)) +
                      inside * std::max(0.0, age - inside_from)) /
                         1000;
  }
};

Life drawn(const WallTube& of, const Posterior& posterior, double age_now, Draw& draw) {
  double u = draw.uniform();
  int k = 0;
  while (k + 1 < posterior.count && u > posterior.nodes[static_cast<std::size_t>(k)].weight)
    u -= posterior.nodes[static_cast<std::size_t>(k++)].weight;
  const RateNode& node = posterior.nodes[static_cast<std::size_t>(k)];
  const double rate = std::exp(node.ln_rate);
  // The future's own rate, as the coating's law has it: normal about the past one; and the weather,
  // here never read, up to now and from now on.
  const double now = zinc_path.effective_age(age_now);
  const double start =
      node.start_um + std::sqrt(node.start_variance + weather_um2(rate, now)) * draw.normal();
  double h = start / rate;
  if (h > now) {
    // x (1 + future) + weather sqrt(x) = what is left in years, in sqrt(x).
    const double future = std::max(0.05, 1 + constant::future_sd * draw.normal());
    const double weather = constant::weather_sd * draw.normal();
    const double root =
        (std::sqrt(weather * weather + 4 * future * (h - now)) - weather) / (2 * future);
    h = now + root * root;
  }
  Life life{};
  life.zinc_end = zinc_path.age(std::max(0.0, h));
  life.steel = of.steel_over_zinc * rate * std::exp(wall_constant::ratio_ln_sd * draw.normal());
  const bool open = draw.uniform() < of.open_chance;
  double z = draw.normal();
  while (std::abs(z) > 2.25) z = draw.normal();
  life.inside = of.class_steel_um_per_year * (open ? 0.4 * std::exp(0.8 * z) : 0.03);
  life.inside_from = open && draw.uniform() < 0.3 ? age_now / 2 : 0;
  life.wall_mm = of.start_mm + of.start_sd_mm * draw.normal();
  return life;
}

double density(const WallTube& of, const Life& life, double age_now) {
  double ln = 0;
  for (const WallMean& mean : of.readings) {
    const double wall_mm = life.wall_at(age_now + years_between(as_of, mean.day));
    const double variance =
        mean.variance_mm2 + std::pow(wall_constant::law_error * (life.wall_mm - wall_mm), 2);
    ln -= (std::pow(mean.wall_mm - wall_mm, 2) / variance + std::log(variance)) / 2;
  }
  double chance = std::exp(ln);
  for (const WallBound& bound : of.bounds) {
    const double wall_mm = life.wall_at(age_now + years_between(as_of, bound.day));
    const double sd = std::hypot(wall_constant::reading_sd_mm, wall_constant::session_sd_mm,
                                 wall_constant::law_error * (life.wall_mm - wall_mm));
    const double below = statistics::normal_cdf((bound.wall_mm - wall_mm) / sd);
    chance *= bound.at_most ? below : 1 - below;
  }
  return chance;
}

void check_against_simulation(const WallTube& of, const Posterior& posterior, double age_now,
                              double tolerance) {
  const auto seed = test::seed_or(5);
  INFO(test::reproduce(seed));
  Draw draw(seed);
  const std::array<double, 6> at{0, 2, 5, 10, 20, 40};
  std::array<double, 6> reached{};
  double total = 0;
  for (int i = 0; i < 100'000; ++i) {
    const Life life = drawn(of, posterior, age_now, draw);
    const double weight = density(of, life, age_now);
    total += weight;
    for (std::size_t t = 0; t < at.size(); ++t)
      if (life.wall_at(age_now + at[t]) <= of.limit_mm) reached[t] += weight;
  }
  const WallOutlook outlook(question(of, &posterior, age_now));
  for (std::size_t t = 0; t < at.size(); ++t) {
    INFO("by " << at[t] << " years: said " << outlook.chance_by(at[t]) << ", simulated "
               << reached[t] / total);
    CHECK(std::abs(outlook.chance_by(at[t]) - reached[t] / total) < tolerance);
  }
}

}  // namespace

TEST_CASE("the chance is that of a slow simulation of the law", "[core][property]") {
  check_against_simulation(tube(), coating(3, 60, 5), 18, 0.01);
}

TEST_CASE("readings weigh the law as a weighted simulation does", "[core][property]") {
  WallTube read = tube();
  // New as ordered, then less than zinc and rust outside alone would leave.
  read.readings = {{date_from_civil(2012, 6, 1), 3.10, 0.0027},
                   {date_from_civil(2019, 6, 1), 2.97, 0.0027},
                   {date_from_civil(2025, 6, 1), 2.84, 0.0027}};
  check_against_simulation(read, coating(3, 60, 5), 18, 0.025);
  const Posterior zinc = coating(3, 60, 5);
  CHECK(WallOutlook(question(read, &zinc, 18)).open_chance() > 0.6);
}

TEST_CASE("a wall under what the gauge reads weighs the law as a bound", "[core][property]") {
  WallTube read = tube(2.2);
  read.readings = {{date_from_civil(2012, 6, 1), 3.05, 0.0027}};
  read.bounds = {{date_from_civil(2024, 6, 1), 2.8, true}};
  check_against_simulation(read, coating(3, 60, 5), 18, 0.03);
  const Posterior zinc = coating(3, 60, 5);
  const double median = WallOutlook(question(read, &zinc, 18)).quantiles()[3];
  read.bounds.clear();
  CHECK(median < WallOutlook(question(read, &zinc, 18)).quantiles()[3]);
}

TEST_CASE("quantiles are where the chance is their level", "[core][property]") {
  const WallTube of = tube();
  const Posterior posterior = coating(3, 60, 5);
  const WallOutlook outlook(question(of, &posterior, 18));
  const auto years = outlook.quantiles();
  for (std::size_t i = 0; i < years.size(); ++i) {
    CHECK(std::abs(outlook.chance_by(years[i]) - quantile_levels[i]) < 1e-3);
    if (i > 0) CHECK(years[i] > years[i - 1]);
  }
}

TEST_CASE("a thinner wall never lasts longer, and chances rise with time", "[core][property]") {
  const Posterior posterior = coating(3, 60, 5);
  double before_median = -1e9;
  for (double start_mm = 2.5; start_mm < 3.5; start_mm += 0.1) {
    WallTube of = tube();
    of.start_mm = start_mm;
    const WallOutlook outlook(question(of, &posterior, 18));
    const double median = outlook.quantiles()[3];
    CHECK(median >= before_median);
    before_median = median;
    double before = 0;
    for (double years = -18; years < 120; years += 3) {
      const double chance = outlook.chance_by(years);
      CHECK(chance >= before - 1e-9);
      CHECK(chance <= 1);
      before = chance;
    }
  }
}

TEST_CASE("a lower reading never lengthens the median", "[core][property]") {
  const Posterior posterior = coating(3, 60, 5);
  double before = -1e9;
  for (double wall_mm = 2.6; wall_mm < 3.3; wall_mm += 0.1) {
    WallTube of = tube();
    of.readings = {{date_from_civil(2025, 6, 1), wall_mm, 0.0027}};
    const double median = WallOutlook(question(of, &posterior, 18)).quantiles()[3];
    INFO("read " << wall_mm << " mm");
    CHECK(median >= before);
    before = median;
  }
}

TEST_CASE("the path's table says what the path says", "[core]") {
  for (double age = -3; age < 700; age += 0.377) {
    const double margin = age < 1 ? 0.03 : 1e-3;  // steep at first; 0.03 years are a few um
    CHECK(std::abs(steel_table.effective_age(age) - steel_path.effective_age(age)) < margin);
    CHECK(std::abs(steel_table.age(age) - steel_path.age(age)) < margin);
  }
}

TEST_CASE("a tube long under its limit says so", "[core]") {
  WallTube of = tube();
  of.readings = {{date_from_civil(2024, 6, 1), 1.9, 0.0027}};
  const Posterior posterior = coating(6, 40, 3);
  const WallOutlook outlook(question(of, &posterior, 30));
  CHECK(outlook.chance_by(0) > 0.95);
  CHECK(outlook.quantiles()[5] < 0);
  CHECK(outlook.wall_now_mm() < 2.1);
}

TEST_CASE("what the ways of each rate of zinc say makes up the whole", "[core]") {
  WallTube of = tube();
  if (GENERATE(false, true)) of.readings = {{Date{as_of.days - 400}, 2.9, 0.003}};
  const Posterior posterior = coating(3, 60, 5);
  const WallOutlook outlook(question(of, &posterior, 22));
  const std::array<double, 3> years{0, 5, 20};
  const auto rates = outlook.by_rate(years);
  REQUIRE(rates.size() > 5);
  double weight = 0;
  std::array<double, 3> by{};
  for (const WallOfRate& rate : rates) {
    weight += rate.weight;
    for (std::size_t i = 0; i < by.size(); ++i) by[i] += rate.weight * rate.by[i];
  }
  CHECK(weight == Approx(1).epsilon(1e-9));
  for (std::size_t i = 0; i < by.size(); ++i)
    CHECK(by[i] == Approx(outlook.chance_by(years[i])).epsilon(1e-9));
  CHECK(std::is_sorted(rates.begin(), rates.end(), [](const WallOfRate& a, const WallOfRate& b) {
    return a.ln_rate < b.ln_rate;
  }));
  CHECK(rates.front().by[2] < rates.back().by[2]);
}
