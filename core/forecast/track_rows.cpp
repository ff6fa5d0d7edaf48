#include "core/forecast/track_rows.h"

#include <array>
#include <set>
#include <utility>

#include "core/base/text.h"
#include "core/forecast/constants.h"
#include "core/forecast/parallel.h"
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

constexpr std::array<const char*, strata> stratum_names{"no reading before", "1 reading before",
                                                        "2 to 3 readings before",
                                                        "4 and more readings before"};

/// Inside the central band of a share: a reading of bare metal or rust when the band reaches down
/// to it.
bool inside(const HiddenReading& reading, double share) {
  const double tail = (1 - share) / 2;
  return reading.bound ? reading.below >= tail : reading.below >= tail && reading.below <= 1 - tail;
}

std::string words_of(const TrackRecord& row, std::string opening) {
  std::string words =
      std::move(opening) + ", " + fixed(100 * row.inside_80, 0) + " % fell inside their 80 % band";
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

TrackRecord row_of(const Tally& tally) {
  TrackRecord row;
  row.readings = tally.readings;
  row.sessions = static_cast<int>(tally.sessions.size());
  row.inside_50 = static_cast<double>(tally.in_50) / tally.readings;
  row.inside_80 = static_cast<double>(tally.in_80) / tally.readings;
  row.inside_90 = static_cast<double>(tally.in_90) / tally.readings;
  return row;
}

void hide_from_cuts(CoatingData& data, const std::vector<HiddenSite>& sites) {
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

void show_all_readings(CoatingData& data) {
  for (Segment& segment : data.segments) segment.visible = segment.count;
}

}  // namespace

std::string grouped(int count) {
  const std::string digits = std::to_string(count);
  std::string out;
  for (std::size_t i = 0; i < digits.size(); ++i) {
    if (i > 0 && (digits.size() - i) % 3 == 0) out += ',';
    out += digits[i];
  }
  return out;
}

std::vector<TrackRecord> track_rows(const std::string& site,
                                    const std::vector<const HiddenReading*>& readings,
                                    const std::function<std::string(int count)>& opening,
                                    double spread_scale) {
  std::array<Tally, horizons.size()> by_horizon;
  std::array<Tally, strata> by_stratum;
  for (const HiddenReading* reading : readings) {
    by_stratum[static_cast<std::size_t>(reading->stratum)].add(*reading);
    for (std::size_t h = 0; h < horizons.size(); ++h)
      if (reading->years_ahead > horizons[h].from && reading->years_ahead <= horizons[h].to)
        by_horizon[h].add(*reading);
  }
  std::vector<TrackRecord> rows;
  const auto add = [&](const Tally& tally, const char* horizon, const char* stratum) {
    if (tally.readings == 0) return;
    TrackRecord row = row_of(tally);
    row.site = site;
    row.horizon = horizon;
    row.stratum = stratum;
    row.spread_scale = spread_scale;
    row.words = words_of(row, opening(row.readings));
    rows.push_back(std::move(row));
  };
  for (std::size_t h = 0; h < horizons.size(); ++h) add(by_horizon[h], horizons[h].name, "all");
  for (std::size_t s = 0; s < by_stratum.size(); ++s) add(by_stratum[s], "all", stratum_names[s]);
  return rows;
}

bool foretell_from_cuts(CoatingData& data, const SharedEffects& effects, const Workers& workers,
                        const std::function<bool(std::size_t site)>& asked,
                        std::vector<HiddenSite>& sites) {
  hide_from_cuts(data, sites);
  const SharedEffects refit = fit_shared_effects(data, effects,
                                                 {.passes = constant::refit_passes,
                                                  .workers = workers,
                                                  .move_spreads = false,
                                                  .move_weights = false});
  if (refit.computed)
    for_each_unit(static_cast<int>(sites.size()), workers, [&](int s) {
      const auto place = static_cast<std::size_t>(s);
      if (asked(place)) foretell(data, refit, data.sites[place], workers, sites[place]);
    });
  show_all_readings(data);
  return refit.computed;
}

}  // namespace kneerail::forecast
