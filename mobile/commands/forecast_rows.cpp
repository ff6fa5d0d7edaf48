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
  const auto& limits = view.forecast.limits;
  for (const auto& outlook : forecast::part_outlooks(
           view.portfolio, limits, view.limits_read ? *view.limits_read : limits_read(limits))) {
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

namespace {

void print_rows_csv(const ForecastView& view, std::ostream& out) {
  const std::vector<Decided> decided = decided_rows(view);
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

ForecastPieces one_piece(const ForecastView& view) {
  return [&view](const std::function<void(const ForecastView&)>& each) -> Result<> {
    each(view);
    return Done{};
  };
}

/// A JSON object written field by field, as nlohmann::json::dump(1) writes the whole: nothing of it
/// has to be held.
class JsonObject {
 public:
  explicit JsonObject(std::ostream& out) : out_(out) { out_ << "{"; }

  void field(const char* name, const nlohmann::json& value) {
    begin(name);
    print(value, " ");
  }
  /// A list whose values come one by one from `fill`; a list of none is left out unless `always`.
  using Add = std::function<void(const nlohmann::json&)>;
  Result<> list(const char* name, bool always, const std::function<Result<>(const Add&)>& fill) {
    bool any = false;
    auto done = fill([&](const nlohmann::json& value) {
      if (!any) begin(name);
      out_ << (any ? ",\n  " : "[\n  ");
      any = true;
      print(value, "  ");
    });
    if (any) out_ << "\n ]";
    if (!any && always) field(name, nlohmann::json::array());
    return done;
  }
  void end() { out_ << "\n}\n"; }

 private:
  void begin(const char* name) {
    out_ << (any_ ? ",\n \"" : "\n \"") << name << "\": ";
    any_ = true;
  }
  /// Lines after the first stand as far in as the value does.
  void print(const nlohmann::json& value, const char* indent) {
    for (const char letter : value.dump(1)) {
      out_ << letter;
      if (letter == '\n') out_ << indent;
    }
  }

  std::ostream& out_;
  bool any_ = false;
};

void add_rows(const ForecastView& view, const JsonObject::Add& add) {
  const std::vector<Decided> decided = decided_rows(view);
  for (std::size_t i = 0; i < decided.size(); ++i) {
    const forecast::LimitForecast& limit = view.forecast.limits[i];
    if (!shown(view, limit)) continue;
    nlohmann::json row = row_of(view, limit);
    if (decided[i].governing) row["governing"] = true;
    if (!decided[i].due.empty()) row["due_date"] = decided[i].due;
    add(row);
  }
}

void add_left_out(const ForecastView& view, const JsonObject::Add& add) {
  for (const forecast::LeftOut& reading : view.forecast.left_out)
    add({{"reading", reading.reading}, {"part", reading.part}, {"reason", reading.reason}});
}

nlohmann::json as_json(const LaterVisit& visit) {
  return {{"site", visit.site}, {"day", to_text(visit.day)}, {"readings", visit.readings}};
}

nlohmann::json as_json(const forecast::SessionReport& session) {
  return {{"site", session.site},
          {"gauge", session.gauge},
          {"day", to_text(session.day)},
          {"offset_um", session.offset_um},
          {"gain", session.gain},
          {"words", session.words},
          {"check_words", session.check_words}};
}

nlohmann::json as_json(const forecast::InspectorHabit& habit) {
  return {{"inspector", habit.inspector},
          {"grades", habit.grades},
          {"one_too_many", habit.up},
          {"one_too_few", habit.down},
          {"words", habit.words}};
}

template <class T>
void add_list(JsonObject& to, const char* name, const std::vector<T>& values) {
  (void)to.list(name, false, [&](const JsonObject::Add& add) -> Result<> {
    for (const T& value : values) add(as_json(value));
    return Done{};
  });
}

}  // namespace

Result<> print_csv(const ForecastView& head, const ForecastPieces& pieces, std::ostream& out) {
  out << header << (head.on ? ",p_on\n" : "\n");
  return pieces([&](const ForecastView& piece) { print_rows_csv(piece, out); });
}

/// Fields in the order of their names.
Result<> print_json(const ForecastView& head, const ForecastPieces& pieces, std::ostream& out) {
  JsonObject all(out);
  const auto from_pieces = [&](void (*add_of)(const ForecastView&, const JsonObject::Add&)) {
    return [&pieces, add_of](const JsonObject::Add& add) {
      return pieces([&](const ForecastView& piece) { add_of(piece, add); });
    };
  };
  add_list(all, "after_as_of", head.later_visits);
  all.field("as_of", to_text(head.portfolio.as_of));
  add_list(all, "inspectors", head.inspectors);
  if (auto ok = all.list("left_out", false, from_pieces(add_left_out)); !ok) return ok;
  if (auto ok = all.list("limits", true, from_pieces(add_rows)); !ok) return ok;
  nlohmann::json notes = head.forecast.notes;
  for (const std::string& note : head.report_notes) notes.push_back(note);
  all.field("notes", notes);
  if (head.on) all.field("on", to_text(*head.on));
  if (head.reports) add_list(all, "reports", *head.reports);
  add_list(all, "sessions", head.forecast.sessions);
  add_list(all, "track_record", head.forecast.track_record);
  all.end();
  return Done{};
}

void print_csv(const ForecastView& view, std::ostream& out) {
  (void)print_csv(view, one_piece(view), out);
}

void print_json(const ForecastView& view, std::ostream& out) {
  (void)print_json(view, one_piece(view), out);
}

}  // namespace kneerail::commands
