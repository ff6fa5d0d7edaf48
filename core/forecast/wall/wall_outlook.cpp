#include "core/forecast/wall/wall_outlook.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/forecast/wall/constants.h"
#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

namespace {

/// What the outside may still lose, given the inside's loss.
struct Reserve {
  double gone;  ///< chance that nothing is left of it
  double um;    ///< mean where something is
};

/// Of a normal reserve.
Reserve reserve(double mean_um, double sd_um) {
  constexpr double sure_sds = 5;
  if (mean_um >= sure_sds * sd_um) return {0, mean_um};
  if (mean_um <= -sure_sds * sd_um) return {1, 0};
  const auto normal = statistics::normal_table().with_density(mean_um / sd_um);
  if (normal.cdf < 1e-6) return {1, 0};
  return {1 - normal.cdf, std::max(0.0, mean_um + sd_um * normal.density / normal.cdf)};
}

struct Known {
  double years;
  double chance;
};

/// Chances already worked out, ascending in years: what brackets one quantile serves the next.
class KnownChances {
 public:
  explicit KnownChances(const WallOutlook& outlook) : outlook_(outlook) {}

  const Known& add(double years) {
    const auto at =
        std::lower_bound(known_.begin(), known_.end(), years,
                         [](const Known& known, double wanted) { return known.years < wanted; });
    return *known_.insert(at, {years, outlook_.chance_by(years)});
  }

  /// Where the chance reaches `level`, between its first and last years, which hold it.
  double solve(double level) {
    for (int i = 0; i < steps_most; ++i) {
      const auto high = std::find_if(known_.begin(), known_.end(),
                                     [&](const Known& known) { return known.chance >= level; });
      const Known b = *high;
      const Known a = *std::prev(high);
      if (b.years - a.years < wall_constant::years_tolerance) return b.years;
      double share = (level - a.chance) / (b.chance - a.chance);
      share = i % 3 == 2 ? 0.5 : std::clamp(share, 0.02, 0.98);
      const Known middle = add(a.years + share * (b.years - a.years));
      if (std::abs(middle.chance - level) < wall_constant::chance_tolerance) return middle.years;
    }
    return std::find_if(known_.begin(), known_.end(),
                        [&](const Known& known) { return known.chance >= level; })
        ->years;
  }

 private:
  static constexpr int steps_most = 80;
  const WallOutlook& outlook_;
  std::vector<Known> known_;
};

}  // namespace

WallOutlook::WallOutlook(const WallQuestion& question)
    : question_(question), zinc_(question), ways_(wall_ways(question)) {}

double WallOutlook::reached(const WallWay& way, double years) const {
  const double age = question_.clock.age_now + years;
  const double to_node = 1000 * std::sqrt(wall_constant::wall_node_share);
  const double between = 1000 * std::sqrt(1 - wall_constant::wall_node_share);
  const double reserve_um = 1000 * (way.wall_mm - question_.tube->limit_mm) -
                            way.inside_um_per_year * std::max(0.0, way.hollow_age_now + years);
  double chance = 0;
  for (const double node : wall_constant::wall_nodes) {
    const double off_um = node * to_node * way.wall_sd_mm;
    const Reserve left = reserve(reserve_um + off_um, between * way.wall_sd_mm);
    double reached = left.gone;
    if (reached < 1) {
      const double bare_years = question_.steel_path->age(left.um / way.steel_um_per_year);
      reached += (1 - reached) * zinc_.gone_chance(way, age - bare_years);
    }
    chance += reached;
  }
  return chance / static_cast<double>(wall_constant::wall_nodes.size());
}

double WallOutlook::chance_by(double years) const {
  double chance = 0;
  for (const WallWay& way : ways_) chance += way.weight * reached(way, years);
  return std::clamp(chance, 0.0, 1.0);
}

std::vector<WallOfRate> WallOutlook::by_rate(std::span<const double> years) const {
  std::vector<WallOfRate> rates;
  double zinc_um_per_year = 0;
  for (const WallWay& way : ways_) {
    if (rates.empty() || way.zinc_um_per_year != zinc_um_per_year) {
      zinc_um_per_year = way.zinc_um_per_year;
      rates.push_back({0, std::log(zinc_um_per_year), std::vector<double>(years.size(), 0.0)});
    }
    rates.back().weight += way.weight;
    for (std::size_t i = 0; i < years.size(); ++i)
      rates.back().by[i] += way.weight * reached(way, years[i]);
  }
  for (WallOfRate& rate : rates)
    for (double& chance : rate.by) chance = std::clamp(chance / rate.weight, 0.0, 1.0);
  return rates;
}

std::array<double, 7> WallOutlook::quantiles() const {
  const double earliest =
      -question_.clock.age_now - (question_.clock.start_known ? 0 : constant::earliest_years);
  KnownChances known(*this);
  const double chance_early = known.add(earliest).chance;
  for (const double years : {5.0, 15.0, 30.0, 60.0, 120.0}) known.add(years);
  const double chance_late = known.add(wall_constant::longest_years).chance;
  std::array<double, 7> years{};
  for (std::size_t i = 0; i < years.size(); ++i) {
    const double level = quantile_levels[i];
    if (chance_late < level)
      years[i] = std::numeric_limits<double>::infinity();
    else
      years[i] = chance_early >= level ? earliest : known.solve(level);
    if (i > 0) years[i] = std::max(years[i], years[i - 1]);
  }
  return years;
}

double WallOutlook::wall_now_mm() const {
  double wall_mm = 0;
  for (const WallWay& way : ways_)
    wall_mm += way.weight * (way.wall_mm - zinc_.lost_um(question_, way, 0) / 1000);
  return std::max(0.0, wall_mm);
}

double WallOutlook::zinc_gone_now() const {
  double chance = 0;
  for (const WallWay& way : ways_)
    chance += way.weight * zinc_.gone_chance(way, question_.clock.age_now);
  return std::clamp(chance, 0.0, 1.0);
}

double WallOutlook::open_chance() const {
  double chance = 0;
  for (const WallWay& way : ways_)
    if (way.open) chance += way.weight;
  return std::clamp(chance, 0.0, 1.0);
}

std::array<double, 3> WallOutlook::steel_um_per_year() const {
  std::vector<std::pair<double, double>> rates;
  for (const WallWay& way : ways_) rates.emplace_back(way.steel_um_per_year, way.weight);
  std::sort(rates.begin(), rates.end());
  constexpr std::array<double, 3> levels{0.1, 0.5, 0.9};
  std::array<double, 3> out{};
  for (std::size_t i = 0; i < levels.size(); ++i) {
    double sum = 0;
    out[i] = rates.back().first;
    for (const auto& [rate, weight] : rates) {
      sum += weight;
      if (sum < levels[i]) continue;
      out[i] = rate;
      break;
    }
  }
  return out;
}

}  // namespace kneerail::forecast
