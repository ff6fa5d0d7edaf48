#include "core/base/date.h"

#include <chrono>
#include <cstdio>

namespace kneerail {
namespace {

std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

constexpr std::int64_t ms_per_day = 86'400'000;

struct TimeOfDay {
  std::int64_t ms;
  std::string_view rest;
};

/// "09:30:00" or "09:30:00.250", and what follows it.
std::optional<TimeOfDay> time_of_day(std::string_view text) {
  if (text.size() < 8 || text[2] != ':' || text[5] != ':') return std::nullopt;
  const auto hour = digits(text.substr(0, 2));
  const auto minute = digits(text.substr(3, 2));
  const auto second = digits(text.substr(6, 2));
  if (!hour || !minute || !second || *hour > 23 || *minute > 59 || *second > 60)
    return std::nullopt;
  std::int64_t ms = ((*hour * 60LL + *minute) * 60 + *second) * 1000;
  std::string_view rest = text.substr(8);
  if (!rest.empty() && rest[0] == '.') {
    std::size_t n = 1;
    std::int64_t scale = 100;
    while (n < rest.size() && rest[n] >= '0' && rest[n] <= '9') {
      ms += scale * (rest[n] - '0');
      scale /= 10;
      ++n;
    }
    if (n == 1) return std::nullopt;
    rest = rest.substr(n);
  }
  return TimeOfDay{ms, rest};
}

/// "Z" or "+02:00", in minutes east of Greenwich.
std::optional<int> offset_minutes(std::string_view text) {
  if (text == "Z" || text == "z") return 0;
  if (text.size() != 6 || (text[0] != '+' && text[0] != '-') || text[3] != ':') return std::nullopt;
  const auto hour = digits(text.substr(1, 2));
  const auto minute = digits(text.substr(4, 2));
  if (!hour || !minute || *hour > 23 || *minute > 59) return std::nullopt;
  const int east = *hour * 60 + *minute;
  return text[0] == '-' ? -east : east;
}

}  // namespace

Date date_from_civil(int year, unsigned month, unsigned day) {
  using namespace std::chrono;
  const sys_days days =
      year_month_day{std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{day}};
  return Date{static_cast<std::int32_t>(days.time_since_epoch().count())};
}

Civil civil(Date date) {
  using namespace std::chrono;
  const year_month_day ymd{sys_days{std::chrono::days{date.days}}};
  return {static_cast<int>(ymd.year()), static_cast<unsigned>(ymd.month()),
          static_cast<unsigned>(ymd.day())};
}

std::string to_text(Date date) {
  const Civil c = civil(date);
  char text[32];
  std::snprintf(text, sizeof text, "%04d-%02u-%02u", c.year, c.month, c.day);
  return text;
}

std::optional<Date> date_from_text(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4));
  const auto month = digits(text.substr(5, 2));
  const auto day = digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day ymd{std::chrono::year{*year},
                                        std::chrono::month{static_cast<unsigned>(*month)},
                                        std::chrono::day{static_cast<unsigned>(*day)}};
  if (!ymd.ok()) return std::nullopt;
  return date_from_civil(*year, static_cast<unsigned>(*month), static_cast<unsigned>(*day));
}

double years_between(Date from, Date to) {
  return (to.days - from.days) / days_per_year;
}

Date utc_day(Instant instant) {
  std::int64_t days = instant.ms / ms_per_day;
  if (instant.ms % ms_per_day < 0) --days;
  return Date{static_cast<std::int32_t>(days)};
}

Instant noon_utc(Date date) {
  return Instant{date.days * ms_per_day + ms_per_day / 2};
}

std::string to_text(Instant instant) {
  const Date day = utc_day(instant);
  const std::int64_t ms = instant.ms - day.days * ms_per_day;
  char text[32];
  std::snprintf(text, sizeof text, "T%02d:%02d:%02d", static_cast<int>(ms / 3'600'000),
                static_cast<int>(ms / 60'000 % 60), static_cast<int>(ms / 1000 % 60));
  std::string all = to_text(day) + text;
  if (ms % 1000 != 0) {
    std::snprintf(text, sizeof text, ".%03d", static_cast<int>(ms % 1000));
    all += text;
  }
  return all + "Z";
}

std::optional<Instant> instant_from_text(std::string_view text) {
  if (text.size() < 20 || (text[10] != 'T' && text[10] != 't' && text[10] != ' '))
    return std::nullopt;
  const auto day = date_from_text(text.substr(0, 10));
  const auto time = time_of_day(text.substr(11));
  if (!day || !time) return std::nullopt;
  const auto east = offset_minutes(time->rest);
  if (!east) return std::nullopt;
  return Instant{day->days * ms_per_day + time->ms - *east * 60'000LL};
}

}  // namespace kneerail
