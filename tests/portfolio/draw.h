#pragma once

// Chance for the invented world, from one seed.

#include <cmath>

#include "core/base/world.h"
#include "core/statistics/normal.h"

namespace kneerail::portfolio_test {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}

  double uniform() { return random_.uniform(); }
  double uniform(double low, double high) { return low + (high - low) * random_.uniform(); }
  bool happens(double chance) { return random_.uniform() < chance; }
  int whole(int low, int high) { return static_cast<int>(random_.between(low, high)); }
  double normal(double sd) {
    return sd * statistics::normal_quantile((random_.uniform() + 1e-12) / (1 + 2e-12));
  }
  /// Mean 1.
  double factor(double ln_sd) { return std::exp(normal(ln_sd) - ln_sd * ln_sd / 2); }

 private:
  SplitMix64 random_;
};

}  // namespace kneerail::portfolio_test
