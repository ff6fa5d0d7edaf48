#include "core/forecast/grade/grade_words.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

constexpr double next_grade_least = 0.10;
constexpr double habit_ratio = 1.5;
constexpr double habit_sds = 2;

std::vector<GradeLook> fresh_looks(std::span<const GradeLook> looks) {
  std::vector<GradeLook> fresh;
  for (const GradeLook& look : looks)
    if (look.fresh) fresh.push_back(look);
  return fresh;
}

std::string whole_years(double years) {
  const bool in_years = years >= 1;
  const auto count = static_cast<long>(std::floor(in_years ? years : 12 * years));
  if (count == 0) return "under a month";
  return concat({std::to_string(count), in_years ? " year" : " month", count == 1 ? "" : "s"});
}

/// Two people's grades of one day that lie two or more apart, the last time they did.
std::string split_day(const std::vector<GradeLook>& fresh) {
  for (std::size_t i = fresh.size(); i-- > 1;) {
    int worst = fresh[i].seen;
    int best = worst;
    for (std::size_t j = i; j-- > 0 && fresh[j].day == fresh[i].day;) {
      worst = std::max<int>(worst, fresh[j].seen);
      best = std::min<int>(best, fresh[j].seen);
    }
    if (worst - best >= 2)
      return concat({"graded ", std::to_string(worst), " and ", std::to_string(best),
                     " on one day: one of them is likely off"});
  }
  return {};
}

/// The worst grade of each day.
std::vector<GradeLook> worst_by_day(const std::vector<GradeLook>& looks) {
  std::vector<GradeLook> days;
  for (const GradeLook& look : looks) {
    if (days.empty() || days.back().day != look.day)
      days.push_back(look);
    else
      days.back().seen = std::max(days.back().seen, look.seen);
  }
  return days;
}

/// The last day on which a fresh look saw a better grade than the day before it.
std::string fall_back(const std::vector<GradeLook>& fresh) {
  const std::vector<GradeLook> days = worst_by_day(fresh);
  for (std::size_t i = days.size(); i-- > 1;) {
    const int before = days[i - 1].seen;
    const int after = days[i].seen;
    if (after >= before) continue;
    const std::string seen =
        concat({"graded ", std::to_string(before), " then ", std::to_string(after), ": "});
    return seen +
           (before - after >= 2 ? "replaced without a record?" : "one of them is likely off");
  }
  return split_day(fresh);
}

std::string capital(std::string text) {
  if (!text.empty())
    text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  return text;
}

/// "likely 3 (71 %), 4 (22 %)".
std::string likely_words(const GradeChances& now) {
  std::array<std::size_t, grade_count> order{0, 1, 2, 3, 4};
  std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) { return now[a] > now[b]; });
  const auto grade = [&](std::size_t j) {
    return concat({std::to_string(j + 1), " (", chance_words(now[j]), ")"});
  };
  std::string words = concat({"likely ", grade(order[0])});
  if (now[order[1]] >= next_grade_least) words += concat({", ", grade(order[1])});
  return words;
}

std::string grade_of(Limit limit) {
  return to_text(limit).substr(std::string("grade_").size());
}

bool more_than_chance(double counted, double of, double own, double everybody) {
  if (of <= 0 || own < habit_ratio * everybody) return false;
  return counted - of * everybody > habit_sds * std::sqrt(of * everybody * (1 - everybody));
}

std::string one_in(double share) {
  return concat({"1 in ", std::to_string(std::lround(1 / share))});
}

}  // namespace

std::string grade_basis_words(std::span<const GradeLook> looks, const GradeKnown& known) {
  if (looks.empty() && known.earlier)
    return known.start ? "not graded since it was renewed; judged by its earlier grades and its age"
                       : "not graded since it came back; judged by its earlier grades and its site";
  if (looks.empty())
    return known.start ? "never graded; judged by its zone and age"
                       : "never graded, age unknown; judged by its site";
  const std::vector<GradeLook> fresh = fresh_looks(looks);
  if (fresh.empty()) return "graded from afar or as last time only; speed from its zone";
  const bool same = std::ranges::all_of(
      fresh, [&](const GradeLook& look) { return look.seen == fresh.front().seen; });
  if (same && fresh.front().day == fresh.back().day)
    return known.earlier ? "one grade; speed from its zone and its earlier grades"
                         : "one grade; speed from its zone";
  if (same)
    return concat(
        {"no change in ", whole_years(years_between(fresh.front().day, fresh.back().day))});
  const std::string fallen = fall_back(fresh);
  return concat({"own grades and zone", fallen.empty() ? "" : "; ", fallen});
}

std::string grade_now_words(const GradeForecast& row) {
  const std::string likely = likely_words(row.now);
  if (!row.seen) return concat({"never graded; ", likely});
  return concat({"seen ", std::to_string(*row.seen), " on ", to_text(*row.seen_on), "; ", likely});
}

std::string grade_sentence(const GradeForecast& row, bool owner_set_grade) {
  const std::string grade = grade_of(row.limit);
  const std::string reached = concat({"Grade ", grade, grade == "5" ? "" : " or worse"});
  std::string text =
      row.seen ? grade_now_words(row) : concat({row.words, ". ", capital(likely_words(row.now))});
  text = concat({capital(text), ". ", reached});
  if (row.seen && *row.seen >= std::stoi(grade))
    text += " was seen: act on it.";
  else
    text += concat(
        {" within 5 years: ", chance_words(row.p_by[3]), "; ", life_with_band(row.years), "."});
  if (row.seen) text += concat({" ", capital(row.words), row.words.ends_with('?') ? "" : "."});
  if (!owner_set_grade) text += " No grade is set; reckoned to grade 5.";
  return text;
}

std::vector<std::string> grade_flags(std::span<const GradeLook> looks, const GradePart& part) {
  std::vector<std::string> flags;
  if (const auto seen = seen_last(looks); seen && seen->seen == grade_worst)
    flags.push_back(concat({"grade 5 seen on ", to_text(seen->day), ": act on it"}));
  if (part.graded_before_start)
    flags.emplace_back("graded before its date of installation: is the date right?");
  if (!looks.empty() && !looks.back().fresh)
    flags.push_back(concat({"grade of ", to_text(looks.back().day),
                            " is no fresh look: said as last time, from afar or from a picture"}));
  return flags;
}

std::string habit_words(const std::string& inspector, const InspectorCounts& counts,
                        const GradeErrors& own, const GradeErrors& everybody) {
  std::string words;
  if (more_than_chance(counts.ups, counts.could_be_up, own.up, everybody.up))
    words = concat({inspector, " grades high: ", one_in(own.up)});
  if (more_than_chance(counts.downs, counts.could_be_down, own.down, everybody.down))
    words += concat({words.empty() ? inspector : "; and",
                     words.empty() ? " grades low: " : " low: ", one_in(own.down)});
  return words;
}

}  // namespace kneerail::forecast
