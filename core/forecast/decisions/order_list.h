#pragma once

// How many parts of each kind and size will have to be replaced, year by year: what to order.
//
//   expected in year y   sum over parts not yet past of [F(y+1) - F(y)] / (1 - F(0)), and in year 0
//                        every part that is past already (replacement.h)
//   p10, p50, p90        of the count: in each common draw the parts are independent trials with
//                        the chances of that draw (Poisson-binomial), and the count is the mixture
//                        of the draws. Parts share zones, so it is wider than independent parts
//                        would be.
//
// The share F(0) of a part that nobody knows to be past is in no year: it may be past already,
// unseen. Those shares are summed beside the count, and a look at the parts tells.
// A part is counted once: what its replacement does later is the life cost's (life_cost.h).

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/decisions/replacement.h"
#include "core/forecast/parallel.h"
#include "core/statistics/counts.h"

namespace kneerail::forecast {

struct ReplacedCount {
  double expected = 0;
  int p10 = 0;
  int p50 = 0;
  int p90 = 0;
};

struct OrderLine {
  std::string type;          ///< component type as the portfolio calls it; empty: not said
  std::int32_t example = 0;  ///< a part of it, for its kind and size
  int parts = 0;             ///< with an answer
  int not_answered = 0;      ///< besides, of which neither wall nor grade is reckoned
  int past = 0;              ///< of the parts so many are past already, in year 0
  int seen_past = 0;         ///< of those so many were seen at the grade to replace at
  double may_be_past = 0;    ///< mean number of the others that are past, unseen; in no year
  int by_grade_alone = 0;    ///< of the parts so many are tubes without a wall reckoned
  std::vector<ReplacedCount> years;
  ReplacedCount all;  ///< of all the years
};

struct OrderList {
  /// By the expected count of all years, the most first; those without an answer last.
  std::vector<OrderLine> lines;
  ReplacedCount all;
  std::vector<ReplacedCount> years;
  int parts = 0;
  int past = 0;
  int not_answered = 0;  ///< parts of which neither wall nor grade is reckoned
  double may_be_past = 0;
  std::map<std::string, int> by_grade_alone;  ///< tubes, by why no wall is reckoned
  int bare = 0;                               ///< tubes of bare steel (common_draws.h, limits)
};

struct OrderQuestion {
  std::string site = {};  ///< as the portfolio calls it; empty: all
  int years = 5;          ///< 1 to 50
  Workers workers = {};
};

/// Errors: invalid_input (years), cancelled. The same digits for any order of rows and number of
/// threads.
Result<OrderList> order_list(const Replacements& replacements, const OrderQuestion& question);

/// The least count whose chance of being enough, the mean over trials, is at least `level`.
int count_quantile(const std::vector<statistics::PoissonBinomial>& trials, double level);

}  // namespace kneerail::forecast
