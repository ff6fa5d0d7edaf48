#include "core/forecast/wall/wall_data.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>
#include <utility>

#include "core/corrosion/attack.h"
#include "core/forecast/coating_readings.h"
#include "core/forecast/preparation.h"
#include "core/forecast/wall/constants.h"
#include "core/forecast/words.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

bool is_tube(const Part& part) {
  return part.kind == PartKind::post_tube || part.kind == PartKind::rail_tube;
}

bool is_positive(const std::optional<double>& value) {
  return value && *value > 0 && std::isfinite(*value);
}

std::string why_no_wall(const Part& part) {
  if (part.material == Material::painted_steel) return "steel under paint: measure the wall";
  if (part.material == Material::aluminium || part.material == Material::stainless)
    return "no loss rate for this metal";
  if (part.out_of_shape) return "dented, oval or holed: not projected; refer to an engineer";
  if (!is_positive(part.zinc_rate_um_per_year) && !part.category &&
      !is_positive(part.steel_rate_um_per_year))
    return "no corrosivity class and no rate of its zone is known";
  return {};
}

std::string no_limit_words(const WallTube& tube) {
  if (tube.load_not_known.empty()) return "no wall limit is set";
  return concat({"no wall limit is set, and none can be reckoned: ", tube.load_not_known});
}

/// The wall at which the tube counts as worn out, or why there is none.
void set_limit(const Part& part, WallTube& tube) {
  const auto least = part.carries ? structure::least_wall(*part.carries) : std::nullopt;
  const bool passes = !least || least->wall_mm;
  if (least && passes) tube.least_wall_mm = *least->wall_mm;
  tube.load_not_known = part.load_not_known;
  tube.yield_assumed = part.yield_assumed;
  if (is_positive(part.wall_limit_mm)) tube.owner_limit_mm = *part.wall_limit_mm;
  tube.limit_reckoned = tube.least_wall_mm > tube.owner_limit_mm;
  tube.limit_mm = std::max(tube.owner_limit_mm, tube.least_wall_mm);
  if (!tube.why_not.empty()) return;
  if (!passes || (is_positive(part.wall_nominal_mm) && tube.limit_mm >= *part.wall_nominal_mm))
    tube.why_not = "no reserve; refer to an engineer";
  else if (tube.limit_mm <= 0)
    tube.why_not = no_limit_words(tube);
}

/// How fast zinc and steel go by what the zone says, and which of its words won.
void set_rates(const Portfolio& portfolio, const Part& part, WallTube& tube) {
  const corrosion::AttackPath path(portfolio.settings.zinc_path_exponent);
  const auto ln_zinc = ln_prior_rate(part, path);
  const bool own_steel = is_positive(part.steel_rate_um_per_year);
  tube.steel_over_zinc = portfolio.settings.steel_over_zinc;
  if (own_steel) {
    tube.ratio_from = RatioFrom::zone;
    tube.class_steel_um_per_year = *part.steel_rate_um_per_year;
    if (ln_zinc) tube.steel_over_zinc = *part.steel_rate_um_per_year / std::exp(*ln_zinc);
  } else if (ln_zinc) {
    tube.class_steel_um_per_year = tube.steel_over_zinc * std::exp(*ln_zinc);
  }
}

/// Days from which the tube, its zinc and its hollow count.
struct Starts {
  std::optional<Date> tube;  ///< put up, or replaced
  std::optional<Date> zinc;  ///< or dipped again
  bool touched_up = false;   ///< steel had gone by then, nobody knows how much
};

std::vector<Starts> starts_of(const Portfolio& portfolio,
                              const std::vector<std::optional<Date>>& swapped) {
  std::vector<Starts> starts(portfolio.parts.size());
  for (std::size_t i = 0; i < starts.size(); ++i)
    starts[i].tube = starts[i].zinc = put_up(portfolio.parts[i], portfolio.as_of);
  const auto later = [](std::optional<Date>& day, Date other) {
    if (!day || *day < other) day = other;
  };
  for (const Work& work : portfolio.works) {
    if (work.day > portfolio.as_of) continue;
    Starts& own = starts[static_cast<std::size_t>(work.part)];
    if (work.action == Action::replace) later(own.tube, work.day);
    if (work.action == Action::touch_up) own.touched_up = true;
    if (work.action == Action::replace || work.action == Action::regalvanise)
      later(own.zinc, work.day);
  }
  for (std::size_t i = 0; i < swapped.size(); ++i) {
    if (!swapped[i]) continue;
    later(starts[i].tube, *swapped[i]);
    later(starts[i].zinc, *swapped[i]);
  }
  return starts;
}

void set_start(const Part& part, const Starts& starts, WallTube& tube) {
  // Of no known age: it may have stood before, its zinc new or not.
  const bool used = !starts.zinc || starts.touched_up ||
                    (starts.zinc && (!starts.tube || *starts.tube < *starts.zinc));
  tube.stands_since = starts.zinc;
  tube.hollow_since = starts.zinc;
  if (!is_positive(part.wall_nominal_mm)) return;
  const double nominal = *part.wall_nominal_mm;
  tube.start_mm = wall_constant::start_ratio * nominal;
  tube.start_sd_mm =
      nominal * (used ? wall_constant::used_start_ratio_sd : wall_constant::start_ratio_sd);
}

bool is_bound(const Reading& reading) {
  return reading.censoring == Censoring::at_least || reading.censoring == Censoring::at_most;
}

constexpr const char* out_of_range = "out_of_range";

/// Why a wall reading is no number for the model; null when it is one.
const char* unusable(const Portfolio& portfolio, const Reading& reading, const Starts& starts) {
  const Part& part = portfolio.parts[static_cast<std::size_t>(reading.part)];
  if (!is_tube(part)) return "no_wall_model";
  if (part.material != Material::zinc_coated_steel && part.material != Material::bare_steel)
    return "no_wall_model";
  if (!std::isfinite(reading.value) || reading.value <= 0) return "no_thickness";
  const Date day = day_of(portfolio, reading);
  if (day > portfolio.as_of) return "after_as_of";
  const std::optional<Date> installed = put_up(part, portfolio.as_of);
  if (installed && day < *installed) return "before_installed";
  if (starts.tube && day < *starts.tube) return "before_renewed";
  if (is_positive(part.wall_nominal_mm) && !is_bound(reading) &&
      (reading.value < wall_constant::odd_low * *part.wall_nominal_mm ||
       reading.value > wall_constant::odd_high * *part.wall_nominal_mm))
    return out_of_range;
  return nullptr;
}

/// Readings at one place. Where the place is not said each may be of another: the thinnest counts.
double wall_at(std::int16_t place, const std::vector<double>& values) {
  return place == 0 ? *std::min_element(values.begin(), values.end()) : median(values);
}

struct GaugeDay {
  std::map<std::int16_t, std::vector<double>> places;
  std::vector<std::string> readings;  ///< their ids
  [[nodiscard]] double thinnest_mm() const {
    double thinnest = std::numeric_limits<double>::infinity();
    for (const auto& [place, values] : places)
      thinnest = std::min(thinnest, wall_at(place, values));
    return thinnest;
  }
};

/// Readings of a part by day and gauge.
using Sessions = std::map<std::pair<Date, std::string>, GaugeDay>;

std::vector<WallMean> means_of(const Sessions& sessions) {
  std::vector<WallMean> means;
  for (const auto& [key, session] : sessions) {
    const auto& places = session.places;
    WallMean mean;
    mean.day = key.first;
    for (const auto& [place, values] : places)
      mean.wall_mm += median(values) / static_cast<double>(places.size());
    mean.variance_mm2 = wall_constant::reading_sd_mm * wall_constant::reading_sd_mm /
                            static_cast<double>(places.size()) +
                        wall_constant::session_sd_mm * wall_constant::session_sd_mm;
    means.push_back(mean);
  }
  return means;
}

std::string gauge_of(const Visit& visit) {
  return visit.wall_gauge.empty() ? "inspector " + visit.inspector : visit.wall_gauge;
}

/// By place in Portfolio::parts.
struct Found {
  std::vector<Sessions> sessions;
  std::vector<std::vector<OddWall>> odd;
  std::vector<std::vector<WallBound>> bounds;
  std::vector<std::vector<WallBound>> bounds_before_zinc;
};

Found found_on(const Portfolio& portfolio, const std::vector<Starts>& starts,
               std::vector<LeftOut>& left_out) {
  Found found{std::vector<Sessions>(portfolio.parts.size()),
              std::vector<std::vector<OddWall>>(portfolio.parts.size()),
              std::vector<std::vector<WallBound>>(portfolio.parts.size()),
              std::vector<std::vector<WallBound>>(portfolio.parts.size())};
  for (const Reading& reading : portfolio.readings) {
    if (reading.quantity != Quantity::wall_mm) continue;
    const auto part = static_cast<std::size_t>(reading.part);
    if (const char* reason = unusable(portfolio, reading, starts[part])) {
      left_out.push_back({reading.id, portfolio.parts[part].id, reason});
      if (reason == out_of_range)
        found.odd[part].push_back({day_of(portfolio, reading), reading.value, std::nullopt});
      continue;
    }
    if (is_bound(reading)) {
      const Date day = day_of(portfolio, reading);
      const bool at_most = reading.censoring == Censoring::at_most;
      const bool before_zinc = starts[part].zinc && day < *starts[part].zinc;
      if (before_zinc && !at_most)
        left_out.push_back({reading.id, portfolio.parts[part].id, "bound_before_zinc"});
      else
        (before_zinc ? found.bounds_before_zinc : found.bounds)[part].push_back(
            {day, reading.value, at_most});
      continue;
    }
    const Visit& visit = portfolio.visits[static_cast<std::size_t>(reading.visit)];
    GaugeDay& session = found.sessions[part][{day_of(portfolio, reading), gauge_of(visit)}];
    session.places[reading.spot].push_back(reading.value);
    session.readings.push_back(reading.id);
  }
  return found;
}

/// Sets what was read, but for what lies far above a reading of the same day or before: the low one
/// is kept, on the safe side.
void set_means(const std::string& part, const Sessions& sessions, WallTube& tube,
               std::vector<LeftOut>& left_out) {
  const std::vector<WallMean> all = means_of(sessions);
  auto session = sessions.begin();
  for (auto mean_at = all.begin(); mean_at != all.end(); ++mean_at, ++session) {
    const WallMean& mean = *mean_at;
    const auto thinner = std::find_if(all.begin(), all.end(), [&](const WallMean& other) {
      const double sd = std::sqrt(other.variance_mm2 + mean.variance_mm2);
      return other.day <= mean.day && mean.wall_mm - other.wall_mm > wall_constant::rise_sds * sd;
    });
    if (thinner == all.end()) {
      tube.readings.push_back(mean);
      continue;
    }
    tube.odd.push_back({mean.day, mean.wall_mm, *thinner});
    for (const std::string& reading : session->second.readings)
      left_out.push_back({reading, part, "rises"});
  }
}

/// Sets what was read before the zinc was renewed apart: it bounds the wall under the new zinc from
/// above. What steel may have lost from that day to the other is half taken off, and its spread.
void begin_under_zinc(const Starts& starts, WallTube& tube) {
  if (!starts.zinc) return;
  const auto after = std::find_if(tube.readings.begin(), tube.readings.end(),
                                  [&](const WallMean& mean) { return mean.day >= *starts.zinc; });
  tube.before_zinc.assign(tube.readings.begin(), after);
  tube.readings.erase(tube.readings.begin(), after);
  if (!tube.before_zinc.empty()) {
    const WallMean& last = tube.before_zinc.back();
    const double half_lost_mm =
        tube.class_steel_um_per_year * years_between(last.day, *starts.zinc) / 2000;
    tube.start_mm = std::max(0.0, last.wall_mm - half_lost_mm);
    tube.start_sd_mm = std::hypot(std::sqrt(last.variance_mm2), half_lost_mm);
  }
  for (const WallBound& bound : tube.bounds_before_zinc)
    tube.start_mm = std::min(tube.start_mm, bound.wall_mm);
}

/// By day, and of the places of one day that no model takes the thinnest.
void sort_odd(std::vector<OddWall>& odd) {
  const auto key = [](const OddWall& of) {
    return std::tuple(of.day, of.thinner.has_value(), of.wall_mm);
  };
  std::sort(odd.begin(), odd.end(),
            [&](const OddWall& a, const OddWall& b) { return key(a) < key(b); });
  odd.erase(std::unique(odd.begin(), odd.end(),
                        [](const OddWall& a, const OddWall& b) {
                          return a.day == b.day && !a.thinner && !b.thinner;
                        }),
            odd.end());
}

/// By day; of the bounds of one day and side the tightest.
void sort_bounds(std::vector<WallBound>& bounds) {
  std::sort(bounds.begin(), bounds.end(), [](const WallBound& a, const WallBound& b) {
    if (std::tie(a.day, a.at_most) != std::tie(b.day, b.at_most))
      return std::tie(a.day, a.at_most) < std::tie(b.day, b.at_most);
    return a.at_most ? a.wall_mm < b.wall_mm : a.wall_mm > b.wall_mm;
  });
  bounds.erase(std::unique(bounds.begin(), bounds.end(),
                           [](const WallBound& a, const WallBound& b) {
                             return a.day == b.day && a.at_most == b.at_most;
                           }),
               bounds.end());
}

/// Sets the places read at or under the limit: by what was read and by what the gauge could not.
void set_thin_places(const Sessions& sessions, WallTube& tube) {
  constexpr double sure = 1 - wall_constant::bound_slip;
  const double sd = std::hypot(wall_constant::reading_sd_mm, wall_constant::session_sd_mm);
  const auto add = [&](Date day, double wall_mm, bool is_bound) {
    if (wall_mm > tube.limit_mm) return;
    const double chance = std::min(sure, statistics::normal_cdf((tube.limit_mm - wall_mm) / sd));
    tube.thin.push_back({day, wall_mm, chance, is_bound});
  };
  for (const auto& [key, session] : sessions) add(key.first, session.thinnest_mm(), false);
  for (const auto* bounds : {&tube.bounds, &tube.bounds_before_zinc})
    for (const WallBound& bound : *bounds)
      if (bound.at_most) add(bound.day, bound.wall_mm, true);
  const auto key = [](const ThinPlace& of) { return std::tie(of.day, of.wall_mm, of.is_bound); };
  std::sort(tube.thin.begin(), tube.thin.end(),
            [&](const ThinPlace& a, const ThinPlace& b) { return key(a) < key(b); });
  tube.thin.erase(std::unique(tube.thin.begin(), tube.thin.end(),
                              [](const auto& a, const auto& b) { return a.day == b.day; }),
                  tube.thin.end());
}

/// The wall a tube begins with, where its readings tell more of it than its nominal.
void set_start_by_readings(const Starts& starts, WallTube& tube) {
  begin_under_zinc(starts, tube);
  if (!tube.why_not.empty()) return;
  const bool dated = tube.stands_since.has_value();
  if (tube.start_mm > 0 && (dated || !tube.bare || tube.readings.empty())) return;
  if (tube.readings.empty()) {
    tube.why_not = "no nominal wall and no wall reading";
    return;
  }
  // Bare steel of no known age begins with its first reading: how much had gone nobody knows.
  tube.start_mm = tube.readings.front().wall_mm;
  tube.start_sd_mm = wall_constant::unknown_start_sd_mm;
}

WallTube tube_of(const Portfolio& portfolio, std::int32_t place, const Starts& starts) {
  const Part& part = portfolio.parts[static_cast<std::size_t>(place)];
  WallTube tube;
  tube.place = place;
  tube.why_not = why_no_wall(part);
  tube.bare = part.material == Material::bare_steel;
  set_limit(part, tube);
  tube.open_chance = part.kind == PartKind::post_tube ? wall_constant::open_chance_post
                                                      : wall_constant::open_chance_rail;
  set_rates(portfolio, part, tube);
  set_start(part, starts, tube);
  return tube;
}

}  // namespace

std::optional<double> governing_wall_mm(const Part& part) {
  double limit_mm = is_positive(part.wall_limit_mm) ? *part.wall_limit_mm : 0;
  if (const auto least = part.carries ? structure::least_wall(*part.carries) : std::nullopt)
    limit_mm = std::max(limit_mm, least->wall_mm.value_or(part.wall_nominal_mm.value_or(0)));
  return limit_mm > 0 ? std::optional(limit_mm) : std::nullopt;
}

WallData prepare_walls(const Portfolio& portfolio,
                       const std::vector<std::optional<Date>>& swapped) {
  WallData data;
  data.as_of = portfolio.as_of;
  const auto starts = starts_of(portfolio, swapped);
  Found found = found_on(portfolio, starts, data.left_out);
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i) {
    if (!is_tube(portfolio.parts[i])) continue;
    data.tubes.push_back(tube_of(portfolio, static_cast<std::int32_t>(i), starts[i]));
    WallTube& tube = data.tubes.back();
    tube.odd = std::move(found.odd[i]);
    set_means(portfolio.parts[i].id, found.sessions[i], tube, data.left_out);
    sort_odd(tube.odd);
    tube.bounds = std::move(found.bounds[i]);
    sort_bounds(tube.bounds);
    tube.bounds_before_zinc = std::move(found.bounds_before_zinc[i]);
    sort_bounds(tube.bounds_before_zinc);
    set_thin_places(found.sessions[i], tube);
    set_start_by_readings(starts[i], tube);
  }
  std::sort(data.tubes.begin(), data.tubes.end(), [&](const WallTube& a, const WallTube& b) {
    return portfolio.parts[static_cast<std::size_t>(a.place)].id <
           portfolio.parts[static_cast<std::size_t>(b.place)].id;
  });
  std::sort(data.left_out.begin(), data.left_out.end(), [](const LeftOut& a, const LeftOut& b) {
    return std::tie(a.reading, a.part, a.reason) < std::tie(b.reading, b.part, b.reason);
  });
  return data;
}

}  // namespace kneerail::forecast
