#pragma once

// Posts and bays of a run, from the places of its parts: a portfolio says how far along the run
// each part stands, a register which post or bay it belongs to. A post stands where a post tube
// does; a bay lies between neighbouring posts. Rails, toe boards, infill and gates belong to their
// bay, everything else to the nearest post. A run without post tubes has
// posts where its parts begin.

#include <cstdint>
#include <vector>

#include "schema/exchange/checked_portfolio.h"

namespace kneerail::exchange {

struct PostPlan {
  std::int64_t chainage_mm = 0;
};

struct RunPlan {
  std::vector<PostPlan> posts;  ///< ascending; bay i lies between posts i and i + 1
};

struct Placement {
  std::int32_t run = 0;  ///< place in CheckedPortfolio::runs
  bool in_bay = false;
  std::int32_t parent = 0;    ///< post or bay of the run
  std::int64_t along_mm = 0;  ///< from the post, or from the middle of the bay
};

struct Layout {
  std::vector<RunPlan> runs;          ///< as CheckedPortfolio::runs
  std::vector<Placement> placements;  ///< as CheckedPortfolio::components
};

/// The middle of a bay as chainage, mm, rounded down: what `along` counts from.
std::int64_t bay_middle_mm(std::int64_t from_mm, std::int64_t to_mm);

Layout lay_out(const CheckedPortfolio& portfolio);

}  // namespace kneerail::exchange
