#include "core/forecast/grade/grade_future.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/forecast/coating_forecast.h"
#include "core/forecast/constants.h"

namespace kneerail::forecast {

GradeFuture::GradeFuture(const GradeData& data, const GradeLikelihood& likelihood,
                         const RateNodes& nodes, int part)
    : table_(&likelihood.table()) {
  const GradePart& own = data.parts[static_cast<std::size_t>(part)];
  const GradeSegment& segment =
      data.segments[static_cast<std::size_t>(own.first_segment + own.segments - 1)];
  const GradeChain chain = likelihood.chain();
  for (std::size_t k = 0; k < nodes.x.size(); ++k) {
    Node node{nodes.x[k], nodes.weight[k], {1, 0, 0, 0, 0}};
    if (segment.count > 0) node.state = chain.forward(segment, node.x).last;
    nodes_.push_back(node);
  }
  if (segment.count > 0) {
    const GradeLook& last = data.looks[static_cast<std::size_t>(segment.first + segment.count) - 1];
    from_years_.push_back(years_between(data.as_of, last.day));
  } else {
    for (const Date start : segment.starts) from_years_.push_back(years_between(data.as_of, start));
  }
}

double GradeFuture::reached(int grade, double years) const {
  double chance = 0;
  for (const double from : from_years_) {
    const double ln_time = ln_years(years - from);
    for (const Node& node : nodes_)
      chance += node.weight * table_->reached(node.x + ln_time, grade, node.state);
  }
  return std::clamp(chance / static_cast<double>(from_years_.size()), 0.0, 1.0);
}

GradeChances GradeFuture::grades(double years) const {
  GradeChances sum{};
  double all = 0;
  for (const double from : from_years_) {
    const double ln_time = ln_years(years - from);
    for (const Node& node : nodes_) {
      GradeChances state = node.state;
      table_->advance(node.x + ln_time, state);
      for (std::size_t j = 0; j < grade_count; ++j) sum[j] += node.weight * state[j];
    }
  }
  for (const double chance : sum) all += chance;
  for (double& chance : sum) chance /= all;
  return sum;
}

double GradeFuture::quantile(int grade, double chance, double from) const {
  constexpr double a_day = 1 / days_per_year;
  if (reached(grade, from) >= chance) return from;
  double low = from;
  double high = low + 1;
  while (reached(grade, high) < chance) {
    if (high > constant::longest_years) return std::numeric_limits<double>::infinity();
    low = high;
    high = from + 2 * (high - from);
  }
  while (high - low > a_day / 2) {
    const double middle = (low + high) / 2;
    (reached(grade, middle) < chance ? low : high) = middle;
  }
  return high > constant::longest_years ? std::numeric_limits<double>::infinity() : high;
}

std::array<double, 7> GradeFuture::years_to(int grade) const {
  std::array<double, 7> years{};
  double from = from_years_.front();
  for (std::size_t i = 0; i < quantile_levels.size(); ++i) {
    years[i] = std::isinf(from) ? from : quantile(grade, quantile_levels[i], from);
    from = years[i];
  }
  return years;
}

}  // namespace kneerail::forecast
