#include <algorithm>
#include <cmath>

#include "core/base/id.h"
#include "core/base/text.h"
#include "core/forecast/decisions/measure_first.h"
#include "core/forecast/decisions/part_outlook.h"
#include "core/forecast/words.h"
#include "mobile/commands/cautions.h"
#include "mobile/commands/console.h"
#include "mobile/commands/forecast_output.h"
#include "mobile/commands/text_layout.h"

namespace kneerail::commands {

namespace {

void print_head(const ForecastView& view, std::size_t answered, std::ostream& out) {
  const auto parts = std::count_if(
      view.portfolio.parts.begin(), view.portfolio.parts.end(),
      [&](const forecast::Part& part) { return view.site.empty() || part.site == view.site; });
  out << "Forecast as of " << to_text(view.portfolio.as_of) << ": "
      << (view.site.empty()
              ? counted(static_cast<std::int64_t>(view.places.sites.size()), "site", "sites")
              : view.places.sites.at(view.site))
      << ", " << counted(parts, "part", "parts") << ", of which "
      << with_commas(static_cast<std::int64_t>(answered)) << " have a coating forecast.\n"
      << "Limits answered: coating gone, first maintenance of the coating, set screws under their\n"
         "lowest torque, condition grades, walls of tubes.\n\n";
}

const forecast::LimitForecast* first_maintenance(const ForecastView& view, std::size_t gone) {
  for (std::size_t i = gone + 1; i < view.forecast.limits.size(); ++i) {
    const forecast::LimitForecast& limit = view.forecast.limits[i];
    if (limit.part != view.forecast.limits[gone].part) return nullptr;
    if (limit.answered && limit.limit == forecast::Limit::coating_first_maintenance) return &limit;
  }
  return nullptr;
}

void print_ranked(std::size_t rank, const std::string& words, std::ostream& out) {
  const std::string number = std::to_string(rank) + ".";
  out << std::string(number.size() < 4 ? 4 - number.size() : 0, ' ') << number << " " << words
      << "\n";
}

void print_place(const ForecastView& view, std::size_t place, std::size_t rank, std::ostream& out) {
  const forecast::LimitForecast& row = view.forecast.limits[place];
  const std::string& id = view.portfolio.parts[static_cast<std::size_t>(row.part)].id;
  print_ranked(rank, place_words(view.places, id), out);
}

/// "by 2030-05-01: 12 %", where a date is asked.
std::string on_words(const ForecastView& view, const forecast::LimitForecast& row,
                     const std::string& before, const std::string& after) {
  if (!view.on || !row.p_on) return {};
  return before + to_text(*view.on) + ": " + forecast::chance_words(*row.p_on) + after;
}

void print_part(const ForecastView& view, std::size_t place, std::size_t rank, std::ostream& out) {
  const forecast::LimitForecast& gone = view.forecast.limits[place];
  print_place(view, place, rank, out);
  print_wrapped(
      "Chance that the coating is gone within 5 years: " + forecast::chance_words(gone.p_by[3]) +
          on_words(view, gone, "; by ", "") + ". " + with_names(gone.sentence, view.places),
      "     ", out);
  if (const forecast::LimitForecast* maintenance = first_maintenance(view, place)) {
    out << "     First maintenance " << forecast::life_with_band(maintenance->years) << ".\n";
  }
}

void print_first(const ForecastView& view, std::ostream& out) {
  auto outlooks = forecast::part_outlooks(view.portfolio, view.forecast.limits);
  std::erase_if(outlooks, [&](const forecast::PartOutlook& outlook) {
    const auto& part = view.portfolio.parts[static_cast<std::size_t>(outlook.part)];
    return !outlook.structural || (!view.site.empty() && part.site != view.site);
  });
  if (outlooks.empty()) return;
  const std::size_t listed = std::min(view.listed_of_others(), outlooks.size());
  out << "What goes first: " << listed << " of "
      << counted(static_cast<std::int64_t>(outlooks.size()), "part", "parts")
      << ", by the largest chance of a loose screw, a thin wall or\n"
         "the grade to replace at within "
      << fixed(view.portfolio.settings.horizon_years, 0) << " years\n";
  for (std::size_t i = 0; i < listed; ++i) {
    const forecast::PartOutlook& outlook = outlooks[i];
    const auto& why = view.forecast.limits[*outlook.structural];
    print_place(view, *outlook.structural, i + 1, out);
    const std::string chance = outlook.seen_past
                                   ? std::string()
                                   : forecast::chance_words(outlook.structural_chance) + " for " +
                                         forecast::limit_name(why.limit) + "; ";
    print_wrapped(chance + outlook.words + ".", "     ", out);
  }
  out << "\n";
}

void print_measure_first(const ForecastView& view, std::ostream& out) {
  if (!view.years_between_visits) return;
  for (const auto& [site, name] : view.places.sites) {
    if (!view.site.empty() && view.site != site) continue;
    const auto chosen = forecast::measure_first(
        view.portfolio, view.forecast.limits,
        {.site = site, .years_of_two_visits = 2 * *view.years_between_visits});
    if (chosen.empty()) continue;
    const std::size_t listed = std::min(view.listed(), chosen.size());
    out << "\nMeasure first at " << name << ", where the time does not do for all: " << listed
        << " of " << counted(static_cast<std::int64_t>(chosen.size()), "part", "parts") << "\n";
    for (std::size_t i = 0; i < listed; ++i) {
      const std::string& id = view.portfolio.parts[static_cast<std::size_t>(chosen[i].part)].id;
      print_ranked(i + 1, place_words(view.places, id), out);
      print_wrapped(with_names(chosen[i].words, view.places), "     ", out);
    }
  }
}

/// Rows with their sentence, and in brackets how well founded it is, where the sentence does not
/// say so itself.
void print_rows(const ForecastView& view, const std::vector<std::size_t>& order,
                const std::string& head, const std::string& by, std::ostream& out) {
  const std::size_t listed = std::min(view.listed_of_others(), order.size());
  out << "\n" << head << ", worst first: " << listed << " of " << by << " within 5 years\n";
  for (std::size_t i = 0; i < listed; ++i) {
    const forecast::LimitForecast& row = view.forecast.limits[order[i]];
    print_place(view, order[i], i + 1, out);
    const std::string founded = row.grades_now ? "" : " (" + row.words + ")";
    print_wrapped(
        with_names(row.sentence + founded, view.places) + on_words(view, row, " By ", "."), "     ",
        out);
  }
}

void print_screws(const ForecastView& view, std::ostream& out) {
  const auto order = worst_first(view, forecast::Limit::torque_minimum);
  if (order.empty()) return;
  print_rows(view, order, "Set screws",
             counted(static_cast<std::int64_t>(order.size()), "fitting", "fittings") +
                 ", by the chance of being under the lowest torque",
             out);
}

void print_walls(const ForecastView& view, std::ostream& out) {
  const auto order = worst_first(view, forecast::Limit::wall_limit);
  if (order.empty()) return;
  print_rows(view, order, "Walls of tubes",
             counted(static_cast<std::int64_t>(order.size()), "tube", "tubes") +
                 ", by the chance of being down to the limit",
             out);
}

void print_grades(const ForecastView& view, std::ostream& out) {
  const auto order = worst_grades_first(view);
  const bool graded = std::ranges::any_of(
      order, [&](std::size_t i) { return view.forecast.limits[i].readings_used > 0; });
  if (!graded) return;
  print_rows(view, order, "Condition grades",
             counted(static_cast<std::int64_t>(order.size()), "part", "parts") +
                 ", by the chance of the grade to replace at",
             out);
}

void print_inspectors(const ForecastView& view, std::ostream& out) {
  if (view.inspectors.empty()) return;
  out << "\nInspectors' grades against everybody's, for who leads them\n";
  for (const forecast::InspectorHabit& habit : view.inspectors) {
    const std::string words =
        habit.words.empty() ? habit.inspector + " grades like the others" : habit.words;
    print_wrapped(with_names(words, view.places) + " (" +
                      counted(habit.grades, "fresh grade", "fresh grades") + ")",
                  "  ", out);
  }
}

void print_notes(const ForecastView& view, std::ostream& out) {
  std::vector<std::string> lines = view.forecast.notes;
  for (const forecast::SessionReport& session : view.forecast.sessions) {
    if (!view.site.empty() && session.site != view.site) continue;
    const auto name = view.places.sites.find(session.site);
    const std::string& site = name == view.places.sites.end() ? session.site : name->second;
    for (const std::string& words : {session.words, session.check_words})
      if (!words.empty()) lines.push_back(site + ": " + words);
  }
  if (lines.empty()) return;
  out << "\nZones and gauges\n";
  for (const std::string& line : lines) {
    print_wrapped(with_names(line, view.places), "  ", out);
  }
}

std::string whose_record(const ForecastView& view, const forecast::TrackRecord& record) {
  const auto name = view.places.sites.find(record.site);
  std::string where = record.site == "all"              ? "all sites"
                      : name == view.places.sites.end() ? record.site
                                                        : name->second;
  if (record.issued) where += ", report of " + to_text(*record.issued);
  return where + (record.stratum == "all" ? ", horizon " + record.horizon : ", " + record.stratum);
}

void print_record(const ForecastView& view, const forecast::TrackRecord& record,
                  std::ostream& out) {
  out << "  " << whose_record(view, record) << ": "
      << counted(record.readings, "reading", "readings") << " of "
      << counted(record.sessions, "session", "sessions")
      << "; inside the 50, 80 and 90 % band: " << forecast::chance_words(record.inside_50) << ", "
      << forecast::chance_words(record.inside_80) << ", "
      << forecast::chance_words(record.inside_90) << "\n";
}

/// Of all readings of a site or a report, not of one horizon or stratum.
bool is_whole(const forecast::TrackRecord& record) {
  return record.horizon == "all" && record.stratum == "all";
}

/// A table with a sentence for each site; the rows of the site asked for.
bool print_records(const ForecastView& view, const std::vector<forecast::TrackRecord>& records,
                   std::ostream& out) {
  bool any = false;
  for (const forecast::TrackRecord& record : records) {
    if (!view.site.empty() && record.site != view.site && record.site != "all") continue;
    any = true;
    print_record(view, record, out);
    if (is_whole(record)) print_wrapped(record.words, "    ", out);
  }
  return any;
}

void print_track_record(const ForecastView& view, std::ostream& out) {
  if (view.forecast.track_record.empty()) return;
  out << "\nTrack record: readings hidden, then compared with what would have been said of them\n";
  if (view.track_record) {
    print_records(view, view.forecast.track_record, out);
    return;
  }
  for (const forecast::TrackRecord& record : view.forecast.track_record)
    if (record.site == "all" && is_whole(record)) print_wrapped(record.words, "  ", out);
}

void print_reports(const ForecastView& view, std::ostream& out) {
  if (!view.track_record) return;
  out << "\nReports issued earlier, against what was read since\n";
  if (!view.reports)
    out << "  Not judged: a forecast joined from parts knows no readings.\n";
  else if (!print_records(view, *view.reports, out))
    out << "  No report with coatings read since is on record: nothing to judge.\n";
  for (const std::string& note : view.report_notes) print_wrapped(note, "  ", out);
}

void print_later_visits(const ForecastView& view, std::ostream& out) {
  if (view.later_visits.empty()) return;
  std::int64_t readings = 0;
  for (const LaterVisit& visit : view.later_visits) readings += visit.readings;
  out << "\nAfter " << to_text(view.portfolio.as_of) << ", and left out: "
      << counted(static_cast<std::int64_t>(view.later_visits.size()), "visit", "visits") << " with "
      << counted(readings, "reading", "readings") << "\n";
  for (const LaterVisit& visit : view.later_visits) {
    const auto name = view.places.sites.find(visit.site);
    out << "  " << to_text(visit.day) << ", "
        << (name == view.places.sites.end() ? visit.site : name->second) << ": "
        << counted(visit.readings, "reading", "readings") << "\n";
  }
}

void print_left_out(const ForecastView& view, std::ostream& out) {
  std::map<std::string, std::int64_t> by_reason;
  for (const forecast::LeftOut& reading : view.forecast.left_out) ++by_reason[reading.reason];
  if (by_reason.empty()) return;
  out << "\nReadings left out, by reason\n";
  for (const auto& [reason, count] : by_reason) {
    out << "  " << reason << ": " << with_commas(count) << "\n";
  }
}

void print_not_answered(const ForecastView& view, forecast::Limit limit, const char* title,
                        std::ostream& out) {
  std::map<std::string, std::int64_t> by_words;
  for (const forecast::LimitForecast& row : view.forecast.limits) {
    const bool here = view.site.empty() ||
                      view.portfolio.parts[static_cast<std::size_t>(row.part)].site == view.site;
    if (here && !row.answered && row.limit == limit) ++by_words[row.words];
  }
  if (by_words.empty()) return;
  out << "\n" << title << ", and why\n";
  for (const auto& [words, count] : by_words) {
    out << "  " << words << ": " << counted(count, "part", "parts") << "\n";
  }
}

}  // namespace

std::string with_names(const std::string& text, const Places& places) {
  constexpr std::size_t length = 36;
  std::string named;
  for (std::size_t i = 0; i < text.size();) {
    const std::string id = text.substr(i, length);
    const auto found = uuid_from_text(id) ? places.names.find(id) : places.names.end();
    if (found == places.names.end()) {
      named += text[i++];
    } else {
      named += found->second;
      i += length;
    }
  }
  return named;
}

void print_text(const ForecastView& view, std::ostream& out) {
  const std::vector<std::size_t> order = worst_first(view);
  print_head(view, order.size(), out);
  print_first(view, out);
  const std::size_t listed = std::min(view.listed(), order.size());
  out << "Coatings, worst first: " << listed << " of "
      << counted(static_cast<std::int64_t>(order.size()), "part", "parts")
      << ", by the chance that the coating is gone within 5 years\n";
  for (std::size_t i = 0; i < listed; ++i) print_part(view, order[i], i + 1, out);
  print_screws(view, out);
  print_grades(view, out);
  print_walls(view, out);
  print_measure_first(view, out);
  print_inspectors(view, out);
  print_notes(view, out);
  print_track_record(view, out);
  print_reports(view, out);
  print_later_visits(view, out);
  print_left_out(view, out);
  print_not_answered(view, forecast::Limit::coating_exhausted, "Parts without a coating forecast",
                     out);
  print_not_answered(view, forecast::Limit::torque_minimum, "Parts without a set-screw forecast",
                     out);
  print_not_answered(view, forecast::Limit::wall_limit, "Tubes without a wall forecast", out);
  out << "\n" << model_in_a_sentence() << "\n" << cautions();
}

}  // namespace kneerail::commands
