#include "schema/exchange/slips.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/date.h"
#include "core/base/text.h"

namespace kneerail::exchange {
namespace {

std::string range_text(const Measure& measure) {
  return scaled_to_text(measure.low, measure.digits) + " to " +
         scaled_to_text(measure.high, measure.digits) +
         (measure.unit.empty() ? "" : std::string(" ").append(measure.unit));
}

bool within(double value, const Measure& measure) {
  const double scaled = value * std::pow(10.0, measure.digits);
  return scaled >= static_cast<double>(measure.low) && scaled <= static_cast<double>(measure.high);
}

std::string meant(double value) {
  return std::string(" Was ") + shortest(std::round(value * 1000) / 1000) + " meant?";
}

/// Micrometres typed in millimetres: 0.072 for 72.
std::string thousand_meant(double value, const Measure& measure) {
  const double micrometres = value * 1000;
  if (measure.unit != "µm" || value >= 0.5 || micrometres < 1 || !within(micrometres, measure))
    return {};
  return std::string(" Millimetres typed as µm?") + meant(micrometres);
}

std::string comma_fault(std::string_view text) {
  std::string pointed(text);
  std::replace(pointed.begin(), pointed.end(), ',', '.');
  if (std::count(text.begin(), text.end(), ',') == 1 && double_from_text(pointed))
    return "a decimal comma. Write " + pointed + ", with a point.";
  return "is not a number. Write digits with a point and no other mark.";
}

struct Parts {
  std::int64_t first, second, third;
};

/// Three numbers between like marks: 30.06.2026, 30/6/26, 2026-30-06.
std::optional<Parts> three_numbers(std::string_view text) {
  const auto mark = text.find_first_of("./-");
  if (mark == std::string_view::npos) return std::nullopt;
  const auto next = text.find(text[mark], mark + 1);
  if (next == std::string_view::npos) return std::nullopt;
  const auto first = int_from_text(text.substr(0, mark));
  const auto second = int_from_text(text.substr(mark + 1, next - mark - 1));
  const auto third = int_from_text(text.substr(next + 1));
  if (!first || !second || !third) return std::nullopt;
  return Parts{*first, *second, *third};
}

std::string day_text(std::int64_t year, std::int64_t month, std::int64_t day) {
  const auto two = [](std::int64_t n) {
    return std::string(n < 10 ? "0" : "") + std::to_string(n);
  };
  const std::string text = std::to_string(year) + "-" + two(month) + "-" + two(day);
  return date_from_text(text) ? text : std::string();
}

}  // namespace

std::string tenth_meant(std::string_view text, const Measure& measure) {
  const auto value = double_from_text(text);
  if (!value || !within(*value / 10, measure)) return {};
  return meant(*value / 10);
}

std::string number_fault(std::string_view text, const Measure& measure) {
  if (text.find(',') != std::string_view::npos) return comma_fault(text);
  const auto value = double_from_text(text);
  if (!value || text.find_first_of("eE") != std::string_view::npos)
    return "is not a number. Write digits with a point and no other mark.";
  const std::string slip = thousand_meant(*value, measure);
  if (const auto scaled = scaled_from_text(text, measure.digits)) {
    if (*scaled >= measure.low && *scaled <= measure.high) return {};
    const std::string outside = "is outside " + range_text(measure) + ".";
    return outside + (slip.empty() ? tenth_meant(text, measure) : slip);
  }
  if (!within(*value, measure)) return "is outside " + range_text(measure) + ".";
  const std::string unit = measure.unit.empty() ? "" : std::string(" ").append(measure.unit);
  return "is finer than " + scaled_to_text(1, measure.digits) + unit + ", the record's unit." +
         slip;
}

std::string date_fault(std::string_view text) {
  constexpr std::string_view wanted = " Write a date as year-month-day, 2026-06-30.";
  const auto parts = three_numbers(text);
  if (!parts) return "is not a date." + std::string(wanted);
  const auto [first, second, third] = *parts;
  std::string guess;
  if (first > 31 && second > 12) {
    guess = day_text(first, third, second);
  } else if (third > 31 && first > 12) {
    guess = day_text(third, second, first);
  } else if (third > 31 && second > 12) {
    guess = day_text(third, first, second);
  } else if (third > 31) {
    return "can be read two ways, day or month first." + std::string(wanted);
  }
  if (guess.empty()) return "is not a calendar day." + std::string(wanted);
  return "is not in the order year-month-day. Was " + guess + " meant?";
}

std::string width_fault(std::size_t fields, std::size_t header, bool numbers_split) {
  std::string text = "the row has " + std::to_string(fields) + " fields, the header " +
                     std::to_string(header) + ".";
  if (fields > header && numbers_split)
    text += " Is there a decimal comma in it? Write 3.2, with a point.";
  return text;
}

}  // namespace kneerail::exchange
