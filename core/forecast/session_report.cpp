#include "core/forecast/session_report.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/text.h"
#include "core/forecast/posterior.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

SessionReport report_of(const CoatingModel& model, std::size_t place) {
  const Session& session = model.data.sessions[place];
  const auto site_place = static_cast<std::size_t>(session.site);
  const CoatingSite& site = model.data.sites[site_place];
  const CoreLayout layout = core_layout(site);
  const int own = static_cast<int>(place) - site.first_session;
  const Correction at_50 = session_correction(
      model.data, model.effects, static_cast<std::int32_t>(place), constant::gauge_words_at_um);
  SessionReport report;
  report.site = site.name;
  report.gauge = session.gauge;
  report.day = session.day;
  report.offset_um = at_50.mean_um;
  report.gain = model.effects.sites[site_place].core[static_cast<std::size_t>(layout.gain(own))];
  const double size = std::abs(at_50.mean_um);
  if (size > constant::gauge_words_um &&
      size > constant::gauge_words_sds * std::sqrt(at_50.variance))
    report.words = concat({"gauge ", session.gauge, " read about ", fixed(size, 0), " um ",
                           at_50.mean_um > 0 ? "high" : "low", " on ", to_text(session.day),
                           "; corrected in the forecast"});
  if (session.not_in_order)
    report.check_words = concat({"a check of gauge ", session.gauge, " was not in order on ",
                                 to_text(session.day), "; measure again what it read then"});
  return report;
}

/// Two sessions of one gauge that follow each other, both off the same way.
void name_drift(std::vector<SessionReport>& reports) {
  std::map<std::string, std::vector<SessionReport*>> by_gauge;
  for (SessionReport& report : reports) by_gauge[report.gauge].push_back(&report);
  for (auto& [gauge, sessions] : by_gauge) {
    std::stable_sort(sessions.begin(), sessions.end(),
                     [](const auto* a, const auto* b) { return a->day < b->day; });
    std::vector<char> drifting(sessions.size(), 0);
    for (std::size_t i = 1; i < sessions.size(); ++i) {
      const bool both = !sessions[i - 1]->words.empty() && !sessions[i]->words.empty();
      if (both && sessions[i - 1]->offset_um * sessions[i]->offset_um > 0)
        drifting[i - 1] = drifting[i] = 1;
    }
    for (std::size_t i = 0; i < sessions.size(); ++i)
      if (drifting[i] != 0) sessions[i]->words += "; drifting";
  }
}

}  // namespace

std::vector<SessionReport> session_reports(const CoatingModel& model) {
  std::vector<SessionReport> reports;
  for (std::size_t i = 0; i < model.data.sessions.size(); ++i)
    reports.push_back(report_of(model, i));
  name_drift(reports);
  return reports;
}

}  // namespace kneerail::forecast
