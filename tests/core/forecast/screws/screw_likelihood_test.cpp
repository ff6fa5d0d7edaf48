// The likelihood of a tightening against slow, obvious versions of it.

#include "core/forecast/screws/screw_likelihood.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "core/base/world.h"
#include "core/statistics/normal.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using Catch::Matchers::WithinAbs;
using statistics::normal_cdf;
using statistics::normal_density;

namespace {

const std::vector<UsualSetting> usual{{27, 0.8}, {33, 0.2}};

double obvious_factor(const FoundTorque& reading, double torque_nm, double as_left_nm) {
  const double scale = std::max(torque_nm, 4.0);
  if (reading.found == TorqueFound::clicked)
    return 0.998 * normal_cdf((torque_nm - reading.torque_nm) / (0.05 * scale)) + 0.002 * 0.5;
  const double e = 0.085 * scale;
  if (reading.found == TorqueFound::free)
    return 0.998 * normal_cdf((reading.torque_nm - torque_nm) / e) + 0.002 * 0.1;
  double no_click = 0;
  if (reading.wrench_set_nm)
    no_click = normal_cdf((*reading.wrench_set_nm - torque_nm) / (0.05 * scale));
  else
    for (const UsualSetting& setting : usual)
      no_click += setting.share * normal_cdf((setting.torque_nm - torque_nm) / (0.05 * scale));
  const double density = normal_density((reading.torque_nm - torque_nm) / e) / e;
  return 0.998 * density * no_click + 0.002 / as_left_nm;
}

/// All readings' factors at one true torque as left.
double obvious_product(const Tightening& tightening, Date start, double left_nm, double loss_nm) {
  double product = 1;
  for (const FoundTorque& reading : tightening.readings) {
    const double days = reading.day.days - start.days;
    const double torque_nm = std::max(0.0, left_nm - loss_nm * std::log10(1 + days));
    product *= obvious_factor(reading, torque_nm, tightening.as_left_nm);
  }
  return product;
}

/// The five nodes of z, one after the other.
double obvious_ln_likelihood(const Tightening& tightening, double loss_nm) {
  double sum = 0;
  double weights = 0;
  for (const Date start : tightening.starts)
    for (const double z : {-2.2, -1.1, 0.0, 1.1, 2.2}) {
      const double weight = std::exp(-z * z / 2);
      weights += weight;
      sum += weight *
             obvious_product(tightening, start, tightening.as_left_nm * (1 + 0.06 * z), loss_nm);
    }
  return std::log(sum / weights);
}

/// z integrated by 4,001 steps over +-6.
double integrated_ln_likelihood(const Tightening& tightening, double loss_nm) {
  double sum = 0;
  double weights = 0;
  for (const Date start : tightening.starts)
    for (int i = -2000; i <= 2000; ++i) {
      const double z = 6.0 * i / 2000;
      const double weight = std::exp(-z * z / 2);
      weights += weight;
      sum += weight *
             obvious_product(tightening, start, tightening.as_left_nm * (1 + 0.06 * z), loss_nm);
    }
  return std::log(sum / weights);
}

Tightening drawn_tightening(SplitMix64& random) {
  Tightening tightening;
  tightening.as_left_nm = 30 + 10 * random.uniform();
  tightening.starts = {Date{10000}};
  if (random.uniform() < 0.3) {
    tightening.started = false;
    tightening.starts = {Date{6000}, Date{7500}, Date{8800}, Date{9400}, Date{9900}};
  }
  std::int32_t day = 10000;
  const auto count = random.between(1, 5);
  for (std::int64_t i = 0; i < count; ++i) {
    day += static_cast<std::int32_t>(random.between(1, 900));
    FoundTorque reading;
    reading.day = {day};
    reading.found = static_cast<TorqueFound>(random.between(0, 2));
    reading.torque_nm = reading.found == TorqueFound::free ? 5 : 15 + 20 * random.uniform();
    if (random.uniform() < 0.5) reading.wrench_set_nm = 27 + 6 * random.uniform();
    tightening.readings.push_back(reading);
  }
  return tightening;
}

}  // namespace

TEST_CASE("a tightening's likelihood is the product of its readings over the nodes",
          "[core][screw]") {
  const auto seed = kneerail::test::seed_or(3);
  INFO(kneerail::test::reproduce(seed));
  SplitMix64 random(seed);
  const statistics::NormalTable normal;
  std::vector<double> scratch;
  for (int round = 0; round < 500; ++round) {
    const Tightening tightening = drawn_tightening(random);
    const double loss_nm = std::exp(-1 + 4 * random.uniform());
    const TighteningLikelihood own(tightening, usual);
    CHECK_THAT(own.ln_likelihood(normal, loss_nm, scratch),
               WithinAbs(obvious_ln_likelihood(tightening, loss_nm), 1e-5));
  }
}

TEST_CASE("five nodes of the torque as left stand in for all of them", "[core][screw]") {
  // One moved reading: normal in z on both sides, so the integral is known to a step of 0.003.
  Tightening tightening;
  tightening.as_left_nm = 39;
  tightening.starts = {Date{10000}};
  tightening.readings = {{Date{10700}, TorqueFound::moved, 26, {}}};
  const statistics::NormalTable normal;
  std::vector<double> scratch;
  const TighteningLikelihood own(tightening, usual);
  for (const double loss_nm : {2.0, 3.0, 4.0, 5.0, 6.0}) {
    INFO(loss_nm);
    CHECK_THAT(own.ln_likelihood(normal, loss_nm, scratch),
               WithinAbs(integrated_ln_likelihood(tightening, loss_nm), 0.1));
  }
}

TEST_CASE("a wrench's recorded setting counts before the usual ones", "[core][screw]") {
  Tightening tightening;
  tightening.as_left_nm = 39;
  tightening.starts = {Date{10000}};
  tightening.readings = {{Date{10700}, TorqueFound::moved, 26, {}}};
  const statistics::NormalTable normal;
  std::vector<double> scratch;
  const double usual_setting =
      TighteningLikelihood(tightening, usual).ln_likelihood(normal, 3, scratch);
  tightening.readings.front().wrench_set_nm = 39;
  const double set_high = TighteningLikelihood(tightening, usual).ln_likelihood(normal, 3, scratch);
  // At a loss of 3 some 30 N m are left: a wrench at 27 would rather have clicked.
  CHECK(set_high > usual_setting + 0.5);
}

TEST_CASE("the table of the normal distribution is exact to 1e-9 and rises", "[core][screw]") {
  const statistics::NormalTable normal;
  double before = 0;
  for (int i = -90000; i <= 90000; ++i) {
    const double x = i * 1e-4 + 0.3e-5;
    const double here = normal(x);
    REQUIRE(std::abs(here - normal_cdf(x)) < 1e-9);
    REQUIRE(here >= before - 1e-12);
    before = here;
  }
  CHECK(normal(-1e300) == 0);
  CHECK(normal(1e300) == 1);
  CHECK(normal(std::nan("")) == 0);
}
