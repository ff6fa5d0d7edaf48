#include "core/forecast/decisions/common_draws.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "core/base/world.h"
#include "core/forecast/shared_covariance.h"
#include "core/statistics/normal.h"
#include "tests/core/forecast/decisions/sharing_parts.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using kneerail::tests::Fitted;
using kneerail::tests::sharing_parts;

namespace {

double covariance_of(const std::vector<double>& a, const std::vector<double>& b) {
  const auto n = static_cast<double>(a.size());
  const double mean_a = std::accumulate(a.begin(), a.end(), 0.0) / n;
  const double mean_b = std::accumulate(b.begin(), b.end(), 0.0) / n;
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += (a[i] - mean_a) * (b[i] - mean_b);
  return sum / n;
}

struct Rate {
  SharedGroup group;
  std::vector<int> globals;
  Combination combination;
};

/// What moves the rate of a part of the fit, for the draws and for the fit's own covariance.
Rate rate_of(const CoatingModel& model, int index) {
  const CoatingPart& part = model.data.parts[static_cast<std::size_t>(index)];
  const CoreLayout layout = core_layout(model.data.sites[static_cast<std::size_t>(part.site)]);
  const Segment& segment =
      model.data.segments[static_cast<std::size_t>(part.first_segment + part.segments - 1)];
  Rate rate;
  const GroupTerms terms = group_terms(layout, part, segment, model.effects.spreads);
  rate.combination = rate_combination(terms);
  for (int i = 0; i < terms.rate_terms; ++i)
    if (const int at = terms.rate[static_cast<std::size_t>(i)]; at >= layout.size())
      rate.globals.push_back(at - layout.size());
  rate.group = {part.site, part.zone, part.run, {}};
  return rate;
}

}  // namespace

TEST_CASE("shifts have the variances and covariances of the fit", "[core][property]") {
  const auto seed = test::seed_or(3);
  INFO(test::reproduce(seed));
  const Fitted fitted(sharing_parts(seed));
  const CoatingModel& model = *fitted.coating;
  constexpr int many = 20'000;
  const CommonDraws draws(shared_of(model), many);
  Rate one = rate_of(model, 0);
  Rate other = rate_of(model, 1);
  one.group.globals = one.globals;
  other.group.globals = other.globals;
  REQUIRE(one.group.run == other.group.run);
  const CoatingSite& site = model.data.sites[static_cast<std::size_t>(one.group.site)];
  const SharedCovariance shared(model.effects.sites[static_cast<std::size_t>(one.group.site)],
                                core_layout(site), one.group.run);
  const auto of_one = draws.shifts(one.group);
  const auto of_other = draws.shifts(other.group);
  const double variance = shared.covariance(one.combination, one.combination);
  CHECK(covariance_of(of_one, of_one) == Approx(variance).epsilon(0.04));
  CHECK(covariance_of(of_one, of_other) ==
        Approx(shared.covariance(one.combination, other.combination)).epsilon(0.05));
}

TEST_CASE("draws of a site are its own, whatever else there is", "[core][property]") {
  const auto seed = test::seed_or(4);
  INFO(test::reproduce(seed));
  const Fitted fitted(sharing_parts(seed));
  SharedModel shared = shared_of(*fitted.coating);
  REQUIRE(shared.sites.size() == 2);
  const std::vector<int> globals{global_overall};
  const auto both = CommonDraws(shared).shifts({1, 0, 0, globals});
  shared.sites.erase(shared.sites.begin());
  const auto alone = CommonDraws(shared).shifts({0, 0, 0, globals});
  CHECK(both == alone);
  const auto reseeded = CommonDraws(shared, draw_count, draw_seed + 1).shifts({0, 0, 0, globals});
  CHECK(alone != reseeded);
}

TEST_CASE("weights of a draw sum to 1 and their mean is the part's own", "[core][property]") {
  const double correlation = GENERATE(0.1, 0.5, 0.8);
  const double tail = GENERATE(0.0, 8.0);
  INFO("share of the prior's variance that is common: " << correlation);
  std::vector<WeighedNode> nodes;
  double sum = 0;
  for (int k = 0; k < 21; ++k) {
    const double z = (k - 10) * 0.3;
    nodes.push_back({z, std::exp(-z * z / 2)});
    sum += nodes.back().weight;
  }
  for (WeighedNode& node : nodes) node.weight /= sum;
  SplitMix64 random(9);
  std::vector<double> shifts;
  for (int d = 0; d < draw_count; ++d)
    shifts.push_back(std::sqrt(correlation) *
                     statistics::normal_quantile(0.5 / draw_count + random.uniform() * 0.995));
  const auto weights = weights_in_draws(nodes, {0, 1 - correlation, tail}, shifts);
  double low = 0;  // mean ln rate in the draws that move down, and up
  double high = 0;
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    double mean = 0;
    for (std::size_t d = 0; d < shifts.size(); ++d) {
      const double weight = weights[d * nodes.size() + k];
      mean += weight / draw_count;
      (shifts[d] < 0 ? low : high) += weight * nodes[k].at;
    }
    CHECK(mean == Approx(nodes[k].weight).margin(2e-4));
  }
  for (std::size_t d = 0; d < shifts.size(); ++d) {
    const auto row = weights.begin() + static_cast<std::ptrdiff_t>(d * nodes.size());
    CHECK(std::accumulate(row, row + static_cast<std::ptrdiff_t>(nodes.size()), 0.0) ==
          Approx(1).epsilon(1e-12));
  }
  CHECK(low < 0);
  CHECK(high > 0);
}

TEST_CASE("draws settle where the shared spread is many times the part's own", "[core][property]") {
  const double own = GENERATE(0.1, 0.05);
  const double tail = GENERATE(0.0, 8.0);
  CAPTURE(own, tail);
  constexpr double shared = 0.5;
  // Data a fifth as wide as the prior, one of its standard deviations up.
  const double prior = own * own + shared * shared;
  const double data = prior / 25;
  const double sd = std::sqrt(prior * data / (prior + data));
  const double mean = std::sqrt(prior) * prior / (prior + data);
  std::vector<WeighedNode> nodes;
  double sum = 0;
  for (int k = 0; k < 21; ++k) {
    const double z = (k - 10) * 0.3;
    nodes.push_back({mean + sd * z, std::exp(-z * z / 2)});
    sum += nodes.back().weight;
  }
  double tail_chance = 0;
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    nodes[k].weight /= sum;
    if (k >= 16) tail_chance += nodes[k].weight;
  }
  std::vector<double> shifts;
  for (int d = 0; d < draw_count; ++d)
    shifts.push_back(shared * statistics::normal_quantile((d + 0.5) / draw_count));
  const auto weights = weights_in_draws(nodes, {0, own * own, tail}, shifts);
  double drawn = 0;
  for (std::size_t d = 0; d < shifts.size(); ++d)
    for (std::size_t k = 16; k < nodes.size(); ++k)
      drawn += weights[d * nodes.size() + k] / draw_count;
  CHECK(drawn == Approx(tail_chance).epsilon(0.005));
}
