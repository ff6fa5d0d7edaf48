#include "core/forecast/words.h"

#include <cmath>

#include "core/base/date.h"
#include "core/base/text.h"

namespace kneerail::forecast {

namespace {

std::string counted(double number, std::string_view one) {
  const auto whole = static_cast<long>(number);
  return concat({std::to_string(whole), " ", one, whole == 1 ? "" : "s"});
}

}  // namespace

std::string concat(std::initializer_list<std::string_view> parts) {
  std::string out;
  for (const std::string_view part : parts) out += part;
  return out;
}

std::string life_words(double years) {
  if (std::isinf(years)) return "no upper bound";
  const double size = std::abs(years);
  const bool in_years = size >= 2;
  const double units = in_years ? size : 12 * size;
  if (years >= 0)
    return units < 1 ? "under a month" : counted(std::floor(units), in_years ? "year" : "month");
  return concat({counted(std::ceil(units), in_years ? "year" : "month"), " ago"});
}

std::string chance_words(double chance) {
  if (chance > 0.99) return "over 99 %";
  if (chance < 0.01) return "under 1 %";
  return std::to_string(std::lround(100 * chance)) + " %";
}

std::string two_digits(double number) {
  int decimals = 1;
  constexpr int most_decimals = 6;
  for (double size = std::abs(number); size > 0 && size < 0.995 && decimals < most_decimals;
       size *= 10)
    ++decimals;
  return fixed(number, decimals);
}

std::string own_share_words(int readings, double share) {
  if (readings == 0) return "No reading of its own: all from its run, zone and site.";
  return concat({"Own readings carry ", chance_words(share), ", its run, zone and site the rest."});
}

std::string life_with_band(const std::array<double, 7>& years) {
  const double middle = years[3];
  std::string about = middle >= 0 ? "in about " : "about ";
  if (middle >= 0 && 12 * middle < 1) about = "in ";  // "in under a month"
  if (std::isinf(middle)) about = "with ";
  const std::string low = life_words(years[1]);
  const std::string high = life_words(years[5]);
  const bool both_in_years = years[1] >= 2 && !std::isinf(years[5]);
  std::string band = high;
  if (low != high)
    band = concat({both_in_years ? std::to_string(static_cast<long>(std::floor(years[1]))) : low,
                   " to ", high});
  return concat({about, life_words(middle), " (80 %: ", band, ")"});
}

std::optional<std::string> put_up_later_words(const Part& part, Date as_of) {
  if (!part.installed || *part.installed <= as_of) return std::nullopt;
  return concat({"its installation date, ", to_text(*part.installed),
                 ", is after the forecast's: reckoned as not known; put it right"});
}

}  // namespace kneerail::forecast
