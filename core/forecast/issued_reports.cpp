#include "core/forecast/issued_reports.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "core/forecast/coating_model.h"
#include "core/forecast/hidden_readings.h"
#include "core/forecast/track_rows.h"

namespace kneerail::forecast {

namespace {

/// Sites that issued a report on a day.
using ReportDays = std::map<Date, std::set<std::string>>;

/// What was read of each site after a day, against its forecast of that day; nothing where that
/// could not be computed.
std::optional<std::vector<HiddenSite>> read_since(CoatingModel& model, Date day,
                                                  const std::set<std::string>& asked,
                                                  const Workers& workers) {
  CoatingData& data = model.data;
  std::vector<HiddenSite> sites(data.sites.size());
  const Date next{day.days + 1};  // a report is written after the day's readings
  for (HiddenSite& site : sites) site.cut = next;
  const auto wanted = [&](std::size_t site) { return asked.contains(data.sites[site].name); };
  if (!foretell_from_cuts(data, model.effects, workers, wanted, sites)) return std::nullopt;
  return sites;
}

/// Only the latest stay; a sentence says how many did not.
void take_latest(ReportDays& days, std::vector<std::string>& notes) {
  if (days.size() <= report_days_judged) return;
  const auto first = std::prev(days.end(), static_cast<std::ptrdiff_t>(report_days_judged));
  std::size_t reports = 0;
  for (auto one = days.begin(); one != first; ++one) reports += one->second.size();
  notes.push_back("Reports issued before " + to_text(first->first) +
                  " are not judged: " + grouped(static_cast<int>(reports)) +
                  " of them. Each day asks for a fit of its "
                  "own, and the latest " +
                  std::to_string(report_days_judged) + " are looked at.");
  days.erase(days.begin(), first);
}

std::vector<TrackRecord> rows_of_report(const std::string& site, Date day,
                                        const HiddenSite& hidden) {
  std::vector<const HiddenReading*> readings;
  for (const HiddenReading& reading : hidden.readings) readings.push_back(&reading);
  auto rows = track_rows(
      site, readings,
      [&](int count) {
        return "Of " + grouped(count) + " readings since the report of " + to_text(day);
      },
      1);
  for (TrackRecord& row : rows) row.issued = day;
  return rows;
}

}  // namespace

Result<JudgedReports> judge_issued_reports(const Portfolio& portfolio, const RunOptions& options) {
  ReportDays days;
  for (const IssuedReport& report : portfolio.reports)
    if (report.day < portfolio.as_of) days[report.day].insert(report.site);
  JudgedReports out;
  if (days.empty()) return out;
  take_latest(days, out.notes);
  std::vector<TrackRecord>& rows = out.rows;
  RunOptions without = options;
  without.track_record = false;
  auto model = fit_coating_model(portfolio, without);
  if (!model) return fail(model.error());
  const Workers workers{.threads = options.threads, .stop = options.stop};
  for (const auto& [day, asked] : days) {
    const auto sites = read_since(*model, day, asked, workers);
    if (!sites) {
      out.notes.push_back("The report of " + to_text(day) +
                          " is not judged: what was known that day did not fix a forecast.");
      continue;
    }
    for (std::size_t s = 0; s < sites->size(); ++s)
      for (TrackRecord& row : rows_of_report(model->data.sites[s].name, day, (*sites)[s]))
        rows.push_back(std::move(row));
  }
  if (workers.stopped())
    return fail(Fault::cancelled,
                "Reports issued: stopped before their end. Nothing was computed; the readings are "
                "as they were. Start it again when it is wanted.");
  std::stable_sort(rows.begin(), rows.end(), [](const TrackRecord& a, const TrackRecord& b) {
    return std::tie(a.site, *a.issued) < std::tie(b.site, *b.issued);
  });
  return out;
}

}  // namespace kneerail::forecast
