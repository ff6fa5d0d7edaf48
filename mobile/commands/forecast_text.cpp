#include <algorithm>
#include <cmath>

#include "core/base/id.h"
#include "core/base/text.h"
#include "core/forecast/words.h"
#include "mobile/commands/cautions.h"
#include "mobile/commands/console.h"
#include "mobile/commands/forecast_output.h"

namespace kneerail::commands {

namespace {

std::string percent(double share) {
  // Never 100 % or 0 % of what is only likely.
  if (share > 0.99) return "over 99 %";
  if (share < 0.01) return "under 1 %";
  return std::to_string(std::lround(100 * share)) + " %";
}

std::string place_words(const ForecastView& view, const std::string& id) {
  const auto found = view.places.parts.find(id);
  if (found == view.places.parts.end()) return id;
  const PartPlace& place = found->second;
  std::string words = place.site + " · " + place.run;
  if (!place.post.empty()) words += " · post " + place.post;
  words += " at " + fixed(place.chainage_m, 1) + " m · " + place.part;
  return words;
}

/// Breaks at spaces so that no line is longer than the text of a person's terminal.
void print_wrapped(const std::string& text, const std::string& indent, std::ostream& out) {
  constexpr std::size_t width = 96;
  std::size_t from = 0;
  while (from < text.size()) {
    std::size_t end = text.size();
    if (end - from > width - indent.size()) {
      end = text.rfind(' ', from + width - indent.size());
      if (end == std::string::npos || end <= from) end = text.find(' ', from);
      if (end == std::string::npos) end = text.size();
    }
    out << indent << text.substr(from, end - from) << "\n";
    from = end + 1;
  }
}

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
      << "Limits answered: coating gone, and first maintenance of the coating. Wall, set screws "
         "and\n"
         "grades are not forecast by this version.\n\n";
}

const forecast::LimitForecast* first_maintenance(const ForecastView& view, std::size_t gone) {
  for (std::size_t i = gone + 1; i < view.forecast.limits.size(); ++i) {
    const forecast::LimitForecast& limit = view.forecast.limits[i];
    if (limit.part != view.forecast.limits[gone].part) return nullptr;
    if (limit.answered && limit.limit == forecast::Limit::coating_first_maintenance) return &limit;
  }
  return nullptr;
}

void print_part(const ForecastView& view, std::size_t place, std::size_t rank, std::ostream& out) {
  const forecast::LimitForecast& gone = view.forecast.limits[place];
  const std::string& id = view.portfolio.parts[static_cast<std::size_t>(gone.part)].id;
  const std::string number = std::to_string(rank) + ".";
  out << std::string(number.size() < 4 ? 4 - number.size() : 0, ' ') << number << " "
      << place_words(view, id) << "\n";
  print_wrapped("Chance that the coating is gone within 5 years: " + percent(gone.p_by[3]) + ". " +
                    with_names(gone.sentence, view.places),
                "     ", out);
  if (const forecast::LimitForecast* maintenance = first_maintenance(view, place)) {
    out << "     First maintenance " << forecast::life_with_band(maintenance->years) << ".\n";
  }
}

void print_notes(const ForecastView& view, std::ostream& out) {
  std::vector<std::string> lines = view.forecast.notes;
  for (const forecast::SessionReport& session : view.forecast.sessions) {
    if (session.words.empty() || (!view.site.empty() && session.site != view.site)) continue;
    const auto name = view.places.sites.find(session.site);
    lines.push_back((name == view.places.sites.end() ? session.site : name->second) + ": " +
                    session.words);
  }
  if (lines.empty()) return;
  out << "\nZones and gauges\n";
  for (const std::string& line : lines) {
    print_wrapped(with_names(line, view.places), "  ", out);
  }
}

void print_track_record(const ForecastView& view, std::ostream& out) {
  if (view.forecast.track_record.empty()) return;
  out << "\nTrack record: readings hidden, then compared with what would have been said of them\n";
  for (const forecast::TrackRecord& record : view.forecast.track_record) {
    const bool whole = record.site == "all" && record.horizon == "all";
    if (!whole && !view.track_record) continue;
    const auto name = view.places.sites.find(record.site);
    if (view.track_record) {
      const std::string where = record.site == "all"              ? "all sites"
                                : name == view.places.sites.end() ? record.site
                                                                  : name->second;
      out << "  " << where << ", horizon " << record.horizon << ": "
          << counted(record.readings, "reading", "readings") << " of "
          << counted(record.sessions, "session", "sessions")
          << "; inside the 50, 80 and 90 % band: " << percent(record.inside_50) << ", "
          << percent(record.inside_80) << ", " << percent(record.inside_90) << "\n";
    }
    print_wrapped(record.words, "  ", out);
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

void print_not_answered(const ForecastView& view, std::ostream& out) {
  std::map<std::string, std::int64_t> by_words;
  for (const forecast::LimitForecast& limit : view.forecast.limits) {
    const bool here = view.site.empty() ||
                      view.portfolio.parts[static_cast<std::size_t>(limit.part)].site == view.site;
    if (here && !limit.answered && limit.limit == forecast::Limit::coating_exhausted) {
      ++by_words[limit.words];
    }
  }
  if (by_words.empty()) return;
  out << "\nParts without a coating forecast, and why\n";
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
  const std::size_t listed = std::min(view.worst, order.size());
  out << "Worst first: " << listed << " of "
      << counted(static_cast<std::int64_t>(order.size()), "part", "parts")
      << ", by the chance that the coating is gone within 5 years\n";
  for (std::size_t i = 0; i < listed; ++i) print_part(view, order[i], i + 1, out);
  print_notes(view, out);
  print_track_record(view, out);
  print_left_out(view, out);
  print_not_answered(view, out);
  out << "\n" << model_in_a_sentence() << "\n" << cautions();
}

}  // namespace kneerail::commands
