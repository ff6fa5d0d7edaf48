#include "core/statistics/panel_chain.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "core/base/world.h"
#include "core/statistics/progressive_chain.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::statistics;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const std::vector<ChainStep> progressive{{1, 2}, {2, 3}, {3, 4}};
const std::vector<ChainStep> both_ways{{1, 2}, {1, 4}, {2, 1}, {2, 3}, {2, 4}, {3, 2}, {3, 4}};

double entry(const std::vector<double>& P, int from, int to) {
  return P[static_cast<std::size_t>(4 * (from - 1) + to - 1)];
}

/// P(t) the slow way: the plain series, in steps short enough for it.
std::vector<double> series(const std::vector<ChainStep>& steps, const std::vector<double>& rates,
                           double t) {
  std::vector<double> P(16, 0.0);
  for (std::size_t i = 0; i < 4; ++i) P[5 * i] = 1;
  const int cuts = 4000;
  for (int cut = 0; cut < cuts; ++cut) {
    std::vector<double> term = P;
    for (int k = 1; k <= 8; ++k) {
      std::vector<double> next(16, 0.0);
      for (std::size_t m = 0; m < steps.size(); ++m)
        for (std::size_t i = 0; i < 4; ++i) {
          const auto from = static_cast<std::size_t>(steps[m].from - 1);
          const double flow = term[4 * i + from] * rates[m] * t / cuts / k;
          next[4 * i + from] -= flow;
          next[4 * i + static_cast<std::size_t>(steps[m].to - 1)] += flow;
        }
      term = next;
      for (std::size_t i = 0; i < 16; ++i) P[i] += term[i];
    }
  }
  return P;
}

/// Subjects that go through the chain and are looked at now and then.
PanelData made(const std::vector<ChainStep>& steps, const std::vector<double>& rates,
               Arrival of_last, std::uint64_t seed) {
  SplitMix64 random(seed);
  PanelData data{4, steps, {}};
  for (int subject = 0; subject < 300; ++subject) {
    int state = 1;
    double since = 0;
    int seen = 1;
    const auto look = [&](double at, Arrival arrival) {
      data.pairs.push_back({subject, seen, state, at - since, arrival});
      seen = state;
      since = at;
    };
    double next_look = 0.5 + random.uniform();
    for (double t = 0; t < 8 && state != 4;) {
      double all = 0;
      for (std::size_t m = 0; m < steps.size(); ++m)
        if (steps[m].from == state) all += rates[m];
      const double leaves = t - std::log(1 - random.uniform()) / all;
      for (; next_look < std::min(leaves, 8.0); next_look += 0.5 + random.uniform())
        look(next_look, Arrival::some_time_before);
      double u = random.uniform() * all;
      for (std::size_t m = 0; m < steps.size(); ++m) {
        if (steps[m].from != state) continue;
        u -= rates[m];
        if (u > 0) continue;
        state = steps[m].to;
        break;
      }
      t = leaves;
      if (state == 4 && t < 8) look(of_last == Arrival::exactly_then ? t : next_look, of_last);
    }
  }
  return data;
}

}  // namespace

TEST_CASE("chances of any chain are its matrix exponential", "[core][reference]") {
  const std::vector<double> rates{0.13, 0.04, 0.22, 0.34, 0.04, 0.13, 0.31};
  const std::vector<double> three{0.1, 0.2, 0.15};
  const std::vector<double> equal{0.2, 0.2, 0.2};  // no full set of eigenvectors
  const std::vector<ChainStep> round{{1, 2}, {2, 3}, {3, 1}, {3, 4}};  // complex eigenvalues
  const std::vector<double> four{0.4, 0.5, 0.3, 0.05};
  for (const double t : {0.0, 0.01, 1.0, 5.0, 40.0}) {
    const auto P = panel_chances(4, both_ways, rates, t);
    const auto slow = series(both_ways, rates, t);
    for (std::size_t i = 0; i < 16; ++i) CHECK_THAT(P[i], WithinAbs(slow[i], 1e-10));
    const auto R = panel_chances(4, round, four, t);
    const auto slow_round = series(round, four, t);
    for (std::size_t i = 0; i < 16; ++i) CHECK_THAT(R[i], WithinAbs(slow_round[i], 1e-10));
    for (const auto& q : {three, equal}) {
      const auto forward = panel_chances(4, progressive, q, t);
      for (int from = 1; from <= 4; ++from)
        for (int to = from; to <= 4; ++to)
          CHECK_THAT(entry(forward, from, to),
                     WithinAbs(chances_after(q, static_cast<std::size_t>(from),
                                             t)[static_cast<std::size_t>(to - 1)],
                               1e-11));
    }
  }
}

TEST_CASE("with one step and exact times the rate is events over time", "[core][property]") {
  PanelData data{2, {{1, 2}}, {}};
  double years = 0;
  for (int i = 0; i < 20; ++i) {
    years += 0.3 * (i + 1);
    data.pairs.push_back({i, 1, i % 4 == 0 ? 1 : 2, 0.3 * (i + 1),
                          i % 4 == 0 ? Arrival::some_time_before : Arrival::exactly_then});
  }
  const auto fit = fit_panel_chain(data);
  REQUIRE(fit);
  CHECK_THAT(fit->rates[0], WithinRel(15 / years, 1e-7));
  CHECK(fit->settled);
}

TEST_CASE("a fitted chain lies at the top of its likelihood", "[core][property]") {
  const auto seed = GENERATE(kneerail::test::each_seed(1, 3));
  INFO(kneerail::test::reproduce(seed));
  const bool exact = GENERATE(false, true);
  const bool forward_only = GENERATE(false, true);
  const auto& steps = forward_only ? progressive : both_ways;
  const std::vector<double> rates = forward_only
                                        ? std::vector<double>{0.5, 0.5, 0.5}
                                        : std::vector<double>{0.4, 0.1, 0.3, 0.4, 0.1, 0.2, 0.4};
  const PanelData data =
      made(steps, rates, exact ? Arrival::exactly_then : Arrival::some_time_before, seed);
  const auto fit = fit_panel_chain(data);
  REQUIRE(fit);
  CHECK(fit->settled);
  CHECK_THAT(panel_criterion(data, fit->rates), WithinAbs(fit->minus_two_ln_likelihood, 1e-9));
  for (std::size_t m = 0; m < rates.size(); ++m) {
    for (const double factor : {0.98, 1.02}) {
      auto beside = fit->rates;
      beside[m] *= factor;
      CHECK(panel_criterion(data, beside) > fit->minus_two_ln_likelihood);
    }
    // Four standard errors either side hold the truth.
    CHECK(std::abs(std::log(fit->rates[m] / rates[m])) < 4 * fit->ln_rate_errors[m]);
  }
}

TEST_CASE("a chain that goes round is fitted too", "[core][property]") {
  const std::vector<ChainStep> round{{1, 2}, {2, 3}, {3, 1}, {3, 4}};
  const std::vector<double> rates{0.6, 0.7, 0.5, 0.2};
  const PanelData data = made(round, rates, Arrival::exactly_then, 9);
  const auto fit = fit_panel_chain(data);
  REQUIRE(fit);
  for (std::size_t m = 0; m < rates.size(); ++m) {
    CHECK(std::abs(std::log(fit->rates[m] / rates[m])) < 4 * fit->ln_rate_errors[m]);
    for (const double factor : {0.98, 1.02}) {
      auto beside = fit->rates;
      beside[m] *= factor;
      CHECK(panel_criterion(data, beside) > fit->minus_two_ln_likelihood);
    }
  }
}

TEST_CASE("looks that no chain explains are refused in words", "[core]") {
  const PanelData back{4, progressive, {{0, 3, 1, 2, Arrival::some_time_before}}};
  CHECK(fit_panel_chain(back).error().fault == Fault::not_estimable);
  CHECK(std::isinf(panel_criterion(back, std::vector<double>{1, 1, 1})));
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double years : {nan, -1.0, std::numeric_limits<double>::infinity()}) {
    const PanelData odd{4, progressive, {{0, 1, 2, years, Arrival::some_time_before}}};
    CHECK(fit_panel_chain(odd).error().fault == Fault::invalid_input);
  }
  CHECK(fit_panel_chain({4, {{1, 5}}, {}}).error().fault == Fault::invalid_input);
  CHECK(fit_panel_chain({4, {{1, 2}, {1, 2}}, {}}).error().fault == Fault::invalid_input);
  CHECK(fit_panel_chain({4, progressive, {}}).error().fault == Fault::not_estimable);
}

TEST_CASE("a step that no looks tell of is not estimated", "[core]") {
  // Nobody is ever in state 3, nor can be on the way to where they were seen.
  PanelData data{4, {{1, 2}, {3, 4}}, {}};
  for (int i = 0; i < 30; ++i) data.pairs.push_back({i, 1, 1 + i % 2, 1.0 + i % 3});
  const auto fit = fit_panel_chain(data);
  REQUIRE_FALSE(fit);
  CHECK(fit.error().fault == Fault::not_estimable);
  CHECK(fit.error().message.find("from 3 to 4") != std::string::npos);
  data.steps.pop_back();
  CHECK(fit_panel_chain(data));
}

TEST_CASE("a way there is none is a chance of nothing, whatever the rounding", "[core]") {
  const std::vector<double> rates{0.13, 0.04, 0.22, 0.34, 0.04, 0.13, 0.31};
  for (const double t : {0.0, 0.3, 7.0, 400.0, 9000.0})
    for (const double chance : panel_chances(4, both_ways, rates, t))
      CHECK((chance >= 0 && chance <= 1));
  PanelData data{4, both_ways, {{0, 4, 1, 3.0}}};
  CHECK(std::isinf(panel_criterion(data, rates)));
  data.pairs = {{0, 1, 2, 0.0}};
  CHECK(std::isinf(panel_criterion(data, rates)));
  data.pairs = {{0, 1, 2, 1.0}};
  CHECK(std::isfinite(panel_criterion(data, rates)));
  std::vector<double> cut = rates;
  cut[0] = 0;  // from 1 to 2, the only way out of 1 but to 4
  CHECK(std::isinf(panel_criterion(data, cut)));
}
