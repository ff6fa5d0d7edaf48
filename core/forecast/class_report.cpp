#include "core/forecast/class_report.h"

#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "core/base/text.h"
#include "core/forecast/preparation.h"
#include "core/forecast/shared_covariance.h"
#include "core/forecast/words.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

struct Estimate {
  double mean = 0;
  double sd = 0;
};

/// overall + site + zone: how far the zone's rate is from its class, ln.
Estimate zone_over_class(const CoatingModel& model, std::size_t site, int zone) {
  const CoreLayout layout = core_layout(model.data.sites[site]);
  Combination c;
  c.add(layout.size() + global_overall, 1);
  c.add(layout.site(), 1);
  c.add(layout.zone(zone), 1);
  const SharedCovariance shared(model.effects.sites[site], layout, 0);
  return {shared.estimate(c), std::sqrt(shared.covariance(c, c))};
}

/// Nothing where no part names a class.
std::optional<ZonePace> zone_pace(const CoatingModel& model, std::size_t s, int zone) {
  const CoatingSite& site = model.data.sites[s];
  const auto place = static_cast<std::size_t>(zone);
  const std::optional<ZoneClass>& named = site.zone_classes[place];
  if (!named) return {};
  const Estimate estimate = zone_over_class(model, s, zone);
  const double chance =
      statistics::normal_cdf((estimate.mean - named->ln_upper_over_prior) / estimate.sd);
  return ZonePace{site.name, site.zones[place], named->category, chance};
}

std::string zone_note(const CoatingModel& model, std::size_t s, int zone) {
  const auto pace = zone_pace(model, s, zone);
  if (!pace || pace->chance_faster < constant::perhaps_faster) return {};
  return concat({"site ", pace->site, ", zone ", pace->zone, ": ",
                 pace->is_likely_faster() ? "likely" : "perhaps", " faster than ",
                 to_text(pace->category), " (", chance_words(pace->chance_faster), ")"});
}

/// "rates are about 2.9 times what ..." when the ratio is further from 1 than `limit`.
std::string ratio_note(const std::string& whose, double ln_ratio, double limit) {
  if (std::abs(ln_ratio) <= std::log(limit)) return {};
  return concat({whose, ": rates are about ", two_digits(std::exp(ln_ratio)),
                 " times what the classes say: are class, unit and dates right?"});
}

void add_if_any(std::string note, std::vector<std::string>& notes) {
  if (!note.empty()) notes.push_back(std::move(note));
}

}  // namespace

bool ZonePace::is_likely_faster() const {
  return chance_faster >= constant::likely_faster;
}

std::vector<ZonePace> zone_paces(const CoatingModel& model) {
  std::vector<ZonePace> paces;
  for (std::size_t s = 0; s < model.data.sites.size(); ++s) {
    for (int zone = 0; zone < static_cast<int>(model.data.sites[s].zones.size()); ++zone) {
      if (model.effects.sites[s].zone_seen[static_cast<std::size_t>(zone)] == 0) continue;
      if (auto pace = zone_pace(model, s, zone)) paces.push_back(std::move(*pace));
    }
  }
  return paces;
}

std::vector<std::string> class_notes(const CoatingModel& model) {
  std::vector<std::string> notes;
  double total = 0;
  int sites = 0;
  for (std::size_t s = 0; s < model.data.sites.size(); ++s) {
    const CoatingSite& site = model.data.sites[s];
    double sum = 0;
    int zones = 0;
    for (int zone = 0; zone < static_cast<int>(site.zones.size()); ++zone) {
      if (model.effects.sites[s].zone_seen[static_cast<std::size_t>(zone)] == 0) continue;
      add_if_any(zone_note(model, s, zone), notes);
      sum += zone_over_class(model, s, zone).mean;
      ++zones;
    }
    if (zones == 0) continue;
    add_if_any(ratio_note("site " + site.name, sum / zones, constant::wrong_class_site_ratio),
               notes);
    total += sum / zones;
    ++sites;
  }
  if (sites > 0)
    add_if_any(ratio_note("all sites", total / sites, constant::wrong_class_ratio), notes);
  return notes;
}

std::vector<std::string> fit_notes(const SharedEffects& effects) {
  std::vector<std::string> notes;
  const auto none = [&](const char* what, double sd, const constant::Spread& spread) {
    if (sd <= spread.least) notes.push_back(concat({"differences between ", what, ": none found"}));
  };
  none("sites", effects.spreads.site, constant::site_spread);
  none("zones", effects.spreads.zone, constant::zone_spread);
  none("runs", effects.spreads.run, constant::run_spread);
  none("batches", effects.spreads.batch, constant::batch_spread);
  none("sessions", effects.spreads.offset_um, constant::offset_spread);
  if (effects.largest_move_ln > constant::settled_move_ln)
    notes.push_back(concat({"not settled: in the last pass a zone's rate still moved by ",
                            fixed(100 * effects.largest_move_ln, 0), " %"}));
  return notes;
}

}  // namespace kneerail::forecast
