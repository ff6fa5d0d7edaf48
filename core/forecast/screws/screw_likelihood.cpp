#include "core/forecast/screws/screw_likelihood.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/screws/constants.h"

namespace kneerail::forecast {

namespace {

using statistics::NormalTable;

constexpr double inverse_root_two_pi = 0.39894228040143267794;

/// A product of many factors that neither under- nor overflows.
class LnProduct {
 public:
  void times(double factor) {
    product_ *= factor;
    if (product_ < 1e-200 || product_ > 1e200) {
      ln_ += std::log(product_);
      product_ = 1;
    }
  }
  [[nodiscard]] double ln() const { return ln_ + std::log(product_); }

 private:
  double product_ = 1;
  double ln_ = 0;
};

double mixed(double factor, double odd) {
  return (1 - screw_constant::odd_share) * factor + screw_constant::odd_share * odd;
}

}  // namespace

std::array<double, 5> as_left_weights() {
  std::array<double, 5> weights{};
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double z = screw_constant::as_left_nodes[i];
    weights[i] = std::exp(-z * z / 2);
    sum += weights[i];
  }
  for (double& weight : weights) weight /= sum;
  return weights;
}

TighteningLikelihood::TighteningLikelihood(const Tightening& tightening,
                                           const std::vector<UsualSetting>& usual_settings)
    : usual_settings_(&usual_settings),
      as_left_nm_(tightening.as_left_nm),
      strikes_(tightening.strikes),
      starts_(tightening.starts.size()) {
  for (const FoundTorque& reading : tightening.readings)
    readings_.push_back({reading.found, reading.torque_nm, reading.wrench_set_nm.value_or(0)});
  for (const Date start : tightening.starts)
    for (const FoundTorque& reading : tightening.readings)
      log_days_.push_back(std::log10(1.0 + (reading.day.days - start.days)));
}

double TighteningLikelihood::no_click(const NormalTable& normal, double torque_nm,
                                      double wrench_set_nm) const {
  const double error =
      screw_constant::click_error * std::max(torque_nm, screw_constant::least_torque_nm);
  if (wrench_set_nm > 0) return normal((wrench_set_nm - torque_nm) / error);
  if (usual_settings_->empty()) return 1;
  double sum = 0;
  for (const UsualSetting& usual : *usual_settings_)
    sum += usual.share * normal((usual.torque_nm - torque_nm) / error);
  return sum;
}

double TighteningLikelihood::factor(const NormalTable& normal, const Row& row,
                                    double torque_nm) const {
  const double scale = std::max(torque_nm, screw_constant::least_torque_nm);
  const double error = screw_constant::moved_error * scale;
  switch (row.found) {
    case TorqueFound::clicked:
      return mixed(normal((torque_nm - row.torque_nm) / (screw_constant::click_error * scale)),
                   screw_constant::odd_click);
    case TorqueFound::moved: {
      const double z = (row.torque_nm - torque_nm) / error;
      const double density = inverse_root_two_pi * std::exp(-z * z / 2) / error;
      return mixed(density * no_click(normal, torque_nm, row.wrench_set_nm), 1 / as_left_nm_);
    }
    case TorqueFound::free:
      return mixed(normal((row.torque_nm - torque_nm) / error), screw_constant::odd_free);
  }
  return 1;
}

void TighteningLikelihood::ln_factors(const NormalTable& normal, double loss_nm,
                                      std::vector<double>& out) const {
  out.clear();
  for (std::size_t start = 0; start < starts_; ++start) {
    const double* log_days = log_days_.data() + start * readings_.size();
    for (const double z : screw_constant::as_left_nodes) {
      const double left_nm = as_left_nm_ * (1 + screw_constant::as_left_sd * z);
      LnProduct product;
      for (std::size_t i = 0; i < readings_.size(); ++i)
        product.times(factor(normal, readings_[i], std::max(0.0, left_nm - loss_nm * log_days[i])));
      out.push_back(product.ln());
    }
  }
}

double TighteningLikelihood::ln_likelihood(const NormalTable& normal, double loss_nm,
                                           std::vector<double>& scratch) const {
  static const std::array<double, 5> weights = as_left_weights();
  ln_factors(normal, loss_nm, scratch);
  const double top = *std::max_element(scratch.begin(), scratch.end());
  double sum = 0;
  for (std::size_t i = 0; i < scratch.size(); ++i)
    sum += weights[i % weights.size()] * std::exp(scratch[i] - top);
  return top + std::log(sum / static_cast<double>(starts_));
}

ScrewLikelihood::ScrewLikelihood(const ScrewData& data) : usual_settings_(data.usual_settings) {
  for (const Fitting& fitting : data.fittings) {
    Own own;
    for (const Screw& screw : fitting.screws) {
      for (const Tightening& tightening : screw.tightenings)
        if (!tightening.readings.empty() || &tightening == &screw.tightenings.back())
          own.tightenings.emplace_back(tightening, usual_settings_);
      own.current.push_back(own.tightenings.size() - 1);
    }
    fittings_.push_back(std::move(own));
  }
}

bool ScrewLikelihood::tells(int part) const {
  const auto& own = fittings_[static_cast<std::size_t>(part)].tightenings;
  return std::any_of(own.begin(), own.end(), [](const auto& t) { return t.tells(); });
}

bool ScrewLikelihood::depends(int part, int k) const {
  const auto& own = fittings_[static_cast<std::size_t>(part)].tightenings;
  return k == 0 && std::any_of(own.begin(), own.end(),
                               [](const auto& t) { return t.tells() && t.strikes() > 0; });
}

void ScrewLikelihood::ln_likelihood(int part, int shifted, std::span<const double> x,
                                    std::span<double> out) const {
  const double wear = wear_ + (shifted == 0 ? screw_constant::wear_step : 0);
  std::vector<double> scratch;
  std::fill(out.begin(), out.end(), 0.0);
  for (const TighteningLikelihood& own : fittings_[static_cast<std::size_t>(part)].tightenings) {
    if (!own.tells()) continue;
    for (std::size_t k = 0; k < x.size(); ++k)
      out[k] += own.ln_likelihood(normal_, std::exp(x[k] + wear * own.strikes()), scratch);
  }
}

const TighteningLikelihood& ScrewLikelihood::current(int part, std::size_t screw) const {
  const Own& own = fittings_[static_cast<std::size_t>(part)];
  return own.tightenings[own.current[screw]];
}

}  // namespace kneerail::forecast
