#pragma once

// Walls for the tubes of an invented portfolio: zinc that ends when its truth says, steel after it,
// and hollows of which some rust from inside. The world is not the model's: hollows let water in at
// the start or years later, and go at an even share of the outside's own loss.

#include <cstdint>
#include <vector>

#include "tests/support/made_portfolio.h"

namespace kneerail::forecast {

struct WallRecipe {
  std::uint64_t seed = 1;
  double open_posts = 0.5;  ///< share of posts whose hollow rusts
  double measured = 0.8;    ///< chance that a tube's wall is read on a visit
  double limit_share = 0.8;
};

struct MadeWalls {
  Portfolio portfolio;
  std::vector<double> wall_years;  ///< to the limit from the as-of date, by place of the part
  std::vector<bool> open;
};

/// Adds to every post and rail tube of what was made its wall, limit and readings.
MadeWalls made_walls(const Made& made, const WallRecipe& recipe);

}  // namespace kneerail::forecast
