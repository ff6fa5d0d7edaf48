#include "core/forecast/decisions/part_outlook.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string_view>
#include <tuple>

#include "core/forecast/decisions/chances.h"
#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double as_likely_as_not = 0.5;
constexpr double close_behind = 1.2;
constexpr double longest_date_years = 200;  // a date further out says nothing

/// Of limits that fall on one day, the one that hurts most is named.
int rank(Limit limit) {
  switch (limit) {
    case Limit::wall_limit:
      return 0;
    case Limit::grade_5:
    case Limit::grade_4:
    case Limit::grade_3:
    case Limit::grade_2:
      return 1;
    case Limit::torque_minimum:
      return 2;
    case Limit::coating_exhausted:
      return 3;
    case Limit::coating_first_maintenance:
      return 4;
  }
  return 4;
}

/// Of a row of a grade.
int grade_of(const LimitForecast& row) {
  return static_cast<int>(row.limit) - static_cast<int>(Limit::grade_2) + 2;
}

/// The grade rows of a part are two where its owner replaces before grade 5; the owner's counts.
bool structural(const Portfolio& portfolio, const LimitForecast& row) {
  if (row.limit == Limit::wall_limit || row.limit == Limit::torque_minimum) return true;
  if (rank(row.limit) != 1) return false;
  const Part& part = portfolio.parts[static_cast<std::size_t>(row.part)];
  return grade_of(row) == replace_grade(portfolio, part.site);
}

/// Seen at the grade of its row or a worse one.
bool seen_there(const LimitForecast& row) {
  return row.seen && row.seen->grade >= grade_of(row);
}

double median_years(const LimitForecast& row, Date as_of) {
  constexpr std::size_t median = 3;
  if (!row.answered) return never;
  if (seen_there(row)) return std::min(0.0, years_between(as_of, row.seen->day));
  return row.has_years ? row.years[median] : years_to_chance(row, as_likely_as_not);
}

/// Bare steel loses its wall from the first day, whether or not anybody measured it.
bool bares_its_wall(const Portfolio& portfolio, const LimitForecast& row) {
  return row.limit == Limit::wall_limit &&
         portfolio.parts[static_cast<std::size_t>(row.part)].material == Material::bare_steel;
}

std::optional<double> chance_for(const Portfolio& portfolio, const Part& part) {
  const auto limits = std::find_if(portfolio.limits.begin(), portfolio.limits.end(),
                                   [&](const SiteLimits& own) { return own.site == part.site; });
  if (limits == portfolio.limits.end()) return std::nullopt;
  return owners_chance(limits->chance, part.consequence);
}

class Reader {
 public:
  Reader(const Portfolio& portfolio, const std::vector<LimitForecast>& rows)
      : portfolio_(portfolio), rows_(rows) {}

  [[nodiscard]] PartOutlook outlook(std::int32_t part, std::vector<std::size_t> own) const {
    PartOutlook made;
    made.part = part;
    std::sort(own.begin(), own.end(), [&](std::size_t a, std::size_t b) {
      return std::tuple(median(a), rank(rows_[a].limit)) <
             std::tuple(median(b), rank(rows_[b].limit));
    });
    find_governing(own, made);
    find_structural(own, made);
    const auto chance = chance_for(portfolio_, portfolio_.parts[static_cast<std::size_t>(part)]);
    if (chance) find_due(own, *chance, made);
    made.words = words(made, chance);
    return made;
  }

 private:
  [[nodiscard]] double median(std::size_t row) const {
    return median_years(rows_[row], portfolio_.as_of);
  }

  void find_governing(const std::vector<std::size_t>& own, PartOutlook& made) const {
    made.governing_years = median(own.front());
    if (!std::isfinite(made.governing_years)) return;
    made.governing = own.front();
    for (const std::size_t row : own) {
      if (row == *made.governing || rank(rows_[row].limit) == rank(rows_[*made.governing].limit))
        continue;
      if (median(row) <= std::max(0.0, made.governing_years) * close_behind) made.runner_up = row;
      return;
    }
  }

  void find_structural(const std::vector<std::size_t>& own, PartOutlook& made) const {
    for (const std::size_t row : own) {
      if (!structural(portfolio_, rows_[row])) continue;
      made.structural_rows.push_back(row);
      if (seen_there(rows_[row])) {
        made.seen_past = rows_[row].seen->day;
        made.seen_grade = rows_[row].seen->grade;
      }
      const double chance =
          made.seen_past ? 1 : chance_within(rows_[row], portfolio_.settings.horizon_years);
      if (made.structural && chance <= made.structural_chance) continue;
      made.structural_chance = chance;
      made.structural = row;
    }
  }

  void find_due(const std::vector<std::size_t>& own, double chance, PartOutlook& made) const {
    double first = never;
    for (const std::size_t row : own) {
      const double years = seen_there(rows_[row]) ? 0 : years_to_chance(rows_[row], chance);
      if (years >= first || years > longest_date_years) continue;
      first = years;
      made.due_row = row;
    }
    if (!made.due_row) return;
    made.due = Date{portfolio_.as_of.days + static_cast<std::int32_t>(first * days_per_year)};
  }

  [[nodiscard]] std::string words(const PartOutlook& made, std::optional<double> chance) const {
    std::string said;
    if (made.seen_past) {
      said = concat({"seen at grade ", std::to_string(made.seen_grade), " on ",
                     to_text(*made.seen_past), ": act on it"});
    } else if (made.governing) {
      said =
          "governed by " + limit_name(rows_[*made.governing].limit) + ", as likely as not " +
          (made.governing_years <= 0 ? "by now" : "in about " + life_words(made.governing_years));
      if (made.runner_up) said += "; " + limit_name(rows_[*made.runner_up].limit) + " close behind";
    } else {
      said = "no limit is as likely as not reached in the time that can be said";
    }
    if (!chance) return said + "; no chance is set, so no date";
    if (!made.due)
      return said + "; no figure gets to the owner's chance of " + chance_words(*chance);
    return said + "; due " + to_text(*made.due) + " for " + limit_name(rows_[*made.due_row].limit) +
           " by the owner's chance of " + chance_words(*chance);
  }

  const Portfolio& portfolio_;
  const std::vector<LimitForecast>& rows_;
};

}  // namespace

std::string limit_name(Limit limit) {
  switch (limit) {
    case Limit::coating_exhausted:
      return "coating gone";
    case Limit::coating_first_maintenance:
      return "first maintenance of the coating";
    case Limit::wall_limit:
      return "wall";
    case Limit::torque_minimum:
      return "set screws";
    case Limit::grade_2:
      return "condition grade 2";
    case Limit::grade_3:
      return "condition grade 3";
    case Limit::grade_4:
      return "condition grade 4";
    case Limit::grade_5:
      return "condition grade 5";
  }
  return {};
}

std::set<Limit> limits_read(const std::vector<LimitForecast>& rows) {
  std::set<Limit> read;
  for (const LimitForecast& row : rows)
    if (row.readings_used > 0) read.insert(row.limit);
  return read;
}

std::vector<PartOutlook> part_outlooks(const Portfolio& portfolio,
                                       const std::vector<LimitForecast>& rows) {
  return part_outlooks(portfolio, rows, limits_read(rows));
}

std::vector<PartOutlook> part_outlooks(const Portfolio& portfolio,
                                       const std::vector<LimitForecast>& rows,
                                       const std::set<Limit>& read) {
  std::map<std::int32_t, std::vector<std::size_t>> by_part;
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (rows[i].answered && (read.contains(rows[i].limit) || bares_its_wall(portfolio, rows[i])))
      by_part[rows[i].part].push_back(i);
  const Reader reader(portfolio, rows);
  std::vector<PartOutlook> outlooks;
  for (auto& [part, own] : by_part) outlooks.push_back(reader.outlook(part, std::move(own)));
  std::sort(outlooks.begin(), outlooks.end(), [&](const PartOutlook& a, const PartOutlook& b) {
    const auto& one = portfolio.parts[static_cast<std::size_t>(a.part)].id;
    const auto& other = portfolio.parts[static_cast<std::size_t>(b.part)].id;
    return std::tuple(-a.structural_chance, a.governing_years, std::string_view(one)) <
           std::tuple(-b.structural_chance, b.governing_years, std::string_view(other));
  });
  return outlooks;
}

}  // namespace kneerail::forecast
