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

/// As a mean over 20 years, whatever the path: H(20)/20 is near 0.74.
bool fits_class(double rate, Category category) {
  const corrosion::RateBand bounds = class_bounds(category);
  return rate * constant::rate_off_class_most >= bounds.low_um * constant::usual_mean_of_first &&
         rate <= bounds.high_um * constant::usual_mean_of_first * constant::rate_off_class_most;
}

/// Upper bound of the class over the prior, ln: like with like, a class's middle against a class's
/// bound, a rate of the zone's own against the bound as a mean over 20 years.
double ln_upper_over_prior(const Part& part, const corrosion::AttackPath& path) {
  const corrosion::RateBand bounds = class_bounds(*part.category);
  if (part.prior_is_category || !taken_rate(part))
    return std::log(bounds.high_um / bounds.low_um) / 2;
  return std::log(bounds.high_um * path.first_year_to_mean()) - *ln_prior_rate(part, path);
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
    site.zone_classes.resize(site.zones.size());
  }
  for (CoatingPart& own : data.parts) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(own.place)];
    CoatingSite& site = data.sites[static_cast<std::size_t>(own.site)];
    own.zone = place_of(site.zones, part.zone);
    own.run = place_of(site.runs, part.run);
    auto& named = site.zone_classes[static_cast<std::size_t>(own.zone)];
    if (part.category && !named)
      named = ZoneClass{*part.category, ln_upper_over_prior(part, data.path)};
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
  auto gathered = gather_coating(portfolio);
  if (!gathered) return fail(gathered.error());
  return estimate_coating(std::move(*gathered), known);
}

}  // namespace kneerail::forecast
