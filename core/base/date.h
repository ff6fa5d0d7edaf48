#pragma once

// Calendar days and instants, apart in type: a day has no clock, an instant has no calendar until a
// time zone is named.

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace kneerail {

/// Days since 1970-01-01.
struct Date {
  std::int32_t days = 0;
  auto operator<=>(const Date&) const = default;
};

/// Milliseconds since 1970 UTC.
struct Instant {
  std::int64_t ms = 0;
  auto operator<=>(const Instant&) const = default;
};

inline constexpr double days_per_year = 365.25;

/// "2031-05-14".
std::string to_text(Date date);
/// A real calendar day written as year-month-day with four, two and two digits; nothing for
/// anything else.
std::optional<Date> date_from_text(std::string_view text);
Date date_from_civil(int year, unsigned month, unsigned day);
struct Civil {
  int year;
  unsigned month;
  unsigned day;
};
Civil civil(Date date);
/// Years of 365.25 days from one day to another; negative when `to` is earlier.
double years_between(Date from, Date to);

/// The day of an instant in UTC.
Date utc_day(Instant instant);
/// Noon UTC of a day: what stands for a day of which no time is known.
Instant noon_utc(Date date);
/// "2031-05-14T09:30:00Z"; milliseconds only when there are any.
std::string to_text(Instant instant);
/// An RFC 3339 instant with its offset; nothing for anything else.
std::optional<Instant> instant_from_text(std::string_view text);

}  // namespace kneerail
