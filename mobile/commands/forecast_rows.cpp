#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/forecast/decisions/part_outlook.h"
#include "mobile/commands/forecast_output.h"

#include <nlohmann/json.hpp>

namespace kneerail::commands {

namespace {

constexpr int years_decimals = 5;
constexpr int chance_decimals = 6;
constexpr int um_decimals = 4;

constexpr const char* header =
    "component_id,limit,p05,p10,p25,p50,p75,p90,p95,p_now,p_1y,p_2y,p_5y,n_used,own_share,"
    "rate_p10_um_per_year,rate_p50_um_per_year,rate_p90_um_per_year,start_um,"
    "session_correction_um,g1,g2,g3,g4,g5,governing,due_date,words,sentence,flags";

/// RFC 4180: in quotes where a comma, a quote or a line feed stands in it.
std::string cell(const std::string& text) {
  if (text.find_first_of(",\"\n\r") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char letter : text) {
    if (letter == '"') quoted += '"';
    quoted += letter;
  }
  return quoted + "\"";
}

std::string joined(const std::vector<std::string>& texts) {
  std::string all;
  for (const std::string& text : texts) all += (all.empty() ? "" : "; ") + text;
  return all;
}

const forecast::Part& part_of(const ForecastView& view, const forecast::LimitForecast& limit) {
  return view.portfolio.parts[static_cast<std::size_t>(limit.part)];
}

bool shown(const ForecastView& view, const forecast::LimitForecast& limit) {
  return view.site.empty() || part_of(view, limit).site == view.site;
}

bool is_of_coating(const forecast::LimitForecast& limit) {
  return limit.limit == forecast::Limit::coating_exhausted ||
         limit.limit == forecast::Limit::coating_first_maintenance;
}

/// Rates and thicknesses of a coating; nothing in the columns of another limit.
std::string coating_figures(const forecast::LimitForecast& limit) {
  constexpr int figures_of_a_coating = 5;
  if (!is_of_coating(limit)) return std::string(figures_of_a_coating, ',');
  std::string line;
  for (const double rate : limit.rate_um_per_year) line += "," + fixed(rate, um_decimals);
  return line + "," + fixed(limit.start_um, um_decimals) + "," +
         fixed(limit.session_correction_um, um_decimals);
}

std::string figures(const forecast::LimitForecast& limit) {
  constexpr int figures_of_a_row = 23;
  constexpr int grades = 5;
  if (!limit.answered) return std::string(figures_of_a_row, ',');
  std::string line;
  for (const double years : limit.years)
    line += limit.has_years ? "," + fixed(years, years_decimals) : ",";
  for (const double chance : limit.p_by) line += "," + fixed(chance, chance_decimals);
  line += "," + std::to_string(limit.readings_used) + "," + fixed(limit.own_share, um_decimals) +
          coating_figures(limit);
  if (!limit.grades_now) return line + std::string(grades, ',');
  for (const double chance : *limit.grades_now) line += "," + fixed(chance, chance_decimals);
  return line;
}

/// JSON has no infinity: the unbounded is the text "inf".
nlohmann::json number(double value) {
  if (std::isfinite(value)) return value;
  return value > 0 ? "inf" : "-inf";
}

nlohmann::json row_of(const ForecastView& view, const forecast::LimitForecast& limit) {
  nlohmann::json row;
  row["component_id"] = part_of(view, limit).id;
  row["limit"] = forecast::to_text(limit.limit);
  row["answered"] = limit.answered;
  row["words"] = limit.words;
  row["sentence"] = limit.sentence;
  row["flags"] = limit.flags;
  if (!limit.answered) return row;
  static constexpr const char* quantiles[] = {"p05", "p10", "p25", "p50", "p75", "p90", "p95"};
  static constexpr const char* chances[] = {"p_now", "p_1y", "p_2y", "p_5y"};
  static constexpr const char* rates[] = {"rate_p10_um_per_year", "rate_p50_um_per_year",
                                          "rate_p90_um_per_year"};
  for (std::size_t i = 0; i < limit.p_by.size(); ++i) row[chances[i]] = limit.p_by[i];
  if (limit.p_on) row["p_on"] = *limit.p_on;
  row["n_used"] = limit.readings_used;
  row["own_share"] = limit.own_share;
  if (!limit.has_years) return row;
  for (std::size_t i = 0; i < limit.years.size(); ++i) row[quantiles[i]] = number(limit.years[i]);
  if (limit.grades_now) {
    row["grades_now"] = *limit.grades_now;
    return row;
  }
  if (!is_of_coating(limit)) return row;
  for (std::size_t i = 0; i < limit.rate_um_per_year.size(); ++i) {
    row[rates[i]] = number(limit.rate_um_per_year[i]);
  }
  row["start_um"] = number(limit.start_um);
  row["session_correction_um"] = number(limit.session_correction_um);
  return row;
}

/// What the part's rows together say of one of them.
struct Decided {
  bool governing = false;
  std::string due;  ///< the day the part comes due, where this row is why
};

std::vector<Decided> decided_rows(const ForecastView& view) {
  std::vector<Decided> rows(view.forecast.limits.size());
  for (const auto& outlook : forecast::part_outlooks(view.portfolio, view.forecast.limits)) {
    if (outlook.governing) rows[*outlook.governing].governing = true;
    if (outlook.due) rows[*outlook.due_row].due = to_text(*outlook.due);
  }
  return rows;
}

void sort_worst_first(const ForecastView& view, std::vector<std::size_t>& order) {
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const forecast::LimitForecast& left = view.forecast.limits[a];
    const forecast::LimitForecast& right = view.forecast.limits[b];
    if (left.p_by[3] != right.p_by[3]) return left.p_by[3] > right.p_by[3];
    if (left.years[3] != right.years[3]) return left.years[3] < right.years[3];
    return part_of(view, left).id < part_of(view, right).id;
  });
}

nlohmann::json as_json(const forecast::TrackRecord& record) {
  nlohmann::json out{{"site", record.site},
                     {"horizon", record.horizon},
                     {"stratum", record.stratum},
                     {"readings", record.readings},
                     {"sessions", record.sessions},
                     {"inside_50", record.inside_50},
                     {"inside_80", record.inside_80},
                     {"inside_90", record.inside_90},
                     {"spread_scale", record.spread_scale},
                     {"words", record.words}};
  if (record.issued) out["issued"] = to_text(*record.issued);
  return out;
}

}  // namespace

std::vector<std::size_t> worst_first(const ForecastView& view, forecast::Limit limit) {
  std::vector<std::size_t> order;
  const auto& limits = view.forecast.limits;
  for (std::size_t i = 0; i < limits.size(); ++i)
    if (limits[i].limit == limit && limits[i].answered && shown(view, limits[i]))
      order.push_back(i);
  sort_worst_first(view, order);
  return order;
}

std::vector<std::size_t> worst_grades_first(const ForecastView& view) {
  std::vector<std::size_t> order;
  const auto& limits = view.forecast.limits;
  for (std::size_t i = 0; i < limits.size(); ++i) {
    const bool second = i > 0 && limits[i - 1].grades_now && limits[i - 1].part == limits[i].part;
    if (limits[i].grades_now && !second && shown(view, limits[i])) order.push_back(i);
  }
  sort_worst_first(view, order);
  return order;
}

void print_csv(const ForecastView& view, std::ostream& out) {
  const std::vector<Decided> decided = decided_rows(view);
  out << header << (view.on ? ",p_on\n" : "\n");
  for (std::size_t i = 0; i < decided.size(); ++i) {
    const forecast::LimitForecast& limit = view.forecast.limits[i];
    if (!shown(view, limit)) continue;
    out << cell(part_of(view, limit).id) << "," << forecast::to_text(limit.limit) << figures(limit)
        << "," << (decided[i].governing ? "1" : "") << "," << decided[i].due << ","
        << cell(limit.words) << "," << cell(limit.sentence) << "," << cell(joined(limit.flags));
    if (view.on) out << "," << (limit.p_on ? fixed(*limit.p_on, chance_decimals) : std::string());
    out << "\n";
  }
}

void print_json(const ForecastView& view, std::ostream& out) {
  nlohmann::json all;
  all["as_of"] = to_text(view.portfolio.as_of);
  if (view.on) all["on"] = to_text(*view.on);
  for (const LaterVisit& visit : view.later_visits)
    all["after_as_of"].push_back(
        {{"site", visit.site}, {"day", to_text(visit.day)}, {"readings", visit.readings}});
  all["limits"] = nlohmann::json::array();
  const std::vector<Decided> decided = decided_rows(view);
  for (std::size_t i = 0; i < decided.size(); ++i) {
    const forecast::LimitForecast& limit = view.forecast.limits[i];
    if (!shown(view, limit)) continue;
    nlohmann::json row = row_of(view, limit);
    if (decided[i].governing) row["governing"] = true;
    if (!decided[i].due.empty()) row["due_date"] = decided[i].due;
    all["limits"].push_back(std::move(row));
  }
  all["notes"] = view.forecast.notes;
  for (const std::string& note : view.report_notes) all["notes"].push_back(note);
  for (const forecast::SessionReport& session : view.forecast.sessions) {
    all["sessions"].push_back({{"site", session.site},
                               {"gauge", session.gauge},
                               {"day", to_text(session.day)},
                               {"offset_um", session.offset_um},
                               {"gain", session.gain},
                               {"words", session.words},
                               {"check_words", session.check_words}});
  }
  for (const forecast::InspectorHabit& habit : view.inspectors) {
    all["inspectors"].push_back({{"inspector", habit.inspector},
                                 {"grades", habit.grades},
                                 {"one_too_many", habit.up},
                                 {"one_too_few", habit.down},
                                 {"words", habit.words}});
  }
  for (const forecast::TrackRecord& record : view.forecast.track_record)
    all["track_record"].push_back(as_json(record));
  if (view.reports)
    for (const forecast::TrackRecord& record : *view.reports)
      all["reports"].push_back(as_json(record));
  for (const forecast::LeftOut& reading : view.forecast.left_out) {
    all["left_out"].push_back(
        {{"reading", reading.reading}, {"part", reading.part}, {"reason", reading.reason}});
  }
  out << all.dump(1) << "\n";
}

}  // namespace kneerail::commands
