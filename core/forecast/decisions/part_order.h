#pragma once

// The parts of a site, or of all, by their identifiers: so that sums over them do not depend on the
// order of the input.

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// Places in Portfolio::parts. An empty site: all.
inline std::vector<std::int32_t> parts_in_order(const Portfolio& portfolio,
                                                const std::string& site) {
  std::vector<std::int32_t> order;
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i)
    if (site.empty() || portfolio.parts[i].site == site)
      order.push_back(static_cast<std::int32_t>(i));
  std::sort(order.begin(), order.end(), [&](std::int32_t a, std::int32_t b) {
    return portfolio.parts[static_cast<std::size_t>(a)].id <
           portfolio.parts[static_cast<std::size_t>(b)].id;
  });
  return order;
}

}  // namespace kneerail::forecast
