#pragma once

// What a run or a site costs over a whole life: parts, labour, closures, visits and strikes, as
// present value.
//
//   cost = sum over years y of (1 + d)^-y [ sum over types of n(y) (price + hours cost of an hour
//          + days closed cost of a closed day) + visits cost of a visit
//          + strikes hours cost of an hour ]
//   n(y) = first(y) + sum over s < y of n(s) [F_new(y - s + 1/2) - F_new(y - s - 1/2)]
//   days closed = hours/8 + lead time P(earlier ones in the lead time took all that is held)
//
// first(y): as in the order list (order_list.h), or, where everything is put up new today, F_new.
// F_new: of a new part in the same place (replacement.h); a replacement is itself replaced in its
// time. d is limit 15, the costs limit 16. Each common draw (common_draws.h) gives a cost, normal
// about its mean with the variance of independent replacements (Poisson); p10, p50 and p90 are of
// the mixture of the draws. What the owner has no figure for is left out and named: "without
// labour for 3 types".
//
// Limits: prices as today; the first putting up is not in it; visits and strikes as often as now.

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/decisions/owner_figures.h"
#include "core/forecast/decisions/replacement.h"
#include "core/forecast/decisions/spares.h"
#include "core/forecast/decisions/what_if.h"
#include "core/forecast/parallel.h"

namespace kneerail::forecast {

enum class LifeFrom {
  as_it_stands,  ///< from the parts of today, with their readings
  all_new        ///< every part put up new today
};

struct LifeCostQuestion {
  std::string site = {};  ///< as the portfolio calls it
  int years = 30;         ///< 1 to 100
  LifeFrom from = LifeFrom::as_it_stands;
  const Finish* finish = nullptr;  ///< of new parts; null: each part's own
  Workers workers = {};
};

/// Of one draw or of the mean: present value by what it is spent on.
struct CostShares {
  double parts = 0;
  double labour = 0;
  double closures = 0;
  double visits = 0;
  double strikes = 0;
  [[nodiscard]] double sum() const { return parts + labour + closures + visits + strikes; }
};

struct LifeCost {
  std::string site;
  int years = 0;
  int parts = 0;
  int not_answered =
      0;           ///< of those neither a wall nor a grade is reckoned: they cost nothing here
  int as_now = 0;  ///< of those another finish means nothing for: no zinc, or no minimum
  double may_be_past = 0;   ///< mean number of parts past already, unseen, that is in no year
  double replacements = 0;  ///< mean number, not discounted
  CostShares mean;
  double p10 = 0;
  double p50 = 0;
  double p90 = 0;
  std::vector<std::string> without;  ///< "labour for 3 of 5 types"; in the order of the shares
  std::string words;
};

/// `lines` are the spares of the same replacements; empty: no spare is waited for, and that is
/// said. Errors: invalid_input (years), cancelled.
Result<LifeCost> life_cost(const Replacements& replacements, const OwnerFigures& figures,
                           const std::vector<SpareLine>& lines, const LifeCostQuestion& question);

}  // namespace kneerail::forecast
