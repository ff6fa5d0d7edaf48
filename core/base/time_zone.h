#pragma once

// Where on earth a clock is read: which calendar day an instant is, by the offsets from UTC of one
// place. Known changes of the offset are a table; after the last of them a yearly rule holds. The
// table comes from a file that others read.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"

namespace kneerail {

/// A rule in the form of the TZ variable of POSIX.1-2017, 8.3, with the hours of RFC 8536, 3.3.1:
/// "CET-1CEST,M3.5.0,M10.5.0/3". Offsets here are seconds east of Greenwich.
struct YearlyRule {
  /// When in a year the other time begins.
  struct Change {
    enum class By { month_week_weekday, day_without_leap_day, day_of_year };
    By by = By::month_week_weekday;
    int month = 0;       ///< 1 to 12
    int week = 0;        ///< 1 to 5, 5: the last
    int weekday = 0;     ///< 0 Sunday to 6
    int day = 0;         ///< J1 to J365, or 0 to 365
    int time_s = 7'200;  ///< by the clock before the change; -167 to 167 hours
  };
  struct Summer {
    std::int32_t offset_s = 0;
    Change begins;
    Change ends;
  };
  std::int32_t offset_s = 0;
  std::optional<Summer> summer;
};

/// Nothing for what is no such rule. Summer time without its two changes is none either.
std::optional<YearlyRule> yearly_rule_from_text(std::string_view text);

class TimeZone {
 public:
  struct Transition {
    std::int64_t at_s = 0;  ///< seconds since 1970 UTC, first second of the new offset
    std::int32_t offset_s = 0;
    bool operator==(const Transition&) const = default;
  };

  /// UTC.
  TimeZone() = default;
  /// The offset before the first transition, the transitions, and what holds from the last of them
  /// on; none: the last one's offset. Errors: invalid_input where the transitions do not ascend
  /// or an offset is a day or more.
  static Result<TimeZone> from(std::int32_t first_offset_s, std::vector<Transition> transitions,
                               std::optional<YearlyRule> rule);

  /// Seconds to add to UTC.
  [[nodiscard]] std::int32_t offset_s(Instant at) const;
  /// The calendar day there.
  [[nodiscard]] Date day(Instant at) const;
  /// The day of an entry. An instant of exactly noon UTC is one of which only the day is known
  /// (noon_utc): it stands for that day everywhere.
  [[nodiscard]] Date day_of_entry(Instant at) const;
  /// The clock there as if it were one in UTC: only for taking hours and minutes from.
  [[nodiscard]] Instant clock(Instant at) const;

 private:
  std::int32_t first_offset_s_ = 0;
  std::vector<Transition> transitions_;
  std::optional<YearlyRule> rule_;
};

}  // namespace kneerail
