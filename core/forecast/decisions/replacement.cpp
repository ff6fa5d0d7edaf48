#include "core/forecast/decisions/replacement.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/base/text.h"
#include "core/forecast/coating_readings.h"
#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/grade/grade_future.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/shared_covariance.h"
#include "core/forecast/wall/constants.h"
#include "core/forecast/wall/wall_outlook.h"

namespace kneerail::forecast {

namespace {

constexpr double as_likely_as_not = 0.5;

/// What one node of a rate says: the chance by each of the years.
struct NodeChances {
  WeighedNode node;
  std::vector<double> by;
};

DrawnChances mixed(const std::vector<NodeChances>& nodes, const std::vector<double>& weights,
                   std::size_t draws, std::size_t years) {
  DrawnChances made{std::vector<double>(years, 0.0), std::vector<double>(draws * years, 0.0)};
  for (const NodeChances& own : nodes)
    for (std::size_t y = 0; y < years; ++y) made.by[y] += own.node.weight * own.by[y];
  for (std::size_t d = 0; d < draws; ++d)
    for (std::size_t k = 0; k < nodes.size(); ++k) {
      const double weight = weights[d * nodes.size() + k];
      for (std::size_t y = 0; y < years; ++y) made.drawn[d * years + y] += weight * nodes[k].by[y];
    }
  return made;
}

DrawnChances drawn_together(const std::vector<NodeChances>& nodes, const MovedPrior& prior,
                            const std::vector<double>& shifts, std::size_t years) {
  std::vector<WeighedNode> weighed;
  for (const NodeChances& own : nodes) weighed.push_back(own.node);
  return mixed(nodes, weights_in_draws(weighed, prior, shifts), shifts.size(), years);
}

/// Of each year the limit with the larger chance, in all its draws.
void raise(const DrawnChances& other, DrawnChances& made) {
  const std::size_t years = made.by.size();
  for (std::size_t y = 0; y < years; ++y) {
    if (other.by[y] <= made.by[y]) continue;
    made.by[y] = other.by[y];
    for (std::size_t i = y; i < made.drawn.size(); i += years) made.drawn[i] = other.drawn[i];
  }
}

/// Where one limit takes over from the other a draw may fall a little: what was reached stays so.
void keep_rising(std::size_t years, DrawnChances& made) {
  for (std::size_t y = 1; y < years; ++y) made.by[y] = std::max(made.by[y], made.by[y - 1]);
  for (std::size_t i = 0; i < made.drawn.size(); ++i)
    if (i % years != 0) made.drawn[i] = std::max(made.drawn[i], made.drawn[i - 1]);
}

}  // namespace

class Replacements::Inside {
 public:
  Inside(const Portfolio& portfolio, const CoatingModel* coating, const GradeModel* grades,
         int draws)
      : portfolio_(portfolio),
        coating_(coating),
        grades_(grades),
        walls_(coating, portfolio),
        tube_of_(portfolio.parts.size(), -1),
        graded_(portfolio.parts.size(), -1) {
    if (coating != nullptr) {
      served_ = served_index(portfolio, coating->data);
      of_rates_.emplace(shared_of(*coating), draws);
    }
    const auto& tubes = walls_.data().tubes;
    for (std::size_t i = 0; i < tubes.size(); ++i)
      tube_of_[static_cast<std::size_t>(tubes[i].place)] = static_cast<std::int32_t>(i);
    if (grades == nullptr) return;
    likelihood_.emplace(grades->data, grades->errors, *grades->table);
    of_grades_.emplace(shared_of(*grades), draws);
    for (std::size_t i = 0; i < grades->data.parts.size(); ++i)
      graded_[static_cast<std::size_t>(grades->data.parts[i].place)] = static_cast<std::int32_t>(i);
  }

  PartReplacement replacement(std::int32_t part, const NewPart* made, std::span<const double> years,
                              int draws) const {
    const auto count = static_cast<std::size_t>(draws);
    PartReplacement out;
    out.reached = {std::vector<double>(years.size(), 0.0),
                   std::vector<double>(count * years.size(), 0.0)};
    const auto wall =
        made != nullptr ? new_wall(part, *made, years) : old_wall(part, years, &out.wall_not_said);
    const auto grade = grade_reached(part, made != nullptr, years);
    if (wall) raise(*wall, out.reached);
    if (grade) raise(*grade, out.reached);
    keep_rising(years.size(), out.reached);
    if (wall || grade) {
      const double of_wall = wall ? wall->by.back() : -1;
      const double of_grade = grade ? grade->by.back() : -1;
      out.why = of_wall > of_grade ? ReplacedFor::wall : ReplacedFor::grade;
    }
    if (made != nullptr) return out;
    out.seen_past = seen_past(part);
    out.past = out.seen_past || past_by_now(part, years, out);
    return out;
  }

  [[nodiscard]] std::optional<Posterior> new_coating(std::int32_t part, const NewPart& made) const {
    const std::int32_t index = served_.empty() ? -1 : served_[static_cast<std::size_t>(part)];
    if (index < 0) return std::nullopt;
    const CoatingPart& own = coating_->data.parts[static_cast<std::size_t>(index)];
    const Segment& now = current(own);
    Segment fresh;
    fresh.part = index;
    fresh.start = portfolio_.as_of;
    fresh.nominal_um = made.nominal_um.value_or(now.nominal_um);
    return scaled(life_posterior({&coating_->data, &coating_->effects}, fresh),
                  coating_->back_dated.spread_scale);
  }

  /// Set or reckoned from its load; 0 where no model serves its wall.
  [[nodiscard]] double wall_limit_mm(std::int32_t part) const {
    const WallTube* tube = tube_of(part);
    return tube == nullptr || !tube->why_not.empty() ? 0 : tube->limit_mm;
  }

  [[nodiscard]] double nominal_um(std::int32_t part) const {
    const std::int32_t index = served_.empty() ? -1 : served_[static_cast<std::size_t>(part)];
    return index < 0 ? 0
                     : current(coating_->data.parts[static_cast<std::size_t>(index)]).nominal_um;
  }

 private:
  [[nodiscard]] const Segment& current(const CoatingPart& part) const {
    return coating_->data
        .segments[static_cast<std::size_t>(part.first_segment + part.segments - 1)];
  }

  [[nodiscard]] const WallTube* tube_of(std::int32_t part) const {
    const std::int32_t tube = tube_of_[static_cast<std::size_t>(part)];
    return tube < 0 ? nullptr : &walls_.data().tubes[static_cast<std::size_t>(tube)];
  }

  /// How the shared effects move the mean rate of a part's zinc, and its prior given them.
  struct Moved {
    std::vector<double> shifts;
    MovedPrior prior;
  };
  [[nodiscard]] Moved zinc_moved(std::int32_t part, const Posterior& posterior) const {
    const CoatingPart& own =
        coating_->data.parts[static_cast<std::size_t>(served_[static_cast<std::size_t>(part)])];
    const auto place = static_cast<std::size_t>(own.site);
    const CoreLayout layout = core_layout(coating_->data.sites[place]);
    const GroupTerms terms = group_terms(layout, own, current(own), coating_->effects.spreads);
    const SharedCovariance shared(coating_->effects.sites[place], layout, own.run);
    const Combination rate = rate_combination(terms);
    std::vector<int> globals;
    for (int i = 0; i < terms.rate_terms; ++i)
      if (const int at = terms.rate[static_cast<std::size_t>(i)]; at >= layout.size())
        globals.push_back(at - layout.size());
    Moved moved;
    moved.shifts = of_rates_->shifts({own.site, own.zone, own.run, globals});
    moved.prior = {posterior.prior_centre,
                   std::max(1e-9, posterior.prior_variance - shared.covariance(rate, rate)),
                   constant::rate_tail};
    return moved;
  }

  /// Nothing where it does not come out as a number.
  [[nodiscard]] std::optional<DrawnChances> wall_reached(std::int32_t part,
                                                         const WallQuestion& question,
                                                         std::span<const double> years) const {
    const WallOutlook outlook(question);
    if (!outlook.computed()) return std::nullopt;
    std::vector<NodeChances> nodes;
    for (WallOfRate& rate : outlook.by_rate(years))
      nodes.push_back({{rate.ln_rate, rate.weight}, std::move(rate.by)});
    if (question.coating == nullptr) {
      const Part& own = portfolio_.parts[static_cast<std::size_t>(part)];
      const MovedPrior prior{std::log(question.tube->class_steel_um_per_year),
                             wall_constant::bare_ln_sd * wall_constant::bare_ln_sd, 0};
      return drawn_together(
          nodes, prior,
          zone_shifts({"steel", own.site, own.zone, wall_constant::ratio_ln_sd}, draws()),
          years.size());
    }
    const Moved moved = zinc_moved(part, *question.coating);
    return drawn_together(nodes, moved.prior, moved.shifts, years.size());
  }

  [[nodiscard]] int draws() const {
    return of_rates_ ? of_rates_->draws() : of_grades_ ? of_grades_->draws() : draw_count;
  }

  /// `why_not`, where it is given: why there is none.
  [[nodiscard]] std::optional<DrawnChances> old_wall(std::int32_t part,
                                                     std::span<const double> years,
                                                     std::string* why_not = nullptr) const {
    const WallTube* tube = tube_of(part);
    std::optional<DrawnChances> reached;
    if (tube == nullptr) return reached;
    auto missing = walls_.ask(*tube, [&](const AskedWall& asked) {
      reached = wall_reached(part, asked.question, years);
    });
    if (!reached && !missing) missing = "not computed: numerical";
    if (missing && why_not != nullptr) *why_not = std::move(*missing);
    return reached;
  }

  [[nodiscard]] std::optional<DrawnChances> new_wall(std::int32_t part, const NewPart& made,
                                                     std::span<const double> years) const {
    const WallTube* tube = tube_of(part);
    std::optional<DrawnChances> reached;
    if (tube == nullptr) return reached;
    (void)walls_.ask(*tube, [&](const AskedWall& asked) {
      WallTube fresh = *tube;
      fresh.readings.clear();
      fresh.before_zinc.clear();
      fresh.bounds.clear();
      fresh.bounds_before_zinc.clear();
      fresh.thin.clear();
      fresh.odd.clear();
      fresh.stands_since = fresh.hollow_since = portfolio_.as_of;
      if (const auto nominal = portfolio_.parts[static_cast<std::size_t>(part)].wall_nominal_mm) {
        fresh.start_mm = wall_constant::start_ratio * *nominal;
        fresh.start_sd_mm = wall_constant::start_ratio_sd * *nominal;
      }
      WallQuestion question = asked.question;
      question.tube = &fresh;
      question.clock = {asked.question.clock.path, 0, true};
      question.hollow_age_now = 0;
      std::optional<Posterior> coating;
      if (question.coating != nullptr) {
        coating = new_coating(part, made);
        question.coating = &*coating;
      }
      reached = wall_reached(part, question, years);
    });
    return reached;
  }

  [[nodiscard]] std::optional<DrawnChances> grade_reached(std::int32_t part, bool fresh,
                                                          std::span<const double> years) const {
    const std::int32_t index = graded_[static_cast<std::size_t>(part)];
    if (index < 0) return std::nullopt;
    const GradePart& own = grades_->data.parts[static_cast<std::size_t>(index)];
    const int grade =
        replace_grade(portfolio_, portfolio_.parts[static_cast<std::size_t>(part)].site);
    const RatePrior prior = rate_prior(grades_->layout, grades_->fit, own.site, index);
    const double own_variance = grades_->settings.widening * grades_->fit.tau * grades_->fit.tau;
    std::vector<NodeChances> nodes =
        fresh ? new_grade_nodes(prior, own_variance, grade, years)
              : grade_nodes(rate_nodes(grades_->layout, grades_->fit, *likelihood_,
                                       grades_->settings, own.site, index),
                            index, grade, years);
    const RatePart& terms = grades_->layout.parts[static_cast<std::size_t>(index)];
    std::vector<int> globals;
    for (int i = 0; i < terms.global_terms; ++i)
      globals.push_back(terms.globals[static_cast<std::size_t>(i)]);
    return drawn_together(nodes, {prior.mean, own_variance, 0},
                          of_grades_->shifts({own.site, own.zone, -1, globals}), years.size());
  }

  [[nodiscard]] std::vector<NodeChances> grade_nodes(const RateNodes& rates, int index, int grade,
                                                     std::span<const double> years) const {
    std::vector<NodeChances> nodes;
    for (std::size_t k = 0; k < rates.x.size(); ++k) {
      RateNodes one;
      one.x = {rates.x[k]};
      one.weight = {1.0};
      const GradeFuture future(grades_->data, *likelihood_, one, index);
      NodeChances node{{rates.x[k], rates.weight[k]}, {}};
      for (const double at : years) node.by.push_back(future.reached(grade, at));
      nodes.push_back(std::move(node));
    }
    return nodes;
  }

  [[nodiscard]] std::vector<NodeChances> new_grade_nodes(const RatePrior& prior,
                                                         double own_variance, int grade,
                                                         std::span<const double> years) const {
    constexpr int count = 15;
    constexpr double reach_sds = 3;
    const double sd = std::sqrt(own_variance + prior.shared_variance);
    const GradeChances as_new{1, 0, 0, 0, 0};
    std::vector<NodeChances> nodes;
    double sum = 0;
    for (int k = 0; k < count; ++k) {
      const double z = reach_sds * (2.0 * k / (count - 1) - 1);
      NodeChances node{{prior.mean + sd * z, std::exp(-z * z / 2)}, {}};
      sum += node.node.weight;
      for (const double at : years)
        node.by.push_back(likelihood_->table().reached(node.node.at + ln_years(at), grade, as_new));
      nodes.push_back(std::move(node));
    }
    for (NodeChances& node : nodes) node.node.weight /= sum;
    return nodes;
  }

  [[nodiscard]] std::optional<Date> seen_past(std::int32_t part) const {
    const std::int32_t index = graded_[static_cast<std::size_t>(part)];
    if (index < 0) return std::nullopt;
    const GradePart& own = grades_->data.parts[static_cast<std::size_t>(index)];
    const GradeSegment& segment =
        grades_->data.segments[static_cast<std::size_t>(own.first_segment + own.segments - 1)];
    const auto seen = seen_last(
        {grades_->data.looks.data() + segment.first, static_cast<std::size_t>(segment.count)});
    const int replaced_at =
        replace_grade(portfolio_, portfolio_.parts[static_cast<std::size_t>(part)].site);
    return seen && seen->seen >= replaced_at ? std::optional(seen->day) : std::nullopt;
  }

  [[nodiscard]] bool past_by_now(std::int32_t part, std::span<const double> years,
                                 const PartReplacement& made) const {
    if (!years.empty() && years.front() == 0) return made.reached.by.front() >= as_likely_as_not;
    constexpr std::array<double, 1> now{0};
    const auto wall = old_wall(part, now);
    const auto grade = grade_reached(part, false, now);
    return (wall && wall->by.front() >= as_likely_as_not) ||
           (grade && grade->by.front() >= as_likely_as_not);
  }

  const Portfolio& portfolio_;
  const CoatingModel* coating_;
  const GradeModel* grades_;
  WallQuestions walls_;
  std::vector<std::int32_t> served_;
  std::vector<std::int32_t> tube_of_;
  std::vector<std::int32_t> graded_;
  std::optional<GradeLikelihood> likelihood_;
  std::optional<CommonDraws> of_rates_;
  std::optional<CommonDraws> of_grades_;
};

Replacements::Replacements(const Portfolio& portfolio, const CoatingModel* coating,
                           const GradeModel* grades, int draws)
    : portfolio_(portfolio),
      draws_(draws),
      inside_(std::make_unique<Inside>(portfolio, coating, grades, draws)) {}

Replacements::~Replacements() = default;

PartReplacement Replacements::of(std::int32_t part, std::span<const double> years) const {
  return inside_->replacement(part, nullptr, years, draws_);
}

PartReplacement Replacements::of_new(std::int32_t part, const NewPart& made,
                                     std::span<const double> years) const {
  return inside_->replacement(part, &made, years, draws_);
}

std::optional<Posterior> Replacements::new_coating(std::int32_t part, const NewPart& made) const {
  return inside_->new_coating(part, made);
}

double Replacements::nominal_um(std::int32_t part) const {
  return inside_->nominal_um(part);
}

std::string Replacements::new_part_key(std::int32_t part) const {
  const Part& own = portfolio_.parts[static_cast<std::size_t>(part)];
  std::string key;
  for (const std::string& name : {own.site, own.zone, own.run, own.component_type}) {
    key += name;
    key += '\0';
  }
  for (const int code : {static_cast<int>(own.kind), static_cast<int>(own.material),
                         own.painted ? 1 : 0, static_cast<int>(own.exposure)})
    key += std::to_string(code) + ",";
  for (const double value :
       {inside_->nominal_um(part), own.wall_nominal_mm.value_or(0), inside_->wall_limit_mm(part)})
    key += fixed(value, 4) + ",";
  return key;
}

}  // namespace kneerail::forecast
