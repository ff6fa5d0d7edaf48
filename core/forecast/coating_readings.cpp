#include "core/forecast/coating_readings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <tuple>

#include "core/forecast/constants.h"
#include "core/forecast/preparation.h"

namespace kneerail::forecast {

namespace {

/// Why a coating reading of a served part is no number for the model; null when it is one.
const char* unusable(const Portfolio& portfolio, const Reading& reading) {
  if (reading.surface == Surface::paint) return "layers_together";
  if (!std::isfinite(reading.value) || reading.value < 0) return "no_thickness";
  if (reading.censoring == Censoring::at_least) return "bound";
  if (reading.censoring == Censoring::at_most && reading.value > constant::gone_below_um)
    return "bound";
  const Date day = day_of(portfolio, reading);
  if (day > portfolio.as_of) return "after_as_of";
  const Part& part = portfolio.parts[static_cast<std::size_t>(reading.part)];
  const std::optional<Date> installed = put_up(part, portfolio.as_of);
  if (installed && day < *installed) return "before_installed";
  return nullptr;
}

SeenSurface seen_surface(const Reading& reading) {
  if (reading.surface == Surface::rust) return SeenSurface::rust;
  return reading.surface == Surface::zinc ? SeenSurface::zinc : SeenSurface::nothing;
}

bool can_be_foil(double true_um, double read_um) {
  return thickness_um(true_um) &&
         std::abs(read_um - true_um) <=
             std::max(constant::foil_off_most_um, constant::foil_off_share * true_um);
}

std::string odd_foil(const Visit& visit) {
  return "site " + visit.site + ": the check foil of gauge " + gauge_name(visit) + " on " +
         to_text(visit.day) + " is too far off to be one; not used";
}

/// Numbers sessions in the order of site, day and gauge, whatever order readings come in.
class SessionIndex {
 public:
  SessionIndex(const Portfolio& portfolio, const CoatingData& data)
      : portfolio_(portfolio), data_(data), grain_(data.sites.size(), 0) {}

  void note(std::int32_t part, const Reading& reading) {
    const std::string& inspector =
        portfolio_.visits[static_cast<std::size_t>(reading.visit)].inspector;
    const Date day = day_of(portfolio_, reading);
    const auto [at, is_new] = sessions_.try_emplace(key(part, reading), Entry{0, &inspector, day});
    Entry& entry = at->second;
    entry.first_day = std::min(entry.first_day, day);
    if (!is_new && entry.inspector != nullptr && *entry.inspector != inspector)
      entry.inspector = nullptr;
  }

  /// Takes together the days of a site that has more sessions than can be reckoned. Whether any
  /// was: then everything is to be noted again.
  bool coarsen() {
    std::vector<int> counts(grain_.size(), 0);
    for (const auto& [key, entry] : sessions_) ++counts[static_cast<std::size_t>(std::get<0>(key))];
    bool any = false;
    for (std::size_t s = 0; s < counts.size(); ++s)
      if (counts[s] > constant::site_sessions_most && grain_[s] + 1 < grains.size()) {
        ++grain_[s];
        any = true;
      }
    if (any) sessions_.clear();
    return any;
  }

  void number(CoatingData& data, std::vector<std::string>& notes) {
    for (std::size_t s = 0; s < grain_.size(); ++s)
      if (grain_[s] > 0)
        notes.push_back("site " + data.sites[s].name + ": more days of readings than can be " +
                        "reckoned one by one; those of one " + grains[grain_[s]].name +
                        " count as one visit");
    for (auto& [key, entry] : sessions_) {
      const std::int32_t site = std::get<0>(key);
      const std::string& gauge = std::get<2>(key);
      CoatingSite& home = data.sites[static_cast<std::size_t>(site)];
      entry.place = static_cast<std::int32_t>(data.sessions.size());
      if (home.sessions++ == 0) home.first_session = entry.place;
      data.sessions.push_back({site,
                               entry.first_day,
                               gauge,
                               {},
                               entry.inspector != nullptr ? *entry.inspector : std::string(),
                               -1,
                               false});
    }
  }

  [[nodiscard]] std::int32_t place(std::int32_t part, const Reading& reading) const {
    return sessions_.at(key(part, reading)).place;
  }

  void add_checks(CoatingData& data, std::vector<std::string>& notes) const {
    std::map<std::string, std::int32_t> sites;
    for (std::size_t i = 0; i < data.sites.size(); ++i)
      sites.emplace(data.sites[i].name, static_cast<std::int32_t>(i));
    for (const Visit& visit : portfolio_.visits) {
      const bool foil = visit.foil_true_um && visit.foil_read_um;
      if (!foil && !visit.gauge_not_in_order) continue;
      const bool usable = foil && can_be_foil(*visit.foil_true_um, *visit.foil_read_um);
      if (foil && !usable) notes.push_back(odd_foil(visit));
      const auto site = sites.find(visit.site);
      if (site == sites.end()) continue;
      const auto found = sessions_.find(key(site->second, visit.day, visit));
      if (found == sessions_.end()) continue;
      Session& session = data.sessions[static_cast<std::size_t>(found->second.place)];
      session.not_in_order = session.not_in_order || visit.gauge_not_in_order;
      if (usable) session.foils.push_back({*visit.foil_true_um, *visit.foil_read_um});
    }
    for (Session& session : data.sessions)
      std::sort(session.foils.begin(), session.foils.end(), [](const Foil& a, const Foil& b) {
        return std::tie(a.true_um, a.read_um) < std::tie(b.true_um, b.read_um);
      });
  }

 private:
  using Key = std::tuple<std::int32_t, Date, std::string>;
  struct Entry {
    std::int32_t place;
    const std::string* inspector;  ///< null: several
    Date first_day;
  };
  /// What counts as one session.
  struct Grain {
    int days;
    bool by_gauge;
    const char* name;
  };
  static constexpr std::array<Grain, 4> grains{{{1, true, "day"},
                                                {30, true, "gauge and month"},
                                                {365, true, "gauge and year"},
                                                {365, false, "year"}}};

  [[nodiscard]] Key key(std::int32_t part, const Reading& reading) const {
    const Visit& visit = portfolio_.visits[static_cast<std::size_t>(reading.visit)];
    return key(data_.parts[static_cast<std::size_t>(part)].site, day_of(portfolio_, reading),
               visit);
  }
  [[nodiscard]] Key key(std::int32_t site, Date day, const Visit& visit) const {
    const Grain& grain = grains[grain_[static_cast<std::size_t>(site)]];
    return {site, Date{day.days - (day.days % grain.days + grain.days) % grain.days},
            grain.by_gauge ? gauge_name(visit) : std::string("all gauges")};
  }

  const Portfolio& portfolio_;
  const CoatingData& data_;
  std::vector<std::size_t> grain_;  ///< by site, place in grains
  std::map<Key, Entry> sessions_;
};

/// First the sessions, so that they can be numbered in order; then the readings.
template <class Visitor>
void each_usable(const Portfolio& portfolio, const std::vector<std::int32_t>& served,
                 Visitor visit) {
  for (std::size_t i = 0; i < portfolio.readings.size(); ++i) {
    const Reading& reading = portfolio.readings[i];
    if (reading.quantity != Quantity::coating_um) continue;
    const std::int32_t part = served[static_cast<std::size_t>(reading.part)];
    if (part >= 0 && unusable(portfolio, reading) == nullptr)
      visit(static_cast<std::int32_t>(i), part, reading);
  }
}

void note_unusable(const Portfolio& portfolio, const std::vector<std::int32_t>& served,
                   CoatingData& data) {
  for (std::size_t i = 0; i < portfolio.readings.size(); ++i) {
    const Reading& reading = portfolio.readings[i];
    if (reading.quantity != Quantity::coating_um) continue;
    const auto place = static_cast<std::size_t>(reading.part);
    if (served[place] < 0)
      leave_out(portfolio, static_cast<std::int32_t>(i),
                left_out_reason(portfolio.parts[place]).c_str(), data);
    else if (const char* reason = unusable(portfolio, reading))
      leave_out(portfolio, static_cast<std::int32_t>(i), reason, data);
  }
}

}  // namespace

Date day_of(const Portfolio& portfolio, const Reading& reading) {
  return reading.seen.value_or(portfolio.visits[static_cast<std::size_t>(reading.visit)].day);
}

std::vector<std::int32_t> served_index(const Portfolio& portfolio, const CoatingData& data) {
  std::vector<std::int32_t> index(portfolio.parts.size(), -1);
  for (std::size_t i = 0; i < data.parts.size(); ++i)
    index[static_cast<std::size_t>(data.parts[i].place)] = static_cast<std::int32_t>(i);
  return index;
}

std::string gauge_name(const Visit& visit) {
  return visit.coating_gauge.empty() ? "inspector " + visit.inspector : visit.coating_gauge;
}

std::vector<UsedReading> used_readings(const Portfolio& portfolio, GatheredCoating& into) {
  CoatingData& data = into.data;
  const auto served = served_index(portfolio, data);
  note_unusable(portfolio, served, data);
  SessionIndex sessions(portfolio, data);
  do {
    each_usable(portfolio, served, [&](std::int32_t, std::int32_t part, const Reading& reading) {
      sessions.note(part, reading);
    });
  } while (sessions.coarsen());
  sessions.number(data, into.notes.coarse_days);
  sessions.add_checks(data, into.notes.foils);
  std::vector<UsedReading> used;
  each_usable(portfolio, served,
              [&](std::int32_t place, std::int32_t part, const Reading& reading) {
                used.push_back({part, sessions.place(part, reading), place, reading.spot,
                                reading.replicate, seen_surface(reading), reading.value});
              });
  // Sessions are numbered by day within a site, and a part has one site.
  std::sort(used.begin(), used.end(), [](const UsedReading& a, const UsedReading& b) {
    return std::tie(a.part, a.session, a.spot, a.replicate, a.value_um, a.place) <
           std::tie(b.part, b.session, b.spot, b.replicate, b.value_um, b.place);
  });
  return used;
}

void leave_out_slips(const Portfolio& portfolio, GatheredCoating& into,
                     std::vector<UsedReading>& readings) {
  std::erase_if(readings, [&](const UsedReading& reading) {
    const double as_um = 1000 * reading.value_um;
    const bool too_thick = reading.value_um > constant::largest_coating_um;
    const bool millimetres = reading.value_um < constant::slip_largest_mm &&
                             as_um >= constant::slip_smallest_um &&
                             as_um <= constant::largest_coating_um;
    if (!too_thick && !millimetres) return false;
    ++(too_thick ? into.notes.too_thick : into.notes.millimetres);
    leave_out(portfolio, reading.place, too_thick ? "too_large" : "unit_mm", into.data);
    return true;
  });
}

}  // namespace kneerail::forecast
