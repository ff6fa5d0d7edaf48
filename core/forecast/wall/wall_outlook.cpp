#include "core/forecast/wall/wall_outlook.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/forecast/wall/constants.h"
#include "core/statistics/normal.h"
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
  double sds;  ///< normal quantile of the chance
};

/// Chances already worked out, ascending in years: what brackets one quantile serves the next.
class KnownChances {
 public:
  explicit KnownChances(const WallOutlook& outlook) : outlook_(outlook) {}

  const Known& add(double years) {
    const auto at =
        std::lower_bound(known_.begin(), known_.end(), years,
                         [](const Known& known, double wanted) { return known.years < wanted; });
    const double chance = outlook_.chance_by(years);
    constexpr double sure = 1e-9;
    return *known_.insert(
        at, {years, chance, statistics::normal_quantile(std::clamp(chance, sure, 1 - sure))});
  }

  /// Where the chance reaches `level`, between its first and last years, which hold it.
  double solve(double level) {
    const double sds = statistics::normal_quantile(level);
    for (int i = 0; i < steps_most; ++i) {
      const auto high = first_at(level);
      const double low_years = std::prev(high)->years;
      const double span = high->years - low_years;
      if (span < wall_constant::years_tolerance) return high->years;
      const double share = i % 4 == 3 ? 0.5 : (guess(high, sds) - low_years) / span;
      const Known middle = add(low_years + std::clamp(share, 0.02, 0.98) * span);
      if (std::abs(middle.chance - level) < wall_constant::chance_tolerance) return middle.years;
      if (std::abs(middle.sds - sds) > wall_constant::sds_near) continue;
      const At above = first_at(level);
      const double years = guess(above, sds);
      if (std::abs(years - straight(above, sds)) < wall_constant::years_near) return years;
    }
    return first_at(level)->years;
  }

 private:
  static constexpr int steps_most = 80;
  using At = std::vector<Known>::const_iterator;

  [[nodiscard]] At first_at(double level) const {
    return std::find_if(known_.begin(), known_.end(),
                        [&](const Known& known) { return known.chance >= level; });
  }

  /// Years as a polynomial in sds through the two or four chances about a level; chances of a
  /// smooth spread are nearly straight in sds.
  [[nodiscard]] double guess(At high, double sds) const {
    At first = std::prev(high);
    At last = std::next(high);
    if (first != known_.begin() && first->sds - std::prev(first)->sds > least_apart) --first;
    if (last != known_.end() && last->sds - std::prev(last)->sds > least_apart) ++last;
    double years = 0;
    for (At i = first; i != last; ++i) {
      double weight = 1;
      for (At j = first; j != last; ++j)
        if (j != i) weight *= (sds - j->sds) / (i->sds - j->sds);
      years += weight * i->years;
    }
    const bool between = years > std::prev(high)->years && years < high->years;
    return between ? years : straight(high, sds);
  }

  [[nodiscard]] static double straight(At high, double sds) {
    const At low = std::prev(high);
    return low->years + (sds - low->sds) / (high->sds - low->sds) * (high->years - low->years);
  }

  static constexpr double least_apart = 1e-3;
  const WallOutlook& outlook_;
  std::vector<Known> known_;
};

}  // namespace

struct WallOutlook::Left {
  double gone = 0;  ///< chance that the inside alone has brought the wall to its limit
  /// By node of the wall when new: share of chance that something is left, and how much.
  std::array<double, wall_constant::wall_nodes.size()> chance{};
  std::array<double, wall_constant::wall_nodes.size()> um{};
};

WallOutlook::WallOutlook(const WallQuestion& question)
    : question_(question),
      zinc_(question.clock, question.zinc_path, question.coating),
      ways_(wall_ways(question, zinc_)),
      curves_(zinc_, ways_.zincs) {}

std::vector<WallOutlook::Left> WallOutlook::left_of_insides(double years) const {
  const double to_node = 1000 * std::sqrt(wall_constant::wall_node_share);
  const double between = 1000 * std::sqrt(1 - wall_constant::wall_node_share);
  const double each = 1.0 / static_cast<double>(wall_constant::wall_nodes.size());
  std::vector<Left> all;
  all.reserve(ways_.insides.size());
  for (const InsideWay& inside : ways_.insides) {
    const double mean_um =
        1000 * (inside.wall_mm - question_.tube->limit_mm) - inside.lost_um(years);
    Left left;
    for (std::size_t n = 0; n < left.um.size(); ++n) {
      const double off_um = wall_constant::wall_nodes[n] * to_node * inside.wall_sd_mm;
      const Reserve of = reserve(mean_um + off_um, between * inside.wall_sd_mm);
      left.gone += each * of.gone;
      left.chance[n] = each * (1 - of.gone);
      left.um[n] = of.um;
    }
    all.push_back(left);
  }
  return all;
}

double WallOutlook::reached(const WallWay& way, const Left& left, double age) const {
  double chance = left.gone;
  if (!curves_.may_be_gone(way.zinc, age)) return chance;
  const double per_um = 1 / way.steel_um_per_year;
  for (std::size_t n = 0; n < left.um.size(); ++n) {
    if (left.chance[n] <= 0) continue;
    const double bare_years = question_.steel_path->age(left.um[n] * per_um);
    chance += left.chance[n] * curves_.chance(way.zinc, age - bare_years);
  }
  return chance;
}

double WallOutlook::least_chance(double years) const {
  double least = 0;
  for (const ThinPlace& thin : question_.tube->thin)
    if (years_between(question_.as_of, thin.day) <= years) least = std::max(least, thin.chance);
  return least;
}

double WallOutlook::chance_by(double years) const {
  const double age = question_.clock.age_now + years;
  const std::vector<Left> all = left_of_insides(years);
  double chance = 0;
  for (const WallWay& way : ways_.ways) chance += way.weight * reached(way, all[way.inside], age);
  return std::clamp(chance, least_chance(years), 1.0);
}

std::vector<WallOfRate> WallOutlook::by_rate(std::span<const double> years) const {
  const bool bare = question_.coating == nullptr;
  std::vector<WallOfRate> rates;
  std::vector<std::size_t> place;  // in rates, by way
  for (const WallWay& way : ways_.ways) {
    const double ln_rate =
        std::log(bare ? way.steel_um_per_year : ways_.zincs[way.zinc].um_per_year);
    if (rates.empty() || rates.back().ln_rate != ln_rate)
      rates.push_back({0, ln_rate, std::vector<double>(years.size(), 0.0)});
    place.push_back(rates.size() - 1);
    rates.back().weight += way.weight;
  }
  for (std::size_t i = 0; i < years.size(); ++i) {
    const double age = question_.clock.age_now + years[i];
    const std::vector<Left> all = left_of_insides(years[i]);
    for (std::size_t w = 0; w < ways_.ways.size(); ++w) {
      const WallWay& way = ways_.ways[w];
      rates[place[w]].by[i] += way.weight * reached(way, all[way.inside], age);
    }
  }
  std::erase_if(rates, [](const WallOfRate& rate) { return rate.weight <= 0; });
  for (std::size_t i = 0; i < years.size(); ++i) {
    const double least = least_chance(years[i]);
    for (WallOfRate& rate : rates) rate.by[i] = std::clamp(rate.by[i] / rate.weight, least, 1.0);
  }
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
  std::vector<double> years_bare;  // effective, by way of the zinc
  for (const ZincWay& zinc : ways_.zincs)
    years_bare.push_back(question_.steel_path->effective_age(
        std::max(0.0, question_.clock.age_now - zinc_.age(zinc))));
  double wall_mm = 0;
  for (const WallWay& way : ways_.ways) {
    const InsideWay& inside = ways_.insides[way.inside];
    const double lost_um = way.steel_um_per_year * years_bare[way.zinc] + inside.lost_um(0);
    wall_mm += way.weight * (inside.wall_mm - lost_um / 1000);
  }
  return std::max(0.0, wall_mm);
}

double WallOutlook::zinc_gone_now() const {
  std::vector<double> gone;
  for (const ZincWay& zinc : ways_.zincs)
    gone.push_back(zinc_.gone_chance(zinc, question_.clock.age_now));
  double chance = 0;
  for (const WallWay& way : ways_.ways) chance += way.weight * gone[way.zinc];
  return std::clamp(chance, 0.0, 1.0);
}

double WallOutlook::open_chance() const {
  double chance = 0;
  for (const WallWay& way : ways_.ways)
    if (ways_.insides[way.inside].open) chance += way.weight;
  return std::clamp(chance, 0.0, 1.0);
}

std::array<double, 3> WallOutlook::steel_um_per_year() const {
  std::vector<std::pair<double, double>> rates;  // neighbours of one rate put together
  for (const WallWay& way : ways_.ways) {
    if (rates.empty() || rates.back().first != way.steel_um_per_year)
      rates.emplace_back(way.steel_um_per_year, 0.0);
    rates.back().second += way.weight;
  }
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
