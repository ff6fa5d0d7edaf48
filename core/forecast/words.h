#pragma once

// Plain words for numbers of the forecast.

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "core/forecast/coating_forecast.h"
#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

std::string concat(std::initializer_list<std::string_view> parts);

/// "23 years", "14 months" under two years, "3 years ago", "no upper bound". Always rounded down to
/// the earlier: no digit promises more than was computed.
std::string life_words(double years);

/// "18 %"; "under 1 %" and "over 99 %" of what is only likely: never 0 or 100 %.
std::string chance_words(double chance);

/// "12.3", "0.45", "0.0031": one digit after the point, or as many as the first two need.
std::string two_digits(double number);

/// "No reading of its own: all from its run, zone and site.", or what share its own carry.
std::string own_share_words(int readings, double share);

/// "in about 23 years (80 %: 14 to 39 years)": never a date without its 80 % interval, and a band
/// whose ends are the same words is said once: "about 3 years ago (80 %: 3 years ago)".
std::string life_with_band(const std::array<double, 7>& years);

/// The flag of a part that is said to be put up after the as-of date; none where it is not.
std::optional<std::string> put_up_later_words(const Part& part, Date as_of);

}  // namespace kneerail::forecast
