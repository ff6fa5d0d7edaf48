#pragma once

// The chance that a fitting's screws are under its lowest torque on a day.
//
//   P(T(d) < min) = sum over x, start, z of w Phi((min - T_left + a log10(1 + d)) / (0.385 x 0.06
//                   T_left))
//
// with the joint weights of screw_likelihood.h: x from all the fitting's tightenings, start and z
// from the screw's current one; the width fills the gap between two nodes of z. As left: re-torqued
// on the as-of day to the target, d = 0, z from its prior. Several screws: the first to fall
// governs, 1 - prod(1 - P) given x, then the sum over x. Rises with the day.
//
// A screw that was last found clearly under its minimum and not tightened since is under it: it got
// no tighter by itself. Its chance is at least Phi((min - found) / error of the reading), less the
// share of readings that can be anything, also where the model would sooner believe in such an odd
// reading than in so fast a loss.

#include <optional>
#include <vector>

#include "core/forecast/screws/screw_fit.h"

namespace kneerail::forecast {

class FittingOutlook {
 public:
  /// `left_nm`: what a re-torque today would leave it at. Every current tightening of the fitting
  /// has an as-left torque.
  FittingOutlook(const ScrewModel& model, int site, int fitting, double minimum_nm, double left_nm);

  /// Days from the as-of day, 0 or more.
  [[nodiscard]] double as_found(double days) const;
  [[nodiscard]] double as_left(double days) const;
  /// Of one screw alone.
  [[nodiscard]] double as_found_of(std::size_t screw, double days) const;

  /// The first day as found reaches that chance, within `most`; 0 where it has by now.
  [[nodiscard]] std::optional<double> days_as_found(double chance, double most_days) const;
  [[nodiscard]] std::optional<double> days_as_left(double chance, double most_days) const;

  [[nodiscard]] const RateNodes& nodes() const { return nodes_; }

 private:
  /// One screw given x: T_left and days since its start on the as-of day, with weights (sum 1).
  struct State {
    double left_nm;
    double days_now;
    double weight;
  };
  struct ScrewStates {
    int strikes = 0;
    double seen_under = 0;  ///< chance by its last reading alone; 0: not clearly under
    std::vector<std::vector<State>> by_node;
  };
  [[nodiscard]] double chance(const std::vector<State>& states, double loss_nm, double days) const;
  [[nodiscard]] double chance(const ScrewStates& screw, std::size_t node, double days) const;
  [[nodiscard]] double loss_nm(std::size_t node, int strikes) const;
  [[nodiscard]] double seen_under(const Tightening& tightening) const;
  ScrewStates states_of(const Tightening& tightening, const TighteningLikelihood& likelihood) const;

  const ScrewModel& model_;  ///< the caller's, outlives it
  double minimum_nm_;
  RateNodes nodes_;
  std::vector<ScrewStates> screws_;
  std::vector<State> left_;
};

}  // namespace kneerail::forecast
