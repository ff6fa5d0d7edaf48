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

/// The nodes of the coating, neighbours put together until they weigh enough: the ratio of steel
/// smooths what lies between.
std::vector<WallWay> zinc_groups(const Posterior& coating) {
  std::vector<WallWay> ways;
  double ln_rate = 0;
  double square = 0;
  const auto close = [&](WallWay& way) {
    way.zinc_um_per_year = std::exp(ln_rate / way.weight);
    way.start_um /= way.weight;
    way.start_variance = way.start_variance / way.weight +
                         std::max(0.0, square / way.weight - way.start_um * way.start_um);
    ln_rate = square = 0;
  };
  bool open = false;
  for (int k = 0; k < coating.count; ++k) {
    const RateNode& node = coating.nodes[static_cast<std::size_t>(k)];
    if (open && node.ahead != ways.back().ahead) {
      close(ways.back());
      open = false;
    }
    if (!open) ways.push_back({});
    WallWay& way = ways.back();
    way.ahead = node.ahead;
    way.weight += node.weight;
    way.start_um += node.weight * node.start_um;
    way.start_variance += node.weight * node.start_variance;
    ln_rate += node.weight * node.ln_rate;
    square += node.weight * node.start_um * node.start_um;
    open = way.weight < wall_constant::zinc_weight;
    if (!open) close(way);
  }
  if (open) close(ways.back());
  return ways;
}

/// Each way as three by its coating's start.
std::vector<WallWay> by_start(const std::vector<WallWay>& ways) {
  std::vector<WallWay> split;
  for (const WallWay& way : ways) {
    const double sd = std::sqrt(wall_constant::start_node_share * way.start_variance);
    for (std::size_t s = 0; s < wall_constant::start_nodes.size(); ++s) {
      split.push_back(way);
      split.back().weight *= wall_constant::start_weights[s];
      split.back().start_um += wall_constant::start_nodes[s] * sd;
      split.back().start_variance *= 1 - wall_constant::start_node_share;
    }
  }
  return split;
}

/// How the zinc may go; by its start too where readings may tell of steel.
std::vector<WallWay> zinc_ways(const WallQuestion& question) {
  if (question.coating == nullptr) {
    std::vector<WallWay> bare(1);
    bare.back().weight = 1;
    return bare;
  }
  std::vector<WallWay> ways = zinc_groups(*question.coating);
  if (question.tube->readings.empty()) return ways;
  const double age =
      question.clock.age_now + years_between(question.as_of, question.tube->readings.back().day);
  const ZincEnd zinc(question);
  double gone = 0;
  for (const WallWay& way : ways) gone += way.weight * zinc.gone_chance(way, age);
  return gone < wall_constant::may_be_gone ? ways : by_start(ways);
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
double weigh(const WallQuestion& question, const ZincEnd& zinc, WallWay& way) {
  const WallTube& tube = *question.tube;
  double precision = 1 / (tube.start_sd_mm * tube.start_sd_mm);
  double squares = 0;
  double sum = 0;
  for (const WallMean& mean : tube.readings) {
    const double lost_mm =
        zinc.lost_um(question, way, years_between(question.as_of, mean.day)) / 1000;
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

ZincEnd::ZincEnd(const WallQuestion& question)
    : path_(question.clock.start_known ? question.zinc_path : nullptr),
      age_now_(question.clock.age_now),
      now_(effective(age_now_)),
      excess_um2_(question.coating == nullptr ? 0 : question.coating->spots_excess_um2) {}

double ZincEnd::age(const WallWay& way) const {
  if (way.zinc_um_per_year <= 0) return 0;
  double h = way.start_um / way.zinc_um_per_year;
  if (h > now_) h = now_ + (h - now_) / way.ahead;
  return path_ != nullptr ? path_->age(h) : h;
}

double ZincEnd::gone_chance(const WallWay& way, double age_years) const {
  if (way.zinc_um_per_year <= 0) return age_years >= 0 ? 1 : 0;
  if (path_ != nullptr && age_years <= 0) return 0;
  const double h = effective(age_years);
  const double ahead = std::max(0.0, h - now_);
  const double rate = ahead > 0 ? way.ahead * way.zinc_um_per_year : way.zinc_um_per_year;
  const double loss = way.zinc_um_per_year * h + (rate - way.zinc_um_per_year) * ahead;
  const double drift = constant::future_sd * rate * ahead;
  const double variance = way.start_variance + constant::spots_fixed * excess_um2_ + drift * drift +
                          constant::spots_of_loss * excess_um2_ * loss * loss;
  return normal_((loss - way.start_um) / std::sqrt(variance));
}

double ZincEnd::lost_um(const WallQuestion& question, const WallWay& way, double years) const {
  const double bare_years = age_now_ + years - age(way);
  const double hollow_years = way.hollow_age_now + years;
  return way.steel_um_per_year * question.steel_path->effective_age(std::max(0.0, bare_years)) +
         way.inside_um_per_year * std::max(0.0, hollow_years);
}

std::vector<WallWay> wall_ways(const WallQuestion& question) {
  std::vector<WallWay> ways = ways_before_readings(question);
  if (!question.tube->readings.empty()) {
    const ZincEnd zinc(question);
    std::vector<double> ln_factor;
    for (WallWay& way : ways) ln_factor.push_back(weigh(question, zinc, way));
    const double top = *std::max_element(ln_factor.begin(), ln_factor.end());
    for (std::size_t i = 0; i < ways.size(); ++i) ways[i].weight *= std::exp(ln_factor[i] - top);
  }
  drop_unlikely(ways);
  return ways;
}

}  // namespace kneerail::forecast
