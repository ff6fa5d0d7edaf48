#pragma once

// A fit as bytes, and back: what one process reckons of all sites and others say of each. The same
// program reads them as wrote them, from bytes that a digest has found whole.

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/forecast/whole/portfolio_fit.h"

namespace kneerail::forecast {

std::string bytes_of(const PortfolioFit& fit);
/// Errors: corrupt, without saying of what.
Result<PortfolioFit> fit_from_bytes(std::string_view bytes);

std::string bytes_of(const ForecastHead& head);
Result<ForecastHead> head_from_bytes(std::string_view bytes);

/// LimitForecast::part as it is: a place in the portfolio of the rows.
std::string bytes_of(const ForecastRows& rows);
Result<ForecastRows> rows_from_bytes(std::string_view bytes);

}  // namespace kneerail::forecast
