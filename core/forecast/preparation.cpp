#include "core/forecast/preparation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <tuple>

#include "core/forecast/coating_readings.h"
#include "core/forecast/constants.h"
#include "core/forecast/rust.h"

namespace kneerail::forecast {

namespace {

bool has_zinc_model(PartKind kind) {
  return kind == PartKind::post_tube || kind == PartKind::rail_tube || kind == PartKind::fitting ||
         kind == PartKind::base_fixing;
}

/// Places of the served parts, by site and identifier.
std::vector<std::int32_t> served_places(const Portfolio& portfolio) {
  std::vector<std::int32_t> places;
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i)
    if (why_not_served(portfolio.parts[i]).empty()) places.push_back(static_cast<std::int32_t>(i));
  const auto key = [&](std::int32_t place) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(place)];
    return std::tie(part.site, part.id);
  };
  std::sort(places.begin(), places.end(),
            [&](std::int32_t a, std::int32_t b) { return key(a) < key(b); });
  return places;
}

std::int32_t place_of(const std::vector<std::string>& sorted, const std::string& name) {
  return static_cast<std::int32_t>(std::lower_bound(sorted.begin(), sorted.end(), name) -
                                   sorted.begin());
}

void keep_each_once(std::vector<std::string>& names) {
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
}

corrosion::CorrosivityCategory corrosion_category(Category category) {
  using enum corrosion::CorrosivityCategory;
  constexpr std::array<corrosion::CorrosivityCategory, 6> same{c1, c2, c3, c4, c5, cx};
  return same[static_cast<std::size_t>(category)];
}

CoatingPart coating_part(const Part& part, std::int32_t place, std::int32_t site,
                         const corrosion::AttackPath& path) {
  CoatingPart out;
  out.place = place;
  out.site = site;
  out.kind = static_cast<std::int8_t>(part.kind);
  out.exposure = part.exposure;
  out.teaches = !part.painted;
  out.ln_prior = *ln_prior_rate(part, path);
  return out;
}

/// Sessions that read in each zone.
void count_zone_sessions(CoatingData& data) {
  for (CoatingSite& site : data.sites) {
    std::vector<std::set<std::int32_t>> seen(site.zones.size());
    for (int i = site.first_segment; i < site.first_segment + site.segments; ++i) {
      const Segment& segment = data.segments[static_cast<std::size_t>(i)];
      const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
      for (int m = segment.first; part.teaches && m < segment.first + segment.count; ++m)
        seen[static_cast<std::size_t>(part.zone)].insert(
            data.means[static_cast<std::size_t>(m)].session);
    }
    for (const auto& sessions : seen)
      site.zone_sessions.push_back(static_cast<std::int32_t>(sessions.size()));
  }
}

/// As a mean over 20 years, whatever the path: H(20)/20 is near 0.74.
bool fits_class(double rate, Category category) {
  const corrosion::RateBand bounds = class_bounds(category);
  return rate * constant::rate_off_class_most >= bounds.low_um * constant::usual_mean_of_first &&
         rate <= bounds.high_um * constant::usual_mean_of_first * constant::rate_off_class_most;
}

/// A rate no class has as a mean over 20 years; under the upper end of C1 that is C1 alone.
bool of_no_class(const Part& part, double rate) {
  const bool said_c1 = part.category && *part.category == Category::c1;
  const double least = said_c1 ? constant::rate_of_c1_least : constant::rate_of_class_least;
  return rate < least || rate > constant::rate_of_class_most;
}

/// "3 parts have WHAT (c17 first): THEN", of the served parts that are odd; nothing without one.
template <class Odd>
void note_odd(const Portfolio& portfolio, const char* what, const char* then, const Odd& odd,
              CoatingData& data) {
  const std::string* first = nullptr;
  int count = 0;
  for (const CoatingPart& own : data.parts) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(own.place)];
    if (!odd(part)) continue;
    if (count++ == 0) first = &part.id;
  }
  if (count > 0)
    data.notes.push_back(std::to_string(count) + (count == 1 ? " part has " : " parts have ") +
                         what + " (" + *first + (count == 1 ? "): " : " first): ") + then);
}

void note_odd_parts(const Portfolio& portfolio, CoatingData& data) {
  note_odd(
      portfolio, "a nominal coating that is no thickness", "the usual one of its kind is taken",
      [](const Part& part) {
        return part.nominal_coating_um && !thickness_um(part.nominal_coating_um);
      },
      data);
  note_odd(
      portfolio, "a rate that is none or over ten times outside its class",
      "the middle of its class is taken; are class, unit and dates right?",
      [](const Part& part) { return part.zinc_rate_um_per_year && !taken_rate(part); }, data);
  note_odd(
      portfolio, "a rate that no class of air has", "are class, unit and dates right?",
      [](const Part& part) {
        const auto rate = taken_rate(part);
        return rate && of_no_class(part, *rate);
      },
      data);
}

/// Mean of the sds that the parts' rates are given with, over the usual one.
double class_ratio(const Portfolio& portfolio, const CoatingData& data) {
  double sum = 0;
  double count = 0;
  for (const CoatingPart& own : data.parts) {
    const auto& sd = portfolio.parts[static_cast<std::size_t>(own.place)].zinc_rate_ln_sd;
    if (!sd || !std::isfinite(*sd) || *sd <= 0) continue;
    sum += *sd;
    count += 1;
  }
  if (count == 0) return 1;
  return std::clamp(sum / count / constant::class_ln_sd, constant::class_ratio_least,
                    constant::class_ratio_most);
}

}  // namespace

std::optional<double> thickness_um(std::optional<double> given) {
  if (given && *given >= constant::smallest_nominal_um && *given <= constant::largest_nominal_um)
    return given;
  return std::nullopt;
}

std::optional<double> taken_rate(const Part& part) {
  const auto& rate = part.zinc_rate_um_per_year;
  if (!rate || !(*rate >= constant::rate_least && *rate <= constant::rate_most)) return {};
  if (part.category && !fits_class(*rate, *part.category)) return {};
  return rate;
}

LearntBefore learnt_from(const CoatingData& data) {
  return {data.replicate_sd_um, data.area_sd_um, data.class_ratio, data.rust_chance};
}

std::string why_not_served(const Part& part) {
  if (!has_zinc_model(part.kind)) return "judged by its grade";
  if (part.material == Material::painted_steel) return "paint is judged by its grade";
  if (part.material == Material::bare_steel) return "bare steel has no coating to lose";
  if (part.material != Material::zinc_coated_steel) return "no loss rate for this metal";
  if (!part.category && !taken_rate(part))
    return "no corrosivity class and no rate of its zone is known";
  return {};
}

std::string left_out_reason(const Part& part) {
  if (!has_zinc_model(part.kind)) return "no_coating_model";
  return part.material == Material::zinc_coated_steel ? "no_class" : "not_zinc";
}

corrosion::RateBand class_bounds(Category category) {
  constexpr double least_um = 0.05;  // C1 has no lower bound
  const auto band =
      corrosion::first_year_band(corrosion::Metal::zinc, corrosion_category(category));
  return {std::max(least_um, band->low_um), band->high_um};
}

std::string to_text(Category category) {
  return std::string(corrosion::to_text(corrosion_category(category)));
}

std::optional<double> ln_prior_rate(const Part& part, const corrosion::AttackPath& path) {
  if (const auto rate = taken_rate(part)) return std::log(*rate);
  if (!part.category) return std::nullopt;
  const corrosion::RateBand bounds = class_bounds(*part.category);
  return std::log(std::sqrt(bounds.low_um * bounds.high_um) * path.first_year_to_mean());
}

void lay_out_parts(const Portfolio& portfolio, CoatingData& data) {
  for (const std::int32_t place : served_places(portfolio)) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(place)];
    if (data.sites.empty() || data.sites.back().name != part.site) {
      data.sites.emplace_back().name = part.site;
      data.sites.back().first_part = static_cast<std::int32_t>(data.parts.size());
    }
    CoatingSite& site = data.sites.back();
    site.zones.push_back(part.zone);
    site.runs.push_back(part.run);
    ++site.parts;
    data.parts.push_back(
        coating_part(part, place, static_cast<std::int32_t>(data.sites.size()) - 1, data.path));
  }
  for (CoatingSite& site : data.sites) {
    keep_each_once(site.zones);
    keep_each_once(site.runs);
  }
  for (CoatingPart& own : data.parts) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(own.place)];
    const CoatingSite& site = data.sites[static_cast<std::size_t>(own.site)];
    own.zone = place_of(site.zones, part.zone);
    own.run = place_of(site.runs, part.run);
  }
}

void leave_out(const Portfolio& portfolio, std::int32_t reading, const char* reason,
               CoatingData& data) {
  const Reading& kept_back = portfolio.readings[static_cast<std::size_t>(reading)];
  data.left_out.push_back(
      {kept_back.id, portfolio.parts[static_cast<std::size_t>(kept_back.part)].id, reason});
}

void note_zone_sessions(const CoatingData& larger, CoatingData& data) {
  for (CoatingSite& site : data.sites)
    for (const CoatingSite& other : larger.sites) {
      if (other.name != site.name) continue;
      for (std::size_t zone = 0; zone < site.zones.size(); ++zone) {
        const auto there = static_cast<std::size_t>(place_of(other.zones, site.zones[zone]));
        if (there < other.zones.size() && other.zones[there] == site.zones[zone])
          site.zone_sessions[zone] = std::max(site.zone_sessions[zone], other.zone_sessions[there]);
      }
    }
}

Result<CoatingData> prepare_coating(const Portfolio& portfolio, std::optional<LearntBefore> known) {
  const double exponent = portfolio.settings.zinc_path_exponent;
  if (!(exponent >= constant::path_exponent_least && exponent <= 1))
    return fail(Fault::invalid_input,
                "Coating forecast: the path exponent of zinc must lie between 0.5 and 1. Nothing "
                "was computed. Correct the setting; 0.9 is the default.");
  CoatingData data;
  data.as_of = portfolio.as_of;
  data.path = corrosion::AttackPath(portfolio.settings.zinc_path_exponent);
  lay_out_parts(portfolio, data);
  if (data.parts.empty())
    return fail(Fault::not_estimable,
                "Coating forecast: no part with a zinc coating, its class or rate known, is in "
                "the portfolio. Nothing was computed. Give the zones their corrosivity class and "
                "the parts their material.");
  auto readings = used_readings(portfolio, data);
  hold_wrong_units(portfolio, data, readings);
  leave_out_slips(portfolio, data, readings);
  note_odd_parts(portfolio, data);
  const auto means = visit_means(readings, data);
  data.class_ratio = known ? known->class_ratio : class_ratio(portfolio, data);
  if (known) {
    data.replicate_sd_um = known->replicate_sd_um;
    data.area_sd_um = known->area_sd_um;
  }
  build_segments(portfolio, means, day_grades(portfolio, data), data);
  data.rust_chance = known ? known->rust_chance : rust_chance(data);
  note_rust_odds(data);
  note_odd_file(portfolio, data);
  count_zone_sessions(data);
  std::sort(data.left_out.begin(), data.left_out.end(), [](const LeftOut& a, const LeftOut& b) {
    return std::tie(a.part, a.reading, a.reason) < std::tie(b.part, b.reading, b.reason);
  });
  return data;
}

}  // namespace kneerail::forecast
