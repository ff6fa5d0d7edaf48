#pragma once

// The standard deviation of shared effects, estimated from their own second moments with a weak
// prior so that it neither collapses nor runs away (an EM step; Dempster, Laird and Rubin 1977).

#include <algorithm>
#include <cmath>

#include "core/forecast/constants.h"

namespace kneerail::forecast {

/// Second moments (estimate squared plus variance) of effects of one kind.
struct Moments {
  double sum = 0;
  double count = 0;
  void add(double square) {
    sum += square;
    count += 1;
  }
};

/// v <- (sum + weight * first^2) / (count + weight), as a standard deviation within its bounds.
inline double moved(const constant::Spread& spread, const Moments& moments) {
  const double n = moments.count + spread.weight;
  if (n <= 0) return spread.first;
  const double variance = (moments.sum + spread.weight * spread.first * spread.first) / n;
  return std::clamp(std::sqrt(variance), spread.least, spread.most);
}

}  // namespace kneerail::forecast
