#pragma once

// Linear combinations of a site's shared effects, their estimates and covariances.

#include <array>

#include "core/forecast/shared_effects.h"

namespace kneerail::forecast {

/// Sum of coefficient times unknown over core and globals, and over the two of one run.
struct Combination {
  std::array<int, 6> place{};
  std::array<double, 6> coefficient{};
  int terms = 0;
  std::array<double, run_unknowns> run{};

  void add(int at, double by) {
    place[static_cast<std::size_t>(terms)] = at;
    coefficient[static_cast<std::size_t>(terms++)] = by;
  }
};

Combination session_combination(const CoreLayout& layout, int session, double thickness_um);
Combination rate_combination(const GroupTerms& terms);
Combination start_combination(const GroupTerms& terms);

class SharedCovariance {
 public:
  SharedCovariance(const SiteEffects& site, const CoreLayout& layout, int run)
      : site_(site),
        size_(static_cast<std::size_t>(layout.with_globals())),
        run_(static_cast<std::size_t>(run)) {}

  [[nodiscard]] double estimate(const Combination& c) const;
  [[nodiscard]] double covariance(const Combination& a, const Combination& b) const;

 private:
  [[nodiscard]] double with_run(std::size_t run_row, const Combination& c) const;

  const SiteEffects& site_;
  std::size_t size_;
  std::size_t run_;
};

}  // namespace kneerail::forecast
