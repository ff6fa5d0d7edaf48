#include "core/forecast/back_dated.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/text.h"
#include "core/forecast/constants.h"
#include "core/forecast/hidden_readings.h"
#include "core/forecast/track_rows.h"

namespace kneerail::forecast {

namespace {

/// Readings of one session share its offset, so a stratum that hangs on few sessions counts less.
double best_scale(const std::vector<HiddenSite>& sites) {
  std::array<double, constant::scale_steps> total{};
  std::size_t readings = 0;
  for (int stratum = 0; stratum < strata; ++stratum) {
    const auto at = static_cast<std::size_t>(stratum);
    std::set<std::int32_t> sessions;
    double count = 0;
    std::array<double, constant::scale_steps> sum{};
    for (const HiddenSite& site : sites) {
      for (const HiddenReading& reading : site.readings) {
        if (reading.stratum != stratum) continue;
        sessions.insert(reading.session);
        count += 1;
      }
      for (std::size_t step = 0; step < sum.size(); ++step) sum[step] += site.ln_score[at][step];
    }
    if (count == 0) continue;
    readings += static_cast<std::size_t>(count);
    const double worth =
        std::min(1.0, constant::sessions_worth * static_cast<double>(sessions.size()) / count);
    for (std::size_t step = 0; step < sum.size(); ++step) total[step] += worth * sum[step];
  }
  if (readings < constant::scale_readings_least) return 1;
  for (int step = 0; step < constant::scale_steps; ++step) {
    const double z = ln_scale_at(step) / constant::scale_sd_ln;
    total[static_cast<std::size_t>(step)] -= 0.5 * z * z;
  }
  const auto best = std::max_element(total.begin(), total.end()) - total.begin();
  return std::exp(ln_scale_at(static_cast<int>(best)));
}

std::vector<TrackRecord> rows_of(const CoatingData& data, const std::vector<HiddenSite>& sites,
                                 double scale) {
  std::vector<TrackRecord> rows;
  std::vector<const HiddenReading*> all;
  const auto add = [&](const std::string& site, const std::vector<const HiddenReading*>& readings,
                       const std::string& since) {
    const auto opening = [&](int count) {
      return "Of " + grouped(count) + " readings forecast from before " + since;
    };
    for (TrackRecord& row : track_rows(site, readings, opening, scale))
      rows.push_back(std::move(row));
  };
  for (std::size_t s = 0; s < sites.size(); ++s) {
    std::vector<const HiddenReading*> own;
    for (const HiddenReading& reading : sites[s].readings) own.push_back(&reading);
    all.insert(all.end(), own.begin(), own.end());
    if (!own.empty()) add(data.sites[s].name, own, to_text(*sites[s].cut));
  }
  add("all", all, "each site's cut");
  return rows;
}

}  // namespace

BackDated back_dated_forecast(CoatingData& data, const SharedEffects& effects,
                              const Workers& workers) {
  std::vector<HiddenSite> sites(data.sites.size());
  bool any = false;
  for (std::size_t s = 0; s < sites.size(); ++s) {
    sites[s].cut = cut_day(data, data.sites[s]);
    any = any || sites[s].cut.has_value();
  }
  if (!any) return {};
  (void)foretell_from_cuts(
      data, effects, workers, [&](std::size_t site) { return sites[site].cut.has_value(); }, sites);
  if (workers.stopped()) return {};
  const double scale = best_scale(sites);
  return {rows_of(data, sites, scale), scale};
}

}  // namespace kneerail::forecast
