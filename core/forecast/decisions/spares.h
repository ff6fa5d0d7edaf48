#pragma once

// How many spares of each type to hold at each depot, so that a part that fails finds one there.
//
//   Lambda_d   parts of the type in the depot's sites that come to be replaced within its lead
//              time, in draw d (common_draws.h): sum of (F_d(lead) - F_d(0)) / (1 - F_d(0)); and
//              what one strike breaks: (2 + replaced at re-erecting)/(100 + struck) times the parts
//              of the type in the depot's largest seasonal run; a run that was struck and whose
//              parts of the type stayed up does not count
//   hold       the least k with mean over d of P(Poisson(Lambda_d) <= k) at least the owner's
//              chance (limit 12)
//   order      k and what is past already, less what is on the shelf and on order
//
// The mean over draws, not the Poisson of the mean: parts of a zone fail together.
// Lambda 0.8, 1.6, 3.6 at 95 %: hold 6, where the mean 2.0 alone would say 5.
// Parts that are past already are in the order, not in what is held. Parts that nobody knows to be
// past but that may be so, F_d(0), are in neither: their mean number is said. A site that asks for
// 100 % asks for more than any number: its parts count, the chance is that of the other sites.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/decisions/owner_figures.h"
#include "core/forecast/decisions/replacement.h"
#include "core/forecast/parallel.h"

namespace kneerail::forecast {

/// The least number to hold; `means` are the Lambda_d, `chance` over 0 and under 1.
int spares_to_hold(std::span<const double> means, double chance);
/// The chance that so many are enough.
double enough_chance(std::span<const double> means, int held);

struct SpareLine {
  std::string depot;  ///< as the portfolio calls it; empty: the sites have none
  std::string type;
  int parts = 0;             ///< in the depot's sites
  int not_answered = 0;      ///< of those neither a wall nor a grade is reckoned
  int by_grade_alone = 0;    ///< of those tubes without a wall reckoned
  int past = 0;              ///< of those to be replaced now, not in what is held
  double may_be_past = 0;    ///< mean number of the others that are past, unseen
  double expected = 0;       ///< mean Lambda
  double by_strike = 0;      ///< of which what one strike breaks
  std::optional<int> hold;   ///< none: `words` say what is missing
  double enough = 0;         ///< the chance with that many
  int sure_sites = 0;        ///< of the depot's with such parts, that ask for 100 %
  std::optional<int> shelf;  ///< none: never counted
  int on_order = 0;
  std::optional<int> order;   ///< with those to be replaced now
  std::vector<double> means;  ///< Lambda_d; empty without a lead time
  std::string words;
};

/// A line for each depot and component type with parts, by depot, the most expected first; parts
/// without a type are in none. Errors: cancelled.
Result<std::vector<SpareLine>> spares(const Replacements& replacements, const OwnerFigures& figures,
                                      const Workers& workers = {});

}  // namespace kneerail::forecast
