#include "tests/portfolio/score.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/base/text.h"

namespace kneerail::portfolio_test {

namespace {

constexpr std::array<double, 7> levels{0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};
constexpr std::array<double, 7> widths{0.075, 0.10, 0.20, 0.25, 0.20, 0.10, 0.075};
constexpr double cap_years = 60;

double capped(double years) {
  return std::clamp(years, -cap_years, cap_years);
}

/// Twice the mean pinball loss over the quantiles: Gneiting and Raftery (2007).
double crps(const Scored& scored) {
  const double truth = capped(scored.truth);
  double sum = 0;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    const double at = capped(scored.years[i]);
    sum += widths[i] * (levels[i] - (truth < at ? 1 : 0)) * (truth - at);
  }
  return 2 * sum;
}

/// Ranks from 0, ties averaged.
std::vector<double> ranks_of(const std::vector<double>& values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<double> ranks(values.size());
  for (std::size_t i = 0; i < order.size();) {
    std::size_t end = i;
    while (end < order.size() && values[order[end]] == values[order[i]]) ++end;
    for (std::size_t k = i; k < end; ++k) ranks[order[k]] = static_cast<double>(i + end - 1) / 2;
    i = end;
  }
  return ranks;
}

double correlation(const std::vector<double>& a, const std::vector<double>& b) {
  const auto n = static_cast<double>(a.size());
  const double mean_a = std::accumulate(a.begin(), a.end(), 0.0) / n;
  const double mean_b = std::accumulate(b.begin(), b.end(), 0.0) / n;
  double ab = 0;
  double aa = 0;
  double bb = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    ab += (a[i] - mean_a) * (b[i] - mean_b);
    aa += (a[i] - mean_a) * (a[i] - mean_a);
    bb += (b[i] - mean_b) * (b[i] - mean_b);
  }
  return aa > 0 && bb > 0 ? ab / std::sqrt(aa * bb) : 0;
}

void add(const char* name, bool belongs, const Scored& scored, std::vector<Stratum>& strata) {
  if (!belongs) return;
  for (Stratum& stratum : strata)
    if (stratum.name == name) {
      stratum.scored.push_back(scored);
      return;
    }
  strata.push_back({name, {scored}});
}

}  // namespace

Scores scores_of(const std::vector<Scored>& scored) {
  Scores out;
  out.parts = scored.size();
  const auto n = static_cast<double>(scored.size());
  std::vector<double> medians;
  std::vector<double> truths;
  double due = 0;
  double late = 0;
  for (const Scored& one : scored) {
    const auto inside = [&](std::size_t low, std::size_t high) {
      return one.years[low] <= one.truth && one.truth <= one.years[high] ? 1 / n : 0;
    };
    out.inside_50 += inside(2, 4);
    out.inside_80 += inside(1, 5);
    out.inside_90 += inside(0, 6);
    out.under_5 += one.truth < one.years[0] ? 1 / n : 0;
    out.over_95 += one.truth > one.years[6] ? 1 / n : 0;
    out.crps_years += crps(one) / n;
    medians.push_back(capped(one.years[3]));
    truths.push_back(capped(one.truth));
    if (one.truth < 0 || one.truth > 10) continue;
    due += 1;
    late += one.years[0] > one.truth ? 1 : 0;
  }
  out.rank = correlation(ranks_of(medians), ranks_of(truths));
  out.late_10 = due > 0 ? late / due : 0;
  return out;
}

void add_coating(const World& world, const forecast::CoatingForecast& forecast,
                 std::vector<Stratum>& strata) {
  for (const char* name : {"all", "0 visits", "1 visit", "2-4 visits", "5+ visits", "wet part",
                           "drifting gauge", "unrecorded swap", "touched up", "start unknown"})
    if (std::none_of(strata.begin(), strata.end(),
                     [&](const Stratum& stratum) { return stratum.name == name; }))
      strata.push_back({name, {}});
  for (const forecast::LimitForecast& row : forecast.limits) {
    if (row.limit != forecast::Limit::coating_exhausted || !row.answered) continue;
    const Truth& truth = world.truth[static_cast<std::size_t>(row.part)];
    const Scored scored{row.years, truth.coating_years};
    add("all", true, scored, strata);
    add("0 visits", truth.visits == 0, scored, strata);
    add("1 visit", truth.visits == 1, scored, strata);
    add("2-4 visits", truth.visits >= 2 && truth.visits <= 4, scored, strata);
    add("5+ visits", truth.visits >= 5, scored, strata);
    add("wet part", truth.wet, scored, strata);
    add("drifting gauge", truth.drifting, scored, strata);
    add("unrecorded swap", truth.swapped, scored, strata);
    add("touched up", truth.touched_up, scored, strata);
    add("start unknown", truth.unknown_start, scored, strata);
  }
}

void add_walls(const World& world, const forecast::WallForecasts& forecast,
               std::vector<Stratum>& strata) {
  for (const forecast::WallForecast& row : forecast.tubes) {
    if (!row.answered || !row.has_years) continue;
    const Truth& truth = world.truth[static_cast<std::size_t>(row.part)];
    const Scored scored{row.years, truth.wall_years};
    add("walls", true, scored, strata);
    add("walls read", row.readings_used > 0, scored, strata);
    add("walls not read", row.readings_used == 0, scored, strata);
  }
}

namespace {

std::string padded(std::string text, std::size_t width) {
  if (text.size() < width) text.insert(0, width - text.size(), ' ');
  return text;
}

}  // namespace

std::string head() {
  return "  stratum               n    c50    c80    c90   <p05   >p95   crps   rank late10";
}

std::string line(const std::string& name, const Scores& scores) {
  std::string out = "  " + name;
  out.resize(18, ' ');
  out += padded(std::to_string(scores.parts), 7);
  for (const double value : {scores.inside_50, scores.inside_80, scores.inside_90, scores.under_5,
                             scores.over_95, scores.crps_years, scores.rank, scores.late_10})
    out += padded(fixed(value, 3), 7);
  return out;
}

}  // namespace kneerail::portfolio_test
