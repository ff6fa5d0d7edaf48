#include "core/statistics/hidden_chain.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "core/base/world.h"
#include "core/statistics/progressive_chain.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::statistics;
using Catch::Matchers::WithinAbs;

namespace {

const std::vector<ChainStep> progressive{{1, 2}, {2, 3}, {3, 4}};
const std::vector<ChainStep> neighbours{{1, 2}, {2, 1}, {2, 3}, {3, 2}, {3, 4}, {4, 3}};
const HiddenParameters truth{{0.3, 0.2, 0.25}, {0.1, 0.05, 0.08, 0.06, 0.04, 0.12}};

/// Subjects that go through the chain and are looked at with errors.
HiddenData made(std::uint64_t seed, int subjects) {
  SplitMix64 random(seed);
  HiddenData data{4, progressive, neighbours, {}};
  for (int subject = 0; subject < subjects; ++subject) {
    int state = 1;
    double leaves = -std::log(1 - random.uniform()) / truth.rates[0];
    double at = 0;
    double before = 0;
    for (int look = 0; look < 6; ++look) {
      at += 0.5 + 3 * random.uniform();
      while (state < 4 && leaves < at) {
        ++state;
        if (state < 4)
          leaves -=
              std::log(1 - random.uniform()) / truth.rates[static_cast<std::size_t>(state - 1)];
      }
      int seen = state;
      double u = random.uniform();
      for (std::size_t k = 0; k < neighbours.size(); ++k) {
        if (neighbours[k].from != state) continue;
        u -= truth.errors[k];
        if (u > 0) continue;
        seen = neighbours[k].to;
        break;
      }
      data.looks.push_back({subject, at - before, seen});
      before = at;
    }
  }
  return data;
}

double chance_seen(const HiddenParameters& at, int state, int seen) {
  double right = 1;
  for (std::size_t k = 0; k < neighbours.size(); ++k) {
    if (neighbours[k].from != state) continue;
    if (neighbours[k].to == seen) return at.errors[k];
    right -= at.errors[k];
  }
  return seen == state ? right : 0;
}

/// The likelihood of the looks from `i` on to the end of the subject, by every way through the true
/// states there is.
double by_every_way(const HiddenData& data, const HiddenParameters& at, std::size_t i, int state) {
  double sum = 0;
  const auto chances =
      chances_after(at.rates, static_cast<std::size_t>(state), data.looks[i].years);
  for (int next = state; next <= 4; ++next) {
    const double here =
        chances[static_cast<std::size_t>(next - 1)] * chance_seen(at, next, data.looks[i].seen);
    const bool last =
        i + 1 == data.looks.size() || data.looks[i + 1].subject != data.looks[i].subject;
    sum += here == 0 || last ? here : here * by_every_way(data, at, i + 1, next);
  }
  return sum;
}

}  // namespace

TEST_CASE("the chance of looks with errors is the sum over all true states", "[core][reference]") {
  const HiddenData data = made(4, 20);
  double slow = 0;
  for (std::size_t i = 0; i < data.looks.size(); ++i)
    if (i == 0 || data.looks[i].subject != data.looks[i - 1].subject)
      slow -= 2 * std::log(by_every_way(data, truth, i, 1));
  CHECK_THAT(hidden_chain_criterion(data, truth), WithinAbs(slow, 1e-8));
}

TEST_CASE("a fitted hidden chain lies at the top of its likelihood", "[core][property]") {
  const auto seed = GENERATE(kneerail::test::each_seed(1, 3));
  INFO(kneerail::test::reproduce(seed));
  const HiddenData data = made(seed, 1500);
  const auto fit =
      fit_hidden_chain(data, {std::vector<double>(3, 0.2), std::vector<double>(6, 0.05)});
  REQUIRE(fit);
  CHECK(fit->settled);
  const double top = fit->minus_two_ln_likelihood;
  CHECK_THAT(hidden_chain_criterion(data, fit->found), WithinAbs(top, 1e-7));
  CHECK(top < hidden_chain_criterion(data, truth));
  // Nine free parameters: twice the gain over the truth is chi-square of nine.
  CHECK(hidden_chain_criterion(data, truth) - top < 28);
  for (const double factor : {0.97, 1.03}) {
    for (std::size_t m = 0; m < truth.rates.size(); ++m) {
      HiddenParameters beside = fit->found;
      beside.rates[m] *= factor;
      CHECK(hidden_chain_criterion(data, beside) > top);
    }
    for (std::size_t k = 0; k < truth.errors.size(); ++k) {
      HiddenParameters beside = fit->found;
      beside.errors[k] *= factor;
      CHECK(hidden_chain_criterion(data, beside) > top);
    }
  }
}

TEST_CASE("a hidden chain that is seen right is a chain", "[core][property]") {
  HiddenData data{4, progressive, {}, {}};
  PanelData panel{4, progressive, {}};
  SplitMix64 random(6);
  for (int subject = 0; subject < 200; ++subject) {
    int state = 1;
    for (int look = 0; look < 4; ++look) {
      const int next = std::min(4, state + (random.uniform() < 0.4 ? 1 : 0));
      const double years = 0.5 + random.uniform();
      data.looks.push_back({subject, years, next});
      panel.pairs.push_back({subject, state, next, years});
      state = next;
    }
  }
  const auto hidden = fit_hidden_chain(data, {{0.1, 0.1, 0.1}, {}});
  const auto seen = fit_panel_chain(panel);
  REQUIRE(hidden);
  REQUIRE(seen);
  CHECK_THAT(hidden->minus_two_ln_likelihood, WithinAbs(seen->minus_two_ln_likelihood, 1e-8));
  for (std::size_t m = 0; m < 3; ++m)
    CHECK_THAT(hidden->found.rates[m], WithinAbs(seen->rates[m], 1e-6));
}

TEST_CASE("hidden looks that cannot be fitted are refused in words", "[core]") {
  const HiddenParameters start{{0.1, 0.1, 0.1}, {}};
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto fault = [&](const HiddenData& data, const HiddenParameters& from) {
    const auto fit = fit_hidden_chain(data, from);
    REQUIRE_FALSE(fit);
    CHECK_FALSE(fit.error().message.empty());
    return fit.error().fault;
  };
  CHECK(fault({4, progressive, {}, {}}, start) == Fault::not_estimable);
  // Back again, and nobody errs.
  CHECK(fault({4, progressive, {}, {{0, 1, 3}, {0, 1, 2}}}, start) == Fault::not_estimable);
  CHECK(fault({4, progressive, {}, {{0, 1, 5}}}, start) == Fault::invalid_input);
  for (const double years : {nan, -1.0, std::numeric_limits<double>::infinity()})
    CHECK(fault({4, progressive, {}, {{0, years, 2}}}, start) == Fault::invalid_input);
  CHECK(fault({4, {{1, 5}}, {}, {{0, 1, 2}}}, start) == Fault::invalid_input);
  CHECK(fault({4, progressive, {{2, 2}}, {{0, 1, 2}}}, start) == Fault::invalid_input);
  CHECK(fault({4, progressive, {{1, 2}, {1, 2}}, {{0, 1, 2}}}, start) == Fault::invalid_input);
  CHECK(fault({4, progressive, {}, {{0, 1, 2}}}, {{0.1, 0.1}, {}}) == Fault::invalid_input);
  CHECK(fault({4, progressive, {}, {{0, 1, 2}}}, {{0.1, 0, 0.1}, {}}) == Fault::invalid_input);
  // Nothing left for seeing state 2 right.
  CHECK(fault({4, progressive, {{2, 1}, {2, 3}}, {{0, 1, 2}}}, {{0.1, 0.1, 0.1}, {0.5, 0.5}}) ==
        Fault::invalid_input);
}
