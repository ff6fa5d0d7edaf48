#include "core/statistics/hidden_chain.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/statistics/passage_inside.h"
#include "core/statistics/scores_inside.h"

namespace kneerail::statistics {

namespace {

using inside::Index;
using inside::Likelihood;
using inside::MatrixXd;
using inside::Passage;
using inside::VectorXd;

/// The times between looks, each once, and where each look's is among them.
struct Times {
  std::vector<double> years;
  std::vector<std::size_t> of_look;

  explicit Times(const HiddenData& data) {
    for (const HiddenLook& look : data.looks) years.push_back(look.years);
    std::ranges::sort(years);
    years.erase(std::ranges::unique(years).begin(), years.end());
    for (const HiddenLook& look : data.looks)
      of_look.push_back(
          static_cast<std::size_t>(std::ranges::lower_bound(years, look.years) - years.begin()));
  }
};

/// P(seen | true), true by row; each row sums to 1.
MatrixXd emissions_of(const HiddenData& data, std::span<const double> chances) {
  MatrixXd E = MatrixXd::Identity(data.states, data.states);
  for (std::size_t k = 0; k < data.errors.size(); ++k) {
    E(data.errors[k].from - 1, data.errors[k].to - 1) += chances[k];
    E(data.errors[k].from - 1, data.errors[k].from - 1) -= chances[k];
  }
  return E;
}

/// The forward recursion of one subject after the other, with its slopes.
class Forward {
 public:
  Forward(const HiddenData& data, const Times& times, const HiddenParameters& at)
      : data_(data), times_(times), E_(emissions_of(data, at.errors)) {
    Passage passage(data.states, data.steps, at.rates);
    P_.resize(times.years.size());
    dP_.resize(times.years.size());
    for (std::size_t i = 0; i < P_.size(); ++i) {
      passage.whole(times.years[i], P_[i], dP_[i]);
      P_[i] = P_[i].cwiseMax(0.0);  // a way that there is not comes out as rounding of either sign
    }
    parameters_ = static_cast<Index>(data.steps.size() + data.errors.size());
  }

  /// Nothing where the looks cannot happen.
  std::optional<Likelihood> run() {
    Likelihood all(parameters_);
    for (std::size_t i = 0; i < data_.looks.size(); ++i) {
      if (i == 0 || data_.looks[i].subject != data_.looks[i - 1].subject) begin();
      const double chance = see(i);
      if (!(chance > 0)) return std::nullopt;
      all.ln += std::log(chance);
      const bool last =
          i + 1 == data_.looks.size() || data_.looks[i + 1].subject != data_.looks[i].subject;
      if (last) all.add(slopes_.rowwise().sum());
    }
    if (!std::isfinite(all.ln) || !all.score.allFinite()) return std::nullopt;
    return all;
  }

 private:
  void begin() {
    state_ = Eigen::RowVectorXd::Unit(data_.states, 0);
    slopes_ = MatrixXd::Zero(parameters_, data_.states);
  }

  /// The chance of the look given those before it. Leaves state and slopes over that chance.
  double see(std::size_t i) {
    const std::size_t time = times_.of_look[i];
    slopes_ = (slopes_ * P_[time]).eval();
    for (std::size_t m = 0; m < data_.steps.size(); ++m)
      slopes_.row(static_cast<Index>(m)) += state_ * dP_[time][m];
    state_ = (state_ * P_[time]).eval();
    const Index seen = data_.looks[i].seen - 1;
    slopes_ = (slopes_ * E_.col(seen).asDiagonal()).eval();
    for (std::size_t k = 0; k < data_.errors.size(); ++k) {
      const Index truth = data_.errors[k].from - 1;
      const Index said = data_.errors[k].to - 1;
      const double slope = E_(truth, seen) * ((said == seen ? 1 : 0) - E_(truth, said));
      slopes_(static_cast<Index>(data_.steps.size() + k), truth) += state_(truth) * slope;
    }
    state_ = (state_ * E_.col(seen).asDiagonal()).eval();
    const double chance = state_.sum();
    state_ /= chance;
    slopes_ /= chance;
    return chance;
  }

  const HiddenData& data_;
  const Times& times_;
  MatrixXd E_;
  std::vector<MatrixXd> P_;  ///< by time
  std::vector<std::vector<MatrixXd>> dP_;
  Index parameters_ = 0;
  Eigen::RowVectorXd state_;
  MatrixXd slopes_;
};

bool named_twice(std::span<const ChainStep> steps) {
  for (std::size_t m = 0; m < steps.size(); ++m)
    for (std::size_t k = 0; k < m; ++k)
      if (steps[k].from == steps[m].from && steps[k].to == steps[m].to) return true;
  return false;
}

Result<> check_data(const HiddenData& data) {
  const auto state = [&](int number) { return number >= 1 && number <= data.states; };
  for (const auto* list : {&data.steps, &data.errors}) {
    for (const ChainStep& step : *list)
      if (!state(step.from) || !state(step.to) || step.from == step.to)
        return fail(Fault::invalid_input,
                    "Hidden chain: a step or an error from or to a state that there is not.");
    if (named_twice(*list))
      return fail(Fault::invalid_input, "Hidden chain: a step or an error is named twice.");
  }
  for (const HiddenLook& look : data.looks) {
    if (!state(look.seen))
      return fail(Fault::invalid_input, "Hidden chain: a look at a state that there is not.");
    if (!(look.years >= 0) || !std::isfinite(look.years))
      return fail(Fault::invalid_input,
                  "Hidden chain: a time between looks that is no number from 0 up.");
  }
  if (data.steps.empty() || data.looks.empty())
    return fail(Fault::not_estimable, "Hidden chain: there is no step or no look.");
  return Done{};
}

Result<> check_start(const HiddenData& data, const HiddenParameters& start) {
  const auto positive = [](double value) { return value > 0 && std::isfinite(value); };
  bool good =
      start.rates.size() == data.steps.size() && start.errors.size() == data.errors.size() &&
      std::ranges::all_of(start.rates, positive) && std::ranges::all_of(start.errors, positive);
  if (good) good = emissions_of(data, start.errors).diagonal().minCoeff() > 0;
  if (!good)
    return fail(Fault::invalid_input,
                "Hidden chain: the start needs a rate above 0 for each step and a chance above 0 "
                "for each error, with some left for seeing a state right.");
  return Done{};
}

/// ln rates, and for each error ln (chance / chance of right).
VectorXd as_logarithms(const HiddenData& data, const HiddenParameters& at) {
  const MatrixXd E = emissions_of(data, at.errors);
  const auto steps = static_cast<Index>(at.rates.size());
  VectorXd ln(steps + static_cast<Index>(at.errors.size()));
  for (std::size_t m = 0; m < at.rates.size(); ++m)
    ln(static_cast<Index>(m)) = std::log(at.rates[m]);
  for (std::size_t k = 0; k < at.errors.size(); ++k) {
    const Index truth = data.errors[k].from - 1;
    ln(steps + static_cast<Index>(k)) = std::log(at.errors[k] / E(truth, truth));
  }
  return ln;
}

HiddenParameters from_logarithms(const HiddenData& data, const VectorXd& ln) {
  HiddenParameters at;
  const auto steps = static_cast<Index>(data.steps.size());
  for (Index m = 0; m < steps; ++m) at.rates.push_back(std::exp(ln(m)));
  VectorXd whole = VectorXd::Ones(data.states);
  for (std::size_t k = 0; k < data.errors.size(); ++k)
    whole(data.errors[k].from - 1) += std::exp(ln(steps + static_cast<Index>(k)));
  for (std::size_t k = 0; k < data.errors.size(); ++k)
    at.errors.push_back(std::exp(ln(steps + static_cast<Index>(k))) /
                        whole(data.errors[k].from - 1));
  return at;
}

}  // namespace

Result<HiddenFit> fit_hidden_chain(const HiddenData& data, const HiddenParameters& start) {
  if (auto ok = check_data(data); !ok) return fail(ok.error());
  if (auto ok = check_start(data, start); !ok) return fail(ok.error());
  const Times times(data);
  const auto at = [&](const VectorXd& ln) {
    return Forward(data, times, from_logarithms(data, ln)).run();
  };
  VectorXd ln = as_logarithms(data, start);
  auto now = at(ln);
  if (!now)
    return fail(Fault::not_estimable,
                "Hidden chain: looks that no way and no error leads to. Nothing was fitted.");
  const inside::Climb climbed = inside::climb_in_box(at, ln, *now);
  return HiddenFit{from_logarithms(data, ln), -2 * now->ln, climbed.passes, climbed.settled};
}

double hidden_chain_criterion(const HiddenData& data, const HiddenParameters& at) {
  check(check_data(data).has_value() && at.rates.size() == data.steps.size() &&
            at.errors.size() == data.errors.size(),
        "a hidden chain with a rate for each step and a chance for each error");
  const Times times(data);
  const auto found = Forward(data, times, at).run();
  return found ? -2 * found->ln : std::numeric_limits<double>::infinity();
}

}  // namespace kneerail::statistics
