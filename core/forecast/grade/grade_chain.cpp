#include "core/forecast/grade/grade_chain.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/forecast/constants.h"

namespace kneerail::forecast {

namespace {

GradeChances emission(const GradeErrors& errors, int seen) {
  GradeChances chances{};
  for (int truth = 1; truth <= grade_worst; ++truth) {
    double right = 1;
    double of_seen = 0;
    for (int said = 1; said <= grade_worst; ++said) {
      if (said == truth) continue;
      const double chance = said == truth + 1   ? errors.up
                            : said == truth - 1 ? errors.down
                                                : constant::grade_further_off;
      right -= chance;
      if (said == seen) of_seen = chance;
    }
    chances[static_cast<std::size_t>(truth - 1)] = seen == truth ? right : of_seen;
  }
  return chances;
}

GradeChances repeated_emission(int carried) {
  GradeChances chances{};
  for (int truth = 1; truth <= grade_worst; ++truth) {
    const int above = truth - carried;
    chances[static_cast<std::size_t>(truth - 1)] = above <= 1   ? 1
                                                   : above == 2 ? constant::grade_repeated_two_above
                                                                : constant::grade_repeated_beyond;
  }
  return chances;
}

constexpr double least_chance = 1e-100;

/// Multiplies by the emission and scales to a sum of 1; returns the sum there was.
double see(const GradeChances& emission, GradeChances& state) {
  double sum = 0;
  for (std::size_t j = 0; j < grade_count; ++j) {
    state[j] *= emission[j];
    sum += state[j];
  }
  sum = std::max(sum, least_chance);
  for (double& chance : state) chance /= sum;
  return sum;
}

}  // namespace

GradeEmissions::GradeEmissions(std::span<const GradeErrors> inspectors) {
  for (const GradeErrors& errors : inspectors) {
    BySeen& own = fresh_.emplace_back();
    for (int seen = 1; seen <= grade_worst; ++seen)
      own[static_cast<std::size_t>(seen - 1)] = emission(errors, seen);
  }
  for (int seen = 1; seen <= grade_worst; ++seen)
    repeated_[static_cast<std::size_t>(seen - 1)] = repeated_emission(seen);
}

const GradeChances& GradeEmissions::of(const GradeLook& look) const {
  const BySeen& by_seen = look.fresh ? fresh_[static_cast<std::size_t>(look.inspector)] : repeated_;
  return by_seen[static_cast<std::size_t>(look.seen - 1)];
}

std::span<const GradeLook> GradeChain::looks(const GradeSegment& segment) const {
  return {data_->looks.data() + segment.first, static_cast<std::size_t>(segment.count)};
}

GradeChances GradeChain::unseen(const GradeSegment& segment, double x) const {
  GradeChances mean{};
  for (const double ln_age : segment.ln_ages) {
    const GradeChances chances = table_->from_new(x + ln_age);
    for (std::size_t j = 0; j < grade_count; ++j) mean[j] += chances[j];
  }
  for (double& chance : mean) chance /= static_cast<double>(segment.ln_ages.size());
  return mean;
}

void GradeChain::advance(const GradeLook& look, double x, GradeChances& state) const {
  if (std::isinf(look.ln_years)) return;
  const double s = x + look.ln_years;
  table_->advance(s, state);
  const GradeChances fresh = table_->from_new(s - std::numbers::ln2);
  for (std::size_t j = 0; j < grade_count; ++j)
    state[j] = look.unbroken * state[j] + (1 - look.unbroken) * fresh[j];
}

void GradeChain::go_back(const GradeLook& look, double x, GradeChances& column) const {
  if (std::isinf(look.ln_years)) return;
  const double s = x + look.ln_years;
  const GradeChances fresh = table_->from_new(s - std::numbers::ln2);
  double from_fresh = 0;
  for (std::size_t j = 0; j < grade_count; ++j) from_fresh += fresh[j] * column[j];
  table_->go_back(s, column);
  for (double& value : column) value = look.unbroken * value + (1 - look.unbroken) * from_fresh;
}

GradePath GradeChain::forward(const GradeSegment& segment, double x) const {
  const auto seen = looks(segment);
  GradePath path;
  path.last = unseen(segment, x);
  double likelihood = 1;  // its logarithm only before it gets too small to hold
  for (const GradeLook& look : seen) {
    if (&look != &seen.front()) advance(look, x, path.last);
    likelihood *= see(emissions_->of(look), path.last);
    if (likelihood > 1e-200) continue;
    path.ln_likelihood += std::log(likelihood);
    likelihood = 1;
  }
  path.ln_likelihood += std::log(likelihood);
  return path;
}

void GradeChain::smooth(const GradeSegment& segment, double x,
                        std::vector<GradeChances>& at_looks) const {
  const auto seen = looks(segment);
  at_looks.clear();
  GradeChances state = unseen(segment, x);
  for (const GradeLook& look : seen) {
    if (&look != &seen.front()) advance(look, x, state);
    see(emissions_->of(look), state);
    at_looks.push_back(state);
  }
  GradeChances ahead;
  ahead.fill(1);
  for (std::size_t i = seen.size(); i-- > 0;) {
    see(ahead, at_looks[i]);
    see(emissions_->of(seen[i]), ahead);
    if (i > 0) go_back(seen[i], x, ahead);
  }
}

}  // namespace kneerail::forecast
