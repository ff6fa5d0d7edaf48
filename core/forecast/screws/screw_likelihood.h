#pragma once

// What torque readings say of a screw's rate of loss.
//
//   T(d) = max(0, T_left - a log10(1 + d))      d days since the tightening, N m
//   T_left = as-left torque x (1 + 0.06 z)      z standard normal, on 5 equal nodes in +-2.2
//   a = exp(x + wear * strikes)                 N m per tenfold of days; x belongs to the fitting
//
// All readings between two restarts share T_left: for each node of z (and each likely start, where
// the day is not known) their factors are multiplied, then summed over the nodes. With y the
// reading, e = 0.05 max(T, 4) for a click and 0.085 max(T, 4) else:
//
//   clicked, held at least y    Phi((T - y) / e)
//   moved at about y            phi((y - T) / e) / e  x  P(no click at T)
//   free, under y               Phi((y - T) / e)
//   P(no click at T) = sum over settings c with share f of f Phi((c - T) / (0.05 max(T, 4)))
//
// A reading is only taken where the screw moved, and without the last factor that choice makes the
// loss look smaller. c is the wrench's setting at that reading; where it is not recorded, the four
// commonest click values of the portfolio with their shares. To each factor 0.2 % of "anything": a
// click 0.5, moved 1/(as-left), free 0.1.
// Source of the law: torque and preload fall in proportion to log time after tightening by
// embedding and creep (VDI 2230 part 1, on embedding; observed slopes, not constants, are used).
// Error of a wrench: ISO 6789-1, 4 %. Censored likelihood: Tobin (1958).
// Limits: loss is gradual; a screw undone by hand between two checks is "anything".

#include <span>
#include <vector>

#include "core/forecast/screws/tightenings.h"
#include "core/forecast/shared_rate.h"
#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

/// Readings and starts of one tightening with what does not change with x worked out.
class TighteningLikelihood {
 public:
  TighteningLikelihood(const Tightening& tightening,
                       const std::vector<UsualSetting>& usual_settings);

  /// ln of the product of its readings' factors, for each start and, within it, each node of z;
  /// `out` has starts x nodes of z. `loss_nm` is a, over 0.
  void ln_factors(const statistics::NormalTable& normal, double loss_nm,
                  std::vector<double>& out) const;
  /// ln likelihood at that loss: the mean over starts and over z.
  [[nodiscard]] double ln_likelihood(const statistics::NormalTable& normal, double loss_nm,
                                     std::vector<double>& scratch) const;

  [[nodiscard]] bool tells() const { return !readings_.empty(); }
  [[nodiscard]] int strikes() const { return strikes_; }
  [[nodiscard]] std::size_t starts() const { return starts_; }

 private:
  struct Row {
    TorqueFound found;
    double torque_nm;
    double wrench_set_nm;  ///< 0: not recorded
  };
  [[nodiscard]] double no_click(const statistics::NormalTable& normal, double torque_nm,
                                double wrench_set_nm) const;
  [[nodiscard]] double factor(const statistics::NormalTable& normal, const Row& row,
                              double torque_nm) const;

  const std::vector<UsualSetting>* usual_settings_;  ///< of the constructor's caller, outlives it
  double as_left_nm_;
  int strikes_;
  std::size_t starts_;
  std::vector<Row> readings_;
  std::vector<double> log_days_;  ///< log10(1 + d), by start, then reading
};

/// Weights of the nodes of z, sum 1.
std::array<double, 5> as_left_weights();

/// All fittings, for the shared-rate engine. Own parameter 0: wear, ln a per strike.
class ScrewLikelihood final : public RateLikelihood {
 public:
  explicit ScrewLikelihood(const ScrewData& data);
  // Its tightenings look at its own usual settings.
  ScrewLikelihood(const ScrewLikelihood&) = delete;
  ScrewLikelihood& operator=(const ScrewLikelihood&) = delete;

  void begin_pass(std::span<const double> own) override { wear_ = own[0]; }
  [[nodiscard]] bool tells(int part) const override;
  [[nodiscard]] bool depends(int part, int k) const override;
  void ln_likelihood(int part, int shifted, std::span<const double> x,
                     std::span<double> out) const override;

  [[nodiscard]] const statistics::NormalTable& normal() const { return normal_; }
  [[nodiscard]] double wear() const { return wear_; }
  /// The current tightening of a screw of that fitting.
  [[nodiscard]] const TighteningLikelihood& current(int part, std::size_t screw) const;

 private:
  struct Own {
    std::vector<TighteningLikelihood> tightenings;  ///< with readings, or current
    std::vector<std::size_t> current;               ///< by screw, place in tightenings
  };
  statistics::NormalTable normal_;
  std::vector<Own> fittings_;
  std::vector<UsualSetting> usual_settings_;
  double wear_ = 0;
};

}  // namespace kneerail::forecast
