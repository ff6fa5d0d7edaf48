#include "core/statistics/panel_chain.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>

#include "core/statistics/passage_inside.h"
#include "core/statistics/scores_inside.h"

namespace kneerail::statistics {

namespace {

using inside::Index;
using inside::Likelihood;
using inside::MatrixXd;
using inside::Passage;
using inside::VectorXd;

constexpr double told_least = 1e-16;  ///< squared slopes with ln rate: less is rounding alone

/// The likelihood of one pair and its slopes.
class PairLikelihood {
 public:
  PairLikelihood(const PanelData& data, std::span<const double> rates)
      : data_(data), rates_(rates), passage_(data.states, data.steps, rates) {}

  double of(const PanelPair& pair, VectorXd& slope) {
    passage_.row(pair.from - 1, pair.years, chances_, slopes_);
    if (pair.arrival == Arrival::some_time_before) {
      slope = slopes_.col(pair.to - 1);
      return chances_(pair.to - 1);
    }
    double density = 0;
    slope.setZero(slopes_.rows());
    for (std::size_t m = 0; m < data_.steps.size(); ++m) {
      if (data_.steps[m].to != pair.to) continue;
      const Index before = data_.steps[m].from - 1;
      const double part = chances_(before) * rates_[m];
      density += part;
      slope += slopes_.col(before) * rates_[m];
      slope(static_cast<Index>(m)) += part;
    }
    return density;
  }

 private:
  const PanelData& data_;
  std::span<const double> rates_;
  Passage passage_;
  VectorXd chances_;
  MatrixXd slopes_;
};

using Ways = Eigen::Matrix<bool, Eigen::Dynamic, Eigen::Dynamic>;

/// Which states can be reached from which by steps with a rate, each from itself.
Ways ways_of(const PanelData& data, std::span<const double> rates) {
  Ways ways = Ways::Identity(data.states, data.states);
  for (int round = 0; round < data.states; ++round)
    for (std::size_t m = 0; m < data.steps.size(); ++m)
      if (rates[m] > 0)
        for (Index from = 0; from < data.states; ++from)
          if (ways(from, data.steps[m].from - 1)) ways(from, data.steps[m].to - 1) = true;
  return ways;
}

/// By the ways there are, since a chance that is none comes out as a very small number of either
/// sign.
bool can_happen(const PanelData& data, std::span<const double> rates) {
  const Ways ways = ways_of(data, rates);
  return std::ranges::all_of(data.pairs, [&](const PanelPair& pair) {
    if (pair.arrival == Arrival::some_time_before)
      return pair.from == pair.to || (pair.years > 0 && ways(pair.from - 1, pair.to - 1));
    for (std::size_t m = 0; m < data.steps.size(); ++m) {
      const int before = data.steps[m].from;
      if (data.steps[m].to == pair.to && rates[m] > 0 &&
          (before == pair.from || (pair.years > 0 && ways(pair.from - 1, before - 1))))
        return true;
    }
    return false;
  });
}

/// Nothing where a pair cannot happen at these rates.
std::optional<Likelihood> likelihood_of(const PanelData& data, std::span<const double> rates) {
  if (!can_happen(data, rates)) return std::nullopt;
  const auto n = static_cast<Index>(data.steps.size());
  Likelihood all(n);
  PairLikelihood pairs(data, rates);
  VectorXd slope(n);
  VectorXd own = VectorXd::Zero(n);
  for (std::size_t i = 0; i < data.pairs.size(); ++i) {
    const double chance = pairs.of(data.pairs[i], slope);
    if (!(chance > 0)) return std::nullopt;
    all.ln += std::log(chance);
    own += slope / chance;
    if (i + 1 < data.pairs.size() && data.pairs[i + 1].subject == data.pairs[i].subject) continue;
    all.add(own);
    own.setZero();
  }
  if (!std::isfinite(all.ln) || !all.score.allFinite()) return std::nullopt;
  return all;
}

Result<> check_data(const PanelData& data) {
  const auto state = [&](int number) { return number >= 1 && number <= data.states; };
  for (std::size_t m = 0; m < data.steps.size(); ++m) {
    const ChainStep& step = data.steps[m];
    if (!state(step.from) || !state(step.to) || step.from == step.to)
      return fail(Fault::invalid_input, "Chain: a step from or to a state that there is not.");
    for (std::size_t k = 0; k < m; ++k)
      if (data.steps[k].from == step.from && data.steps[k].to == step.to)
        return fail(Fault::invalid_input, "Chain: a step is named twice.");
  }
  for (const PanelPair& pair : data.pairs) {
    if (!state(pair.from) || !state(pair.to))
      return fail(Fault::invalid_input, "Chain: a look at a state that there is not.");
    if (!(pair.years >= 0) || !std::isfinite(pair.years))
      return fail(Fault::invalid_input, "Chain: a time between looks that is no number from 0 up.");
  }
  if (data.steps.empty() || data.pairs.empty())
    return fail(Fault::not_estimable, "Chain: there is no step or no pair of looks.");
  return Done{};
}

/// Seen changes over time spent, half a change where there was none.
std::vector<double> crude_rates(const PanelData& data) {
  std::vector<double> spent(static_cast<std::size_t>(data.states), 0.0);
  for (const PanelPair& pair : data.pairs)
    spent[static_cast<std::size_t>(pair.from - 1)] += pair.years;
  std::vector<double> rates;
  for (const ChainStep& step : data.steps) {
    const auto changes = std::ranges::count_if(data.pairs, [&](const PanelPair& pair) {
      return pair.from == step.from && pair.to == step.to;
    });
    const double years = spent[static_cast<std::size_t>(step.from - 1)];
    rates.push_back(std::max(0.5, static_cast<double>(changes)) / (years > 0 ? years : 1));
  }
  return rates;
}

std::vector<double> exponentials(const VectorXd& ln_rates) {
  std::vector<double> rates;
  for (Index m = 0; m < ln_rates.size(); ++m) rates.push_back(std::exp(ln_rates(m)));
  return rates;
}

}  // namespace

Result<PanelFit> fit_panel_chain(const PanelData& data) {
  if (auto ok = check_data(data); !ok) return fail(ok.error());
  PanelFit fit;
  fit.rates = crude_rates(data);
  VectorXd ln_rates(static_cast<Index>(fit.rates.size()));
  for (std::size_t m = 0; m < fit.rates.size(); ++m)
    ln_rates(static_cast<Index>(m)) = std::log(fit.rates[m]);
  auto now = likelihood_of(data, fit.rates);
  if (!now)
    return fail(Fault::not_estimable,
                "Chain: two looks lie in states that no way leads between. Nothing was fitted.");
  for (Index m = 0; m < now->outer.rows(); ++m) {
    const ChainStep& step = data.steps[static_cast<std::size_t>(m)];
    if (now->outer(m, m) < told_least)
      return fail(Fault::not_estimable, "Chain: no two looks tell of the step from " +
                                            std::to_string(step.from) + " to " +
                                            std::to_string(step.to) + ". Nothing was fitted.");
  }
  const auto at = [&](const VectorXd& there) { return likelihood_of(data, exponentials(there)); };
  const inside::Climb climbed = inside::climb(at, ln_rates, *now);
  fit.passes = climbed.passes;
  fit.settled = climbed.settled;
  fit.rates = exponentials(ln_rates);
  fit.minus_two_ln_likelihood = -2 * now->ln;
  const MatrixXd covariance =
      now->outer.ldlt().solve(MatrixXd::Identity(now->outer.rows(), now->outer.cols()));
  for (Index m = 0; m < covariance.rows(); ++m)
    fit.ln_rate_errors.push_back(now->outer(m, m) < told_least
                                     ? std::numeric_limits<double>::infinity()
                                     : std::sqrt(std::max(0.0, covariance(m, m))));
  return fit;
}

double panel_criterion(const PanelData& data, std::span<const double> rates) {
  const auto at = likelihood_of(data, rates);
  return at ? -2 * at->ln : std::numeric_limits<double>::infinity();
}

std::vector<double> panel_chances(int states, std::span<const ChainStep> steps,
                                  std::span<const double> rates, double t) {
  check(states > 0 && steps.size() == rates.size() && t >= 0, "a chain with a rate for each step");
  const MatrixXd P = Passage(states, steps, rates).chances(t);
  std::vector<double> all;
  for (Index i = 0; i < P.rows(); ++i)
    for (Index j = 0; j < P.cols(); ++j) all.push_back(std::clamp(P(i, j), 0.0, 1.0));
  return all;
}

}  // namespace kneerail::statistics
