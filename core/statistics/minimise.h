#pragma once

// The lowest point of a smooth function of a few variables that gives no derivatives: Nelder and
// Mead's simplex (1965, Computer Journal 7, 308-313) begun again from where it stopped until that
// no longer helps, then Newton steps by central differences, kept only where they go down.

#include <functional>
#include <span>
#include <vector>

namespace kneerail::statistics {

using Objective = std::function<double(std::span<const double>)>;

struct Minimum {
  std::vector<double> at;
  double value = 0;
  int evaluations = 0;
  bool settled = false;  ///< the last restart moved the value by less than `tolerance`
};

struct MinimiseOptions {
  double first_step = 0.5;
  double tolerance = 1e-10;  ///< of the value
  int evaluations_max = 20000;
};

/// The objective may answer inf where it is not defined.
Minimum minimise(const Objective& objective, std::vector<double> start,
                 const MinimiseOptions& options = {});

}  // namespace kneerail::statistics
