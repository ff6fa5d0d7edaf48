#include "core/base/time_zone.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

namespace kneerail {
namespace {

constexpr std::int64_t day_s = 86'400;
constexpr int hour_s = 3'600;

/// Takes a rule apart from the left; every part is nothing when it is not there.
class RuleText {
 public:
  explicit RuleText(std::string_view text) : rest_(text) {}

  [[nodiscard]] bool done() const { return rest_.empty(); }
  [[nodiscard]] char next() const { return rest_.empty() ? '\0' : rest_.front(); }

  bool take(char wanted) {
    if (next() != wanted) return false;
    rest_.remove_prefix(1);
    return true;
  }

  std::optional<int> number(int low, int high) {
    std::size_t digits = 0;
    int value = 0;
    while (digits < rest_.size() && digits < 4 && is_digit(rest_[digits]))
      value = value * 10 + (rest_[digits++] - '0');
    if (digits == 0 || value < low || value > high) return std::nullopt;
    rest_.remove_prefix(digits);
    return value;
  }

  /// "CET" or "<+0330>", of three characters or more.
  bool name() {
    const bool quoted = take('<');
    std::size_t length = 0;
    const auto belongs = [quoted](char c) {
      const bool letter = (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
      return letter || (quoted && (is_digit(c) || c == '+' || c == '-'));
    };
    while (length < rest_.size() && belongs(rest_[length])) ++length;
    rest_.remove_prefix(length);
    return length >= 3 && (!quoted || take('>'));
  }

  /// Seconds of "[+-]h[h[h]][:mm[:ss]]".
  std::optional<int> time(int hours_most) {
    const bool negative = take('-');
    if (!negative) take('+');
    const auto hours = number(0, hours_most);
    if (!hours) return std::nullopt;
    int seconds = *hours * hour_s;
    for (const int unit : {60, 1}) {
      if (!take(':')) break;
      const auto part = number(0, 59);
      if (!part) return std::nullopt;
      seconds += *part * unit;
    }
    return negative ? -seconds : seconds;
  }

  std::optional<YearlyRule::Change> change() {
    using By = YearlyRule::Change::By;
    YearlyRule::Change change;
    if (!take(',') || !day_of(change)) return std::nullopt;
    if (change.by == By::month_week_weekday && change.month == 0) return std::nullopt;
    if (!take('/')) return change;
    const auto at = time(167);
    if (!at) return std::nullopt;
    change.time_s = *at;
    return change;
  }

 private:
  static bool is_digit(char c) { return c >= '0' && c <= '9'; }

  bool day_of(YearlyRule::Change& change) {
    using By = YearlyRule::Change::By;
    if (take('M')) {
      const auto month = number(1, 12);
      const auto week = month && take('.') ? number(1, 5) : std::nullopt;
      const auto weekday = week && take('.') ? number(0, 6) : std::nullopt;
      if (!weekday) return false;
      change.month = *month;
      change.week = *week;
      change.weekday = *weekday;
      return true;
    }
    const bool without_leap_day = take('J');
    change.by = without_leap_day ? By::day_without_leap_day : By::day_of_year;
    const auto day = without_leap_day ? number(1, 365) : number(0, 365);
    if (!day) return false;
    change.day = *day;
    return true;
  }

  std::string_view rest_;
};

bool is_leap(int year) {
  return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

/// The day of a year on which a change falls.
Date day_of_change(const YearlyRule::Change& change, int year) {
  using By = YearlyRule::Change::By;
  const Date first = date_from_civil(year, 1, 1);
  if (change.by == By::day_of_year) return Date{first.days + change.day};
  if (change.by == By::day_without_leap_day) {
    constexpr int last_of_february = 59;
    const bool after = is_leap(year) && change.day > last_of_february;
    return Date{first.days + change.day - 1 + (after ? 1 : 0)};
  }
  const auto month = static_cast<unsigned>(change.month);
  const Date begins = date_from_civil(year, month, 1);
  const Date next =
      change.month == 12 ? date_from_civil(year + 1, 1, 1) : date_from_civil(year, month + 1, 1);
  const int weekday = ((begins.days + 4) % 7 + 7) % 7;  // 1970-01-01 was a Thursday
  int day = begins.days + (change.weekday - weekday + 7) % 7 + 7 * (change.week - 1);
  while (day >= next.days) day -= 7;
  return Date{day};
}

/// When a change falls, seconds since 1970 UTC, by a clock of the offset before it.
std::int64_t second_of_change(const YearlyRule::Change& change, int year, std::int32_t before_s) {
  return day_of_change(change, year).days * day_s + change.time_s - before_s;
}

std::int32_t offset_by_rule(const YearlyRule& rule, std::int64_t at_s) {
  if (!rule.summer) return rule.offset_s;
  // Changes may be up to a week from their day, and the year there may not be that of UTC: the
  // last change of three years that is not later tells.
  const int year = civil(utc_day(Instant{at_s * 1000})).year;
  std::int64_t last_s = 0;
  std::optional<std::int32_t> offset;
  const auto look_at = [&](std::int64_t changed_s, std::int32_t to) {
    if (changed_s > at_s || (offset && changed_s < last_s)) return;
    last_s = changed_s;
    offset = to;
  };
  for (int y = year - 2; y <= year + 1; ++y) {
    // One that ends where the next begins never ends: begins is looked at after ends.
    look_at(second_of_change(rule.summer->ends, y, rule.summer->offset_s), rule.offset_s);
    look_at(second_of_change(rule.summer->begins, y, rule.offset_s), rule.summer->offset_s);
  }
  return offset.value_or(rule.offset_s);
}

std::int64_t seconds_of(Instant at) {
  return at.ms >= 0 ? at.ms / 1000 : -((-at.ms + 999) / 1000);
}

}  // namespace

std::optional<YearlyRule> yearly_rule_from_text(std::string_view text) {
  RuleText from(text);
  YearlyRule rule;
  if (!from.name()) return std::nullopt;
  const auto west_s = from.time(24);
  if (!west_s) return std::nullopt;
  rule.offset_s = -*west_s;
  if (from.done()) return rule;
  YearlyRule::Summer summer;
  if (!from.name()) return std::nullopt;
  summer.offset_s = rule.offset_s + hour_s;
  if (from.next() != ',') {
    const auto summer_west_s = from.time(24);
    if (!summer_west_s) return std::nullopt;
    summer.offset_s = -*summer_west_s;
  }
  const auto begins = from.change();
  const auto ends = begins ? from.change() : std::nullopt;
  if (!ends || !from.done()) return std::nullopt;
  summer.begins = *begins;
  summer.ends = *ends;
  rule.summer = summer;
  return rule;
}

Result<TimeZone> TimeZone::from(std::int32_t first_offset_s, std::vector<Transition> transitions,
                                std::optional<YearlyRule> rule) {
  const auto too_far = [](std::int32_t offset_s) {
    return offset_s <= -day_s || offset_s >= day_s;
  };
  bool whole = !too_far(first_offset_s);
  for (std::size_t i = 0; i < transitions.size(); ++i)
    whole = whole && !too_far(transitions[i].offset_s) &&
            (i == 0 || transitions[i - 1].at_s < transitions[i].at_s);
  if (!whole) return fail(Fault::invalid_input, "its table of offsets is damaged");
  TimeZone zone;
  zone.first_offset_s_ = first_offset_s;
  zone.transitions_ = std::move(transitions);
  zone.rule_ = rule;
  return zone;
}

std::int32_t TimeZone::offset_s(Instant at) const {
  const std::int64_t second = seconds_of(at);
  const auto after =
      std::upper_bound(transitions_.begin(), transitions_.end(), second,
                       [](std::int64_t s, const Transition& one) { return s < one.at_s; });
  if (after == transitions_.end() && rule_) return offset_by_rule(*rule_, second);
  return after == transitions_.begin() ? first_offset_s_ : (after - 1)->offset_s;
}

Instant TimeZone::clock(Instant at) const {
  return Instant{at.ms + offset_s(at) * std::int64_t{1000}};
}

Date TimeZone::day(Instant at) const {
  return utc_day(clock(at));
}

Date TimeZone::day_of_entry(Instant at) const {
  const Date day_utc = utc_day(at);
  return at == noon_utc(day_utc) ? day_utc : day(at);
}

}  // namespace kneerail
