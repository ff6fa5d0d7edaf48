#include "core/forecast/back_dated.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/text.h"
#include "core/forecast/hidden_readings.h"
#include "core/forecast/stage_one.h"

namespace kneerail::forecast {

namespace {

struct Horizon {
  const char* name;
  double from;
  double to;
};
constexpr double no_end = 1e9;
constexpr std::array<Horizon, 4> horizons{
    {{"all", -1, no_end}, {"to 2 yr", -1, 2}, {"2 to 5 yr", 2, 5}, {"over 5 yr", 5, no_end}}};

void hide(CoatingData& data, const std::vector<HiddenSite>& sites) {
  for (std::size_t s = 0; s < sites.size(); ++s) {
    if (!sites[s].cut) continue;
    const CoatingSite& site = data.sites[s];
    for (int i = site.first_segment; i < site.first_segment + site.segments; ++i) {
      Segment& segment = data.segments[static_cast<std::size_t>(i)];
      while (segment.visible > 0 &&
             data.means[static_cast<std::size_t>(segment.first + segment.visible - 1)].day >=
                 *sites[s].cut)
        --segment.visible;
    }
  }
}

void show_all(CoatingData& data) {
  for (Segment& segment : data.segments) segment.visible = segment.count;
}

/// Inside the central band of a share: a reading of bare metal or rust when the band reaches down
/// to it.
bool inside(const HiddenReading& reading, double share) {
  const double tail = (1 - share) / 2;
  return reading.bound ? reading.below >= tail : reading.below >= tail && reading.below <= 1 - tail;
}

std::string thousands(int number) {
  const std::string digits = std::to_string(number);
  std::string out;
  for (std::size_t i = 0; i < digits.size(); ++i) {
    if (i > 0 && (digits.size() - i) % 3 == 0) out += ',';
    out += digits[i];
  }
  return out;
}

std::string words_of(const TrackRecord& row, const std::string& since) {
  std::string words = "Of ";
  words += thousands(row.readings) + " readings forecast from before " + since + ", " +
           fixed(100 * row.inside_80, 0) + " % fell inside their 80 % band";
  if (row.readings < constant::judged_readings_least ||
      row.sessions < constant::judged_sessions_least)
    words += "; too few to judge";
  else if (row.inside_80 < constant::inside_80_low)
    words += "; the bands are too narrow here: rely on them less";
  else if (row.inside_80 > constant::inside_80_high)
    words += "; the bands are wider than they need be";
  return words + ". This is evidence, not proof: readings are nearer than dates.";
}

struct Tally {
  int readings = 0;
  std::set<std::int32_t> sessions;
  int in_50 = 0;
  int in_80 = 0;
  int in_90 = 0;

  void add(const HiddenReading& reading) {
    ++readings;
    sessions.insert(reading.session);
    in_50 += inside(reading, 0.5) ? 1 : 0;
    in_80 += inside(reading, 0.8) ? 1 : 0;
    in_90 += inside(reading, 0.9) ? 1 : 0;
  }
};

TrackRecord row_of(const Tally& tally, const std::string& site, const Horizon& horizon,
                   const std::string& since, double scale) {
  TrackRecord row;
  row.site = site;
  row.horizon = horizon.name;
  row.readings = tally.readings;
  row.sessions = static_cast<int>(tally.sessions.size());
  row.inside_50 = static_cast<double>(tally.in_50) / tally.readings;
  row.inside_80 = static_cast<double>(tally.in_80) / tally.readings;
  row.inside_90 = static_cast<double>(tally.in_90) / tally.readings;
  row.spread_scale = scale;
  row.words = words_of(row, since);
  return row;
}

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
  std::array<Tally, horizons.size()> all;
  for (std::size_t s = 0; s < sites.size(); ++s) {
    std::array<Tally, horizons.size()> own;
    for (const HiddenReading& reading : sites[s].readings)
      for (std::size_t h = 0; h < horizons.size(); ++h) {
        if (reading.years_ahead <= horizons[h].from || reading.years_ahead > horizons[h].to)
          continue;
        own[h].add(reading);
        all[h].add(reading);
      }
    for (std::size_t h = 0; h < horizons.size(); ++h)
      if (own[h].readings > 0)
        rows.push_back(
            row_of(own[h], data.sites[s].name, horizons[h], to_text(*sites[s].cut), scale));
  }
  for (std::size_t h = 0; h < horizons.size(); ++h)
    if (all[h].readings > 0)
      rows.push_back(row_of(all[h], "all", horizons[h], "each site's cut", scale));
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
  hide(data, sites);
  const SharedEffects refit = fit_shared_effects(data, effects,
                                                 {.passes = constant::refit_passes,
                                                  .workers = workers,
                                                  .move_spreads = false,
                                                  .move_weights = false});
  if (refit.computed)
    for_each_unit(static_cast<int>(sites.size()), workers, [&](int s) {
      const auto place = static_cast<std::size_t>(s);
      if (sites[place].cut) foretell(data, refit, data.sites[place], workers, sites[place]);
    });
  show_all(data);
  if (workers.stopped()) return {};
  const double scale = best_scale(sites);
  return {rows_of(data, sites, scale), scale};
}

}  // namespace kneerail::forecast
