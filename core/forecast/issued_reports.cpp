#include "core/forecast/issued_reports.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "core/forecast/coating_model.h"
#include "core/forecast/hidden_readings.h"
#include "core/forecast/stage_one.h"
#include "core/forecast/track_rows.h"

namespace kneerail::forecast {

namespace {

/// Sites that issued a report on a day.
using ReportDays = std::map<Date, std::set<std::string>>;

/// What was read of each site after a day, against its forecast of that day.
std::vector<HiddenSite> read_since(CoatingModel& model, Date day,
                                   const std::set<std::string>& asked, const Workers& workers) {
  CoatingData& data = model.data;
  std::vector<HiddenSite> sites(data.sites.size());
  const Date next{day.days + 1};  // a report is written after the day's readings
  for (HiddenSite& site : sites) site.cut = next;
  hide_from_cuts(data, sites);
  const SharedEffects refit = fit_shared_effects(data, model.effects,
                                                 {.passes = constant::refit_passes,
                                                  .workers = workers,
                                                  .move_spreads = false,
                                                  .move_weights = false});
  if (refit.computed)
    for_each_unit(static_cast<int>(sites.size()), workers, [&](int s) {
      const auto place = static_cast<std::size_t>(s);
      if (asked.contains(data.sites[place].name))
        foretell(data, refit, data.sites[place], workers, sites[place]);
    });
  show_all_readings(data);
  return sites;
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

Result<std::vector<TrackRecord>> judge_issued_reports(const Portfolio& portfolio,
                                                      const RunOptions& options) {
  ReportDays days;
  for (const IssuedReport& report : portfolio.reports)
    if (report.day < portfolio.as_of) days[report.day].insert(report.site);
  std::vector<TrackRecord> rows;
  if (days.empty()) return rows;
  RunOptions without = options;
  without.track_record = false;
  auto model = fit_coating_model(portfolio, without);
  if (!model) return fail(model.error());
  const Workers workers{.threads = options.threads, .stop = options.stop};
  for (const auto& [day, asked] : days) {
    const auto sites = read_since(*model, day, asked, workers);
    for (std::size_t s = 0; s < sites.size(); ++s)
      for (TrackRecord& row : rows_of_report(model->data.sites[s].name, day, sites[s]))
        rows.push_back(std::move(row));
  }
  if (workers.stopped())
    return fail(Fault::cancelled,
                "Reports issued: stopped before their end. Nothing was computed; the readings are "
                "as they were. Start it again when it is wanted.");
  std::stable_sort(rows.begin(), rows.end(), [](const TrackRecord& a, const TrackRecord& b) {
    return std::tie(a.site, *a.issued) < std::tie(b.site, *b.issued);
  });
  return rows;
}

}  // namespace kneerail::forecast
