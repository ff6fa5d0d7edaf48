#pragma once

// Whether what was read back can be reckoned with: every place lies in the list it is a place in,
// and lists that belong together are as long as one another. A digest finds bytes whole, and says
// nothing of who wrote them.

#include <cstddef>

#include "core/forecast/whole/portfolio_fit.h"

namespace kneerail::forecast {

bool fits_together(const PortfolioFit& fit);

/// Whether the fit's parts are places in a portfolio of so many.
bool within(const PortfolioFit& fit, std::size_t parts);

}  // namespace kneerail::forecast
