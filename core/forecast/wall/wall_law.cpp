#include "core/forecast/wall/wall_law.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/forecast/wall/constants.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

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
  InsideWay way;
  double weight;
};

std::vector<Inside> insides_of(const WallQuestion& question) {
  const WallTube& tube = *question.tube;
  const double outside = tube.class_steel_um_per_year;
  std::vector<Inside> insides;
  const auto add = [&](double um_per_year, double age_share, bool open, double weight) {
    insides.push_back({{.um_per_year = um_per_year,
                        .hollow_age_now = age_share * question.hollow_age_now,
                        .open = open,
                        .wall_mm = tube.start_mm,
                        .wall_sd_mm = tube.start_sd_mm},
                       weight});
  };
  add(wall_constant::closed_share * outside, 1, false, 1 - tube.open_chance);
  for (const Node& node : equal_nodes(wall_constant::open_nodes, wall_constant::open_reach)) {
    const double rate =
        wall_constant::open_share * outside * std::exp(wall_constant::open_ln_sd * node.z);
    const double weight = tube.open_chance * node.weight;
    const double late = wall_constant::open_late_chance * weight;
    add(rate, 1, true, weight - late);
    add(rate, wall_constant::open_late_share, true, late);
  }
  return insides;
}

/// The nodes of the coating, neighbours put together until they weigh enough: the ratio of steel
/// smooths what lies between. The weather of so many effective years since the last reading of the
/// coating counts as a start not known so well: readings of the wall may tell of it.
std::vector<ZincWay> zinc_groups(const Posterior& coating, double unread_years) {
  std::vector<ZincWay> ways;
  double ln_rate = 0;
  double square = 0;
  const auto close = [&](ZincWay& way) {
    way.um_per_year = std::exp(ln_rate / way.weight);
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
    ZincWay& way = ways.back();
    way.ahead = node.ahead;
    way.weight += node.weight;
    way.start_um += node.weight * node.start_um;
    way.start_variance +=
        node.weight * (node.start_variance + weather_um2(std::exp(node.ln_rate), unread_years));
    ln_rate += node.weight * node.ln_rate;
    square += node.weight * node.start_um * node.start_um;
    open = way.weight < wall_constant::zinc_weight;
    if (!open) close(way);
  }
  if (open) close(ways.back());
  return ways;
}

/// Each way as three by its coating's start.
std::vector<ZincWay> by_start(const std::vector<ZincWay>& ways) {
  std::vector<ZincWay> split;
  for (const ZincWay& way : ways) {
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
std::vector<ZincWay> zinc_ways(const WallQuestion& question, const ZincEnd& end) {
  if (question.coating == nullptr) return {{.weight = 1}};
  const double now = question.clock.effective(question.clock.age_now);
  std::vector<ZincWay> ways = zinc_groups(*question.coating, now - question.coating->last_read);
  const auto last_look = question.tube->last_look();
  if (!last_look) return ways;
  const double age = question.clock.age_now + years_between(question.as_of, *last_look);
  double gone = 0;
  for (const ZincWay& way : ways) gone += way.weight * end.gone_chance(way, age);
  return gone < wall_constant::may_be_gone ? ways : by_start(ways);
}

/// A way of the inside, weighed by the readings: the wall when new given them, and the ln of what
/// the weight is to be times.
struct Weighed {
  InsideWay inside;
  double ln_factor;
};

/// By how much the wall had gone at a look, and the variance of a reading about it.
struct LossAt {
  double lost_mm;
  double variance_mm2;
};
LossAt loss_at(const WallQuestion& question, const InsideWay& inside, Date day, double outside_mm,
               double reading_variance_mm2) {
  const double lost_mm = outside_mm + inside.lost_um(years_between(question.as_of, day)) / 1000;
  const double by_law = wall_constant::law_error * lost_mm;
  return {lost_mm, reading_variance_mm2 + by_law * by_law};
}

void weigh_by_bound(const WallBound& bound, const LossAt& loss, Weighed& out) {
  double& mean_mm = out.inside.wall_mm;
  double variance = out.inside.wall_sd_mm * out.inside.wall_sd_mm;
  const double sd = std::sqrt(variance + loss.variance_mm2);
  const double side = bound.at_most ? 1 : -1;
  const double x = side * (bound.wall_mm - mean_mm + loss.lost_mm) / sd;
  const double chance = wall_constant::bound_slip + statistics::normal_cdf(x);
  const double pull = statistics::normal_density(x) / chance;
  mean_mm -= side * variance * pull / sd;
  variance -= variance * variance * pull * std::max(0.0, pull + x) / (sd * sd);
  out.inside.wall_sd_mm = std::sqrt(variance);
  out.ln_factor += std::log(chance);
}

/// `outside_mm`: lost by each reading, then by each bound.
Weighed weighed(const WallQuestion& question, const InsideWay& inside,
                const std::vector<double>& outside_mm) {
  const WallTube& tube = *question.tube;
  double precision = 1 / (tube.start_sd_mm * tube.start_sd_mm);
  double squares = 0;
  double ln_variances = 0;
  double sum = 0;
  for (std::size_t j = 0; j < tube.readings.size(); ++j) {
    const WallMean& mean = tube.readings[j];
    const auto [lost_mm, variance] =
        loss_at(question, inside, mean.day, outside_mm[j], mean.variance_mm2);
    const double off = mean.wall_mm + lost_mm - tube.start_mm;
    precision += 1 / variance;
    squares += off * off / variance;
    ln_variances += std::log(variance);
    sum += off / variance;
  }
  Weighed out{inside,
              -0.5 * (squares + ln_variances - sum * sum / precision + std::log(precision))};
  out.inside.wall_mm = tube.start_mm + sum / precision;
  out.inside.wall_sd_mm = 1 / std::sqrt(precision);
  constexpr double reading_variance = wall_constant::reading_sd_mm * wall_constant::reading_sd_mm +
                                      wall_constant::session_sd_mm * wall_constant::session_sd_mm;
  for (std::size_t j = 0; j < tube.bounds.size(); ++j) {
    const WallBound& bound = tube.bounds[j];
    const double outside = outside_mm[tube.readings.size() + j];
    weigh_by_bound(bound, loss_at(question, inside, bound.day, outside, reading_variance), out);
  }
  return out;
}

/// Ways of zinc, of steel outside and of the inside, crossed.
class Crossing {
 public:
  Crossing(const WallQuestion& question, const ZincEnd& end)
      : question_(question),
        insides_(insides_of(question)),
        looks_(looks_of(*question.tube)),
        years_bare_(looks_.size()) {
    out_.zincs = zinc_ways(question, end);
    const bool bare = question.coating == nullptr;
    ratios_ = bare ? equal_nodes(wall_constant::bare_nodes, wall_constant::bare_reach)
                   : nodes_of(wall_constant::ratio_nodes, wall_constant::ratio_weights);
    ln_sd_ = bare ? std::hypot(wall_constant::ratio_ln_sd, wall_constant::bare_ln_sd)
                  : wall_constant::ratio_ln_sd;
    weigh_under_zinc();
    for (std::uint32_t z = 0; z < out_.zincs.size(); ++z) cross(z, end);
  }

  WallWays take() {
    scale_weights();
    keep_insides_used();
    return std::move(out_);
  }

 private:
  /// Days of the readings, then of the bounds.
  static std::vector<Date> looks_of(const WallTube& tube) {
    std::vector<Date> days;
    for (const WallMean& mean : tube.readings) days.push_back(mean.day);
    for (const WallBound& bound : tube.bounds) days.push_back(bound.day);
    return days;
  }

  /// Where readings tell nothing of steel outside, the insides are weighed once for all.
  void weigh_under_zinc() {
    const std::vector<double> none(looks_.size(), 0.0);
    for (const Inside& inside : insides_) add_inside(inside.way, none);
  }

  void add_inside(const InsideWay& inside, const std::vector<double>& outside_mm) {
    if (looks_.empty()) {
      out_.insides.push_back(inside);
      ln_factor_.push_back(0);
      return;
    }
    const Weighed by_readings = weighed(question_, inside, outside_mm);
    out_.insides.push_back(by_readings.inside);
    ln_factor_.push_back(by_readings.ln_factor);
  }

  void cross(std::uint32_t z, const ZincEnd& end) {
    const ZincWay& zinc = out_.zincs[z];
    const double zinc_end = end.age(zinc);
    bool tell_of_steel = false;
    for (std::size_t j = 0; j < looks_.size(); ++j) {
      const double years =
          question_.clock.age_now - zinc_end + years_between(question_.as_of, looks_[j]);
      years_bare_[j] = years > 0 ? question_.steel_path->effective_age(years) : 0;
      tell_of_steel = tell_of_steel || years > 0;
    }
    const double middle = question_.coating == nullptr
                              ? question_.tube->class_steel_um_per_year
                              : question_.tube->steel_over_zinc * zinc.um_per_year;
    for (const Node& ratio : ratios_) {
      const double steel = middle * std::exp(ln_sd_ * ratio.z);
      const auto first = tell_of_steel ? static_cast<std::uint32_t>(out_.insides.size()) : 0;
      if (tell_of_steel) weigh_by_steel(steel);
      for (std::uint32_t i = 0; i < insides_.size(); ++i)
        out_.ways.push_back({zinc.weight * ratio.weight * insides_[i].weight, steel, z, first + i});
    }
  }

  void weigh_by_steel(double steel_um_per_year) {
    std::vector<double> outside_mm(looks_.size());
    for (std::size_t j = 0; j < outside_mm.size(); ++j)
      outside_mm[j] = steel_um_per_year * years_bare_[j] / 1000;
    for (const Inside& inside : insides_) add_inside(inside.way, outside_mm);
  }

  /// By the readings; drops unlikely ways.
  void scale_weights() {
    // Of the ways alone: an inside that none of them uses may lie above all that are used.
    double top = -std::numeric_limits<double>::infinity();
    for (const WallWay& way : out_.ways) top = std::max(top, ln_factor_[way.inside]);
    double largest = 0;
    for (WallWay& way : out_.ways) {
      way.weight *= std::exp(ln_factor_[way.inside] - top);
      largest = std::max(largest, way.weight);
    }
    std::erase_if(out_.ways, [&](const WallWay& way) {
      return !(way.weight >= wall_constant::weight_least * largest);
    });
    double sum = 0;
    for (const WallWay& way : out_.ways) sum += way.weight;
    for (WallWay& way : out_.ways) way.weight /= sum;
  }

  void keep_insides_used() {
    constexpr std::uint32_t unused = ~0U;
    std::vector<std::uint32_t> new_place(out_.insides.size(), unused);
    std::vector<InsideWay> kept;
    for (WallWay& way : out_.ways) {
      std::uint32_t& place = new_place[way.inside];
      if (place == unused) {
        place = static_cast<std::uint32_t>(kept.size());
        kept.push_back(out_.insides[way.inside]);
      }
      way.inside = place;
    }
    out_.insides = std::move(kept);
  }

  const WallQuestion& question_;
  std::vector<Inside> insides_;
  std::vector<Node> ratios_;
  double ln_sd_ = 0;
  std::vector<Date> looks_;
  std::vector<double> years_bare_;  ///< by each look, for one way of the zinc; effective
  std::vector<double> ln_factor_;   ///< by place in out_.insides
  WallWays out_;
};

}  // namespace

WallWays wall_ways(const WallQuestion& question, const ZincEnd& end) {
  return Crossing(question, end).take();
}

}  // namespace kneerail::forecast
