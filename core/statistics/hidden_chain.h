#pragma once

// A chain of states in continuous time seen now and then, and not always seen right: behind each
// look there is a true state, and the look says it with errors of known kinds and unknown chances.
//   L = sum over true states of prod P(true after t | true before) E(seen | true)
// by the forward recursion for hidden chains at uneven times (Jackson et al. 2003, J. R. Stat. Soc.
// D 52, 193-209), its slopes carried along with it. Rates are fitted as logarithms and the errors
// of each state as ln (chance / chance of seeing it right), by steps of the outer product of the
// subjects' scores, halved until the likelihood rises.
// Units: years and 1/yr, or any other of time. Rates and errors are constant in time and the same
// for all subjects. Each subject begins in state 1.
// Limits: the likelihood of hidden chains may have several tops, and what is found is the one
// uphill of the start; an error that never happens goes towards 0 and is not told from it.

#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/statistics/panel_chain.h"

namespace kneerail::statistics {

/// Looks of a subject stand together, in order of time.
struct HiddenLook {
  int subject = 0;
  double years = 0;  ///< since the look before it; the first: since the subject began in state 1
  int seen = 1;      ///< states count from 1
};

struct HiddenData {
  int states = 0;
  std::vector<ChainStep> steps;   ///< of the true state
  std::vector<ChainStep> errors;  ///< from the true state to the one seen in its place
  std::vector<HiddenLook> looks;
};

/// By step, per year; and by error, the chance of seeing it for the true state.
struct HiddenParameters {
  std::vector<double> rates;
  std::vector<double> errors;
};

struct HiddenFit {
  HiddenParameters found;
  double minus_two_ln_likelihood = 0;
  int passes = 0;
  bool settled = false;  ///< nothing to speak of was left to gain
};

/// `start`: rates and chances above 0. Errors: invalid_input (a state or time out of range, a step
/// or an error named twice, a start that does not fit the data), not_estimable (no look; looks that
/// cannot happen).
Result<HiddenFit> fit_hidden_chain(const HiddenData& data, const HiddenParameters& start);

/// -2 ln likelihood at given rates and errors; inf where the looks cannot happen. The data and the
/// parameters as fit_hidden_chain() asks for them.
double hidden_chain_criterion(const HiddenData& data, const HiddenParameters& at);

}  // namespace kneerail::statistics
