#include "core/forecast/screws/outlook.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/screws/constants.h"

namespace kneerail::forecast {

namespace {

constexpr double node_weight_least = 1e-9;

/// The first day on which a rising chance reaches a level, to a hundredth of a day.
template <class Chance>
std::optional<double> first_day(const Chance& chance, double level, double most_days) {
  if (chance(0.0) >= level) return 0;
  if (chance(most_days) < level) return std::nullopt;
  double low = 0;
  double high = most_days;
  while (high - low > 0.01) {
    const double middle = (low + high) / 2;
    (chance(middle) >= level ? high : low) = middle;
  }
  return high;
}

}  // namespace

FittingOutlook::FittingOutlook(const ScrewModel& model, int site, int fitting, double minimum_nm,
                               double left_nm)
    : model_(model), minimum_nm_(minimum_nm), nodes_(loss_nodes(model, site, fitting)) {
  const Fitting& own = model.data.fittings[static_cast<std::size_t>(fitting)];
  for (std::size_t s = 0; s < own.screws.size(); ++s)
    screws_.push_back(
        states_of(own.screws[s].tightenings.back(), model.likelihood->current(fitting, s)));
  const auto weights = as_left_weights();
  for (std::size_t i = 0; i < weights.size(); ++i)
    left_.push_back({left_nm * (1 + screw_constant::as_left_sd * screw_constant::as_left_nodes[i]),
                     0, weights[i]});
}

FittingOutlook::ScrewStates FittingOutlook::states_of(
    const Tightening& tightening, const TighteningLikelihood& likelihood) const {
  ScrewStates states;
  states.strikes = tightening.strikes;
  states.seen_under = seen_under(tightening);
  states.by_node.resize(nodes_.x.size());
  const auto prior = as_left_weights();
  std::vector<double> ln_factors;
  for (std::size_t k = 0; k < nodes_.x.size(); ++k) {
    if (nodes_.weight[k] < node_weight_least) continue;
    likelihood.ln_factors(model_.likelihood->normal(), loss_nm(k, states.strikes), ln_factors);
    const double top = *std::max_element(ln_factors.begin(), ln_factors.end());
    double sum = 0;
    for (std::size_t i = 0; i < ln_factors.size(); ++i) {
      const std::size_t z = i % prior.size();
      const Date start = tightening.starts[i / prior.size()];
      const double weight = prior[z] * std::exp(ln_factors[i] - top);
      sum += weight;
      states.by_node[k].push_back(
          {tightening.as_left_nm *
               (1 + screw_constant::as_left_sd * screw_constant::as_left_nodes[z]),
           std::max(0.0, static_cast<double>(model_.data.as_of.days) - start.days), weight});
    }
    for (State& state : states.by_node[k]) state.weight /= sum;
  }
  return states;
}

double FittingOutlook::seen_under(const Tightening& tightening) const {
  if (tightening.readings.empty()) return 0;
  double found_nm = minimum_nm_;
  for (const FoundTorque& reading : tightening.readings) {
    if (reading.day != tightening.readings.back().day) continue;
    if (reading.found != TorqueFound::clicked)
      found_nm = std::min(found_nm, reading.torque_nm);
    else if (reading.torque_nm >= minimum_nm_)
      return 0;  // it held as well: the day speaks both ways
  }
  const double error_nm =
      screw_constant::moved_error * std::max(found_nm, screw_constant::least_torque_nm);
  const double errors = (minimum_nm_ - found_nm) / error_nm;
  if (errors < screw_constant::clearly_under) return 0;
  return (1 - screw_constant::odd_share) * model_.likelihood->normal()(errors);
}

double FittingOutlook::loss_nm(std::size_t node, int strikes) const {
  return std::exp(nodes_.x[node] + model_.likelihood->wear() * strikes);
}

double FittingOutlook::chance(const std::vector<State>& states, double loss, double days) const {
  double sum = 0;
  double days_now = -1;
  double lost_nm = 0;
  for (const State& state : states) {
    if (state.days_now != days_now) {  // nodes of z stand together, start by start
      days_now = state.days_now;
      lost_nm = loss * std::log10(1 + days_now + days);
    }
    const double width = screw_constant::between_nodes * screw_constant::as_left_sd * state.left_nm;
    sum +=
        state.weight * model_.likelihood->normal()((minimum_nm_ - state.left_nm + lost_nm) / width);
  }
  return sum;
}

double FittingOutlook::chance(const ScrewStates& screw, std::size_t node, double days) const {
  return std::max(screw.seen_under,
                  chance(screw.by_node[node], loss_nm(node, screw.strikes), days));
}

double FittingOutlook::as_found(double days) const {
  double sum = 0;
  for (std::size_t k = 0; k < nodes_.x.size(); ++k) {
    if (nodes_.weight[k] < node_weight_least) continue;
    double all_good = 1;
    for (const ScrewStates& screw : screws_) all_good *= 1 - chance(screw, k, days);
    sum += nodes_.weight[k] * (1 - all_good);
  }
  return std::clamp(sum, 0.0, 1.0);
}

double FittingOutlook::as_left(double days) const {
  double sum = 0;
  for (std::size_t k = 0; k < nodes_.x.size(); ++k) {
    if (nodes_.weight[k] < node_weight_least) continue;
    double all_good = 1;
    for (const ScrewStates& screw : screws_)
      all_good *= 1 - chance(left_, loss_nm(k, screw.strikes), days);
    sum += nodes_.weight[k] * (1 - all_good);
  }
  return std::clamp(sum, 0.0, 1.0);
}

double FittingOutlook::as_found_of(std::size_t screw, double days) const {
  const ScrewStates& states = screws_[screw];
  double sum = 0;
  for (std::size_t k = 0; k < nodes_.x.size(); ++k)
    if (nodes_.weight[k] >= node_weight_least) sum += nodes_.weight[k] * chance(states, k, days);
  return std::clamp(sum, 0.0, 1.0);
}

std::optional<double> FittingOutlook::days_as_found(double level, double most_days) const {
  return first_day([this](double days) { return as_found(days); }, level, most_days);
}

std::optional<double> FittingOutlook::days_as_left(double level, double most_days) const {
  return first_day([this](double days) { return as_left(days); }, level, most_days);
}

}  // namespace kneerail::forecast
