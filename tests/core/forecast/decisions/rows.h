#pragma once

// Rows of a forecast as a test wants them.

#include <array>
#include <limits>

#include "core/forecast/coating_forecast.h"

namespace kneerail::tests {

inline constexpr double never = std::numeric_limits<double>::infinity();

inline forecast::LimitForecast row_of(std::array<double, 7> years, std::array<double, 4> p_by,
                                      forecast::Limit limit = forecast::Limit::coating_exhausted,
                                      std::int32_t part = 0) {
  forecast::LimitForecast row;
  row.part = part;
  row.limit = limit;
  row.answered = true;
  row.years = years;
  row.p_by = p_by;
  row.readings_used = 1;
  return row;
}

}  // namespace kneerail::tests
