#pragma once

// A chain of states in continuous time that was only looked at now and then (panel data), with any
// steps between states: who was in r and t later in s went there by a way nobody saw,
// P_rs(t) = exp(Q t)_rs. Where the time of arrival in s is known to the day (a death, a failure),
// the likelihood is sum_k P_rk(t) q_ks over the states k before it.
//
// Likelihood and its slopes by the eigenvectors of Q (Kalbfleisch and Lawless 1985, J. Am. Stat.
// Assoc. 80, 863-871, equations 3.2 and 3.3); where Q has no full set of them (equal rates in a
// progressive chain) by scaling and squaring of the matrix and its slopes together. The rates are
// fitted as logarithms by steps of the outer product of the subjects' scores (Berndt, Hall, Hall
// and Hausman 1974), halved until the likelihood rises.
// Limits: every step's rate is constant in time and the same for all subjects.

#include <span>
#include <vector>

#include "core/base/result.h"

namespace kneerail::statistics {

/// A step that the chain can make; states count from 1.
struct ChainStep {
  int from = 1;
  int to = 2;
};

enum class Arrival { some_time_before, exactly_then };

/// Two looks at one subject, one after the other.
struct PanelPair {
  int subject = 0;  ///< 0, 1, 2 ...: pairs of one subject are not independent in their errors
  int from = 1;
  int to = 1;
  double years = 0;
  Arrival arrival = Arrival::some_time_before;
};

struct PanelData {
  int states = 0;
  std::vector<ChainStep> steps;
  std::vector<PanelPair> pairs;
};

struct PanelFit {
  std::vector<double> rates;  ///< per year, by step
  std::vector<double>
      ln_rate_errors;  ///< standard errors of ln rate, from the outer product; inf: rate none
  double minus_two_ln_likelihood = 0;
  int passes = 0;
  bool settled = false;  ///< the last pass moved the criterion by less than 1e-9
};

/// Errors: invalid_input (a state or time out of range, a step named twice), not_estimable (no pair
/// tells of a step; a pair that no way leads through).
Result<PanelFit> fit_panel_chain(const PanelData& data);

/// -2 ln likelihood of the pairs at given rates; inf where a pair cannot happen.
double panel_criterion(const PanelData& data, std::span<const double> rates);

/// P(t), states by states, row by row.
std::vector<double> panel_chances(int states, std::span<const ChainStep> steps,
                                  std::span<const double> rates, double t);

}  // namespace kneerail::statistics
