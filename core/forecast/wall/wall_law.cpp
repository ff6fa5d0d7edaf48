#include "core/forecast/wall/wall_law.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/wall/constants.h"
#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

namespace {

constexpr double table_years = 500;
constexpr double table_step = 0.05;

double between(const std::vector<double>& table, double at) {
  const auto i = static_cast<std::size_t>(at);
  const double share = at - static_cast<double>(i);
  return table[i] + share * (table[i + 1] - table[i]);
}

struct Node {
  double z;
  double weight;
};

std::vector<Node> equal_nodes(int count, double reach) {
  std::vector<Node> nodes;
  double sum = 0;
  for (int k = 0; k < count; ++k) {
    const double z = reach * (2.0 * k / (count - 1) - 1);
    nodes.push_back({z, std::exp(-z * z / 2)});
    sum += nodes.back().weight;
  }
  for (Node& node : nodes) node.weight /= sum;
  return nodes;
}

template <std::size_t n>
std::vector<Node> nodes_of(const std::array<double, n>& z, const std::array<double, n>& weight) {
  std::vector<Node> nodes;
  for (std::size_t k = 0; k < n; ++k) nodes.push_back({z[k], weight[k]});
  return nodes;
}

struct Inside {
  double um_per_year;
  double weight;
  bool open;
  double age_share;  ///< of the hollow's age for which it has rusted
};

std::vector<Inside> insides_of(const WallTube& tube) {
  const double outside = tube.class_steel_um_per_year;
  std::vector<Inside> insides{
      {wall_constant::closed_share * outside, 1 - tube.open_chance, false, 1}};
  for (const Node& node : equal_nodes(wall_constant::open_nodes, wall_constant::open_reach)) {
    const double rate =
        wall_constant::open_share * outside * std::exp(wall_constant::open_ln_sd * node.z);
    const double weight = tube.open_chance * node.weight;
    const double late = wall_constant::open_late_chance * weight;
    insides.push_back({rate, weight - late, true, 1});
    insides.push_back({rate, late, true, wall_constant::open_late_share});
  }
  return insides;
}

/// A start of the coating and its zinc rate, before steel is looked at.
WallWay with_zinc(const RateNode& node, double weight) {
  WallWay way;
  way.weight = weight;
  way.zinc_um_per_year = std::exp(node.ln_rate);
  way.start_um = node.start_um;
  way.start_variance = node.start_variance;
  way.ahead = node.ahead;
  return way;
}

/// The nodes of the coating; each as three where readings may tell of steel.
std::vector<WallWay> zinc_ways(const WallQuestion& question) {
  std::vector<WallWay> ways;
  if (question.coating == nullptr) {
    ways.push_back({});
    ways.back().weight = 1;
    return ways;
  }
  const Posterior& coating = *question.coating;
  double largest = 0;
  for (int k = 0; k < coating.count; ++k)
    largest = std::max(largest, coating.nodes[static_cast<std::size_t>(k)].weight);
  double gone = 0;
  for (int k = 0; k < coating.count; ++k) {
    const RateNode& node = coating.nodes[static_cast<std::size_t>(k)];
    if (node.weight < wall_constant::weight_least * largest) continue;
    ways.push_back(with_zinc(node, node.weight));
    if (question.tube->readings.empty()) continue;
    const double age =
        question.clock.age_now + years_between(question.as_of, question.tube->readings.back().day);
    gone += node.weight * zinc_gone_chance(question, ways.back(), age);
  }
  if (gone < wall_constant::may_be_gone) return ways;
  std::vector<WallWay> split;
  for (const WallWay& way : ways) {
    const double sd = std::sqrt(wall_constant::start_node_share * way.start_variance);
    for (std::size_t s = 0; s < wall_constant::three_nodes.size(); ++s) {
      split.push_back(way);
      split.back().weight *= wall_constant::three_weights[s];
      split.back().start_um += wall_constant::three_nodes[s] * sd;
      split.back().start_variance *= 1 - wall_constant::start_node_share;
    }
  }
  return split;
}

std::vector<WallWay> ways_before_readings(const WallQuestion& question) {
  const WallTube& tube = *question.tube;
  const bool bare = question.coating == nullptr;
  const auto ratios = bare ? equal_nodes(wall_constant::bare_nodes, wall_constant::bare_reach)
                           : nodes_of(wall_constant::ratio_nodes, wall_constant::ratio_weights);
  const double ln_sd = bare ? std::hypot(wall_constant::ratio_ln_sd, wall_constant::bare_ln_sd)
                            : wall_constant::ratio_ln_sd;
  const auto insides = insides_of(tube);
  std::vector<WallWay> ways;
  for (const WallWay& zinc : zinc_ways(question))
    for (const Node& ratio : ratios)
      for (const Inside& inside : insides) {
        WallWay way = zinc;
        way.weight *= ratio.weight * inside.weight;
        const double middle =
            bare ? tube.class_steel_um_per_year : tube.steel_over_zinc * zinc.zinc_um_per_year;
        way.steel_um_per_year = middle * std::exp(ln_sd * ratio.z);
        way.inside_um_per_year = inside.um_per_year;
        way.hollow_age_now = inside.age_share * question.hollow_age_now;
        way.open = inside.open;
        way.wall_mm = tube.start_mm;
        way.wall_sd_mm = tube.start_sd_mm;
        ways.push_back(way);
      }
  return ways;
}

/// Moves the wall when new of a way to what the readings say; returns ln of the way's factor.
double weigh(const WallQuestion& question, WallWay& way) {
  const WallTube& tube = *question.tube;
  double precision = 1 / (tube.start_sd_mm * tube.start_sd_mm);
  double squares = 0;
  double sum = 0;
  for (const WallMean& mean : tube.readings) {
    const double lost_mm = lost_um(question, way, years_between(question.as_of, mean.day)) / 1000;
    const double variance = mean.variance_mm2 + std::pow(wall_constant::law_error * lost_mm, 2);
    const double off = mean.wall_mm + lost_mm - tube.start_mm;
    precision += 1 / variance;
    squares += off * off / variance + std::log(variance);
    sum += off / variance;
  }
  way.wall_mm = tube.start_mm + sum / precision;
  way.wall_sd_mm = 1 / std::sqrt(precision);
  return -0.5 * (squares - sum * sum / precision + std::log(precision));
}

void drop_unlikely(std::vector<WallWay>& ways) {
  double largest = 0;
  for (const WallWay& way : ways) largest = std::max(largest, way.weight);
  std::erase_if(ways, [&](const WallWay& way) {
    return !(way.weight >= wall_constant::weight_least * largest);
  });
  double sum = 0;
  for (const WallWay& way : ways) sum += way.weight;
  for (WallWay& way : ways) way.weight /= sum;
}

}  // namespace

PathTable::PathTable(const corrosion::AttackPath& path) {
  const auto steps = static_cast<std::size_t>(table_years / table_step) + 1;
  for (std::size_t i = 0; i <= steps; ++i) {
    const double at = static_cast<double>(i) * table_step;
    effective_.push_back(path.effective_age(at));
    age_.push_back(path.age(at));
  }
  slope_ = path.effective_age(table_years + 1) - path.effective_age(table_years);
}

double PathTable::effective_age(double age_years) const {
  if (age_years <= 0) return age_years;
  if (age_years < table_years) return between(effective_, age_years / table_step);
  return effective_[static_cast<std::size_t>(table_years / table_step)] +
         slope_ * (age_years - table_years);
}

double PathTable::age(double effective_age_years) const {
  if (effective_age_years <= 0) return effective_age_years;
  if (effective_age_years < table_years) return between(age_, effective_age_years / table_step);
  return age_[static_cast<std::size_t>(table_years / table_step)] +
         (effective_age_years - table_years) / slope_;
}

double zinc_end_age(const WallQuestion& question, const WallWay& way) {
  if (way.zinc_um_per_year <= 0) return 0;
  const auto effective = [&](double age) {
    return question.clock.start_known ? question.zinc_path->effective_age(age) : age;
  };
  const double now = effective(question.clock.age_now);
  double h = way.start_um / way.zinc_um_per_year;
  if (h > now) h = now + (h - now) / way.ahead;
  return question.clock.start_known ? question.zinc_path->age(h) : h;
}

double lost_um(const WallQuestion& question, const WallWay& way, double years) {
  const double bare_years = question.clock.age_now + years - zinc_end_age(question, way);
  const double hollow_years = way.hollow_age_now + years;
  return way.steel_um_per_year * question.steel_path->effective_age(std::max(0.0, bare_years)) +
         way.inside_um_per_year * std::max(0.0, hollow_years);
}

double zinc_gone_chance(const WallQuestion& question, const WallWay& way, double age_years) {
  if (way.zinc_um_per_year <= 0) return age_years >= 0 ? 1 : 0;
  const bool known = question.clock.start_known;
  if (known && age_years <= 0) return 0;
  const auto effective = [&](double age) {
    return known ? question.zinc_path->effective_age(age) : age;
  };
  const double h = effective(age_years);
  const double ahead = std::max(0.0, h - effective(question.clock.age_now));
  const double rate = ahead > 0 ? way.ahead * way.zinc_um_per_year : way.zinc_um_per_year;
  const double loss = way.zinc_um_per_year * h + (rate - way.zinc_um_per_year) * ahead;
  const double excess = question.coating->spots_excess_um2;
  const double drift = constant::future_sd * rate * ahead;
  const double variance = way.start_variance + constant::spots_fixed * excess + drift * drift +
                          constant::spots_of_loss * excess * loss * loss;
  return statistics::normal_table()((loss - way.start_um) / std::sqrt(variance));
}

std::vector<WallWay> wall_ways(const WallQuestion& question) {
  std::vector<WallWay> ways = ways_before_readings(question);
  if (!question.tube->readings.empty()) {
    std::vector<double> ln_factor;
    for (WallWay& way : ways) ln_factor.push_back(weigh(question, way));
    const double top = *std::max_element(ln_factor.begin(), ln_factor.end());
    for (std::size_t i = 0; i < ways.size(); ++i) ways[i].weight *= std::exp(ln_factor[i] - top);
  }
  drop_unlikely(ways);
  return ways;
}

}  // namespace kneerail::forecast
