#include "tests/portfolio/chance_score.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"

namespace kneerail::portfolio_test {

namespace {

constexpr std::array<double, 6> bins{0, 0.05, 0.2, 0.5, 0.8, 1.0000001};

double log_loss(const SaidChance& one) {
  const double p = std::clamp(one.said, 0.001, 0.999);
  return -std::log(one.came ? p : 1 - p);
}

double apart_in_bins(const std::vector<SaidChance>& chances) {
  double apart = 0;
  for (std::size_t bin = 0; bin + 1 < bins.size(); ++bin) {
    double difference = 0;
    for (const SaidChance& one : chances)
      if (one.said >= bins[bin] && one.said < bins[bin + 1])
        difference += one.said - (one.came ? 1 : 0);
    apart += std::abs(difference) / static_cast<double>(chances.size());
  }
  return apart;
}

void add(const char* name, bool belongs, SaidChance one, std::vector<ChanceStratum>& strata) {
  auto found = std::ranges::find(strata, name, &ChanceStratum::name);
  if (found == strata.end()) found = strata.insert(found, {name, {}});
  if (belongs) found->chances.push_back(one);
}

std::string padded(std::string text, std::size_t width) {
  if (text.size() < width) text.insert(0, width - text.size(), ' ');
  return text;
}

}  // namespace

ChanceScores scores_of(const std::vector<SaidChance>& chances) {
  ChanceScores out;
  out.parts = chances.size();
  const auto n = static_cast<double>(chances.size());
  double log = 0;
  for (const SaidChance& one : chances) {
    const double came = one.came ? 1 : 0;
    out.said += one.said / n;
    out.came += came / n;
    out.brier += (one.said - came) * (one.said - came) / n;
    log += log_loss(one) / n;
  }
  const double base = out.came;
  if (base > 0 && base < 1)
    out.log_skill = 1 + log / (base * std::log(base) + (1 - base) * std::log(1 - base));
  out.apart = apart_in_bins(chances);
  return out;
}

void add_grades(const World& world, const forecast::GradeReport& report,
                std::vector<ChanceStratum>& strata) {
  constexpr std::size_t five_years = 3;
  for (const forecast::GradeForecast& row : report.rows) {
    if (row.limit != forecast::Limit::grade_5) continue;
    const double truth = world.truth[static_cast<std::size_t>(row.part)].grade_5_years;
    const bool came = truth <= 5;
    add("all", true, {row.p_by[five_years], came}, strata);
    const double now = std::min(row.p_by[0], 1 - 1e-9);
    const SaidChance ahead{(row.p_by[five_years] - now) / (1 - now), came};
    add("ahead", truth > 0, ahead, strata);
    add("ahead, 0-1 seen", truth > 0 && row.looks <= 1, ahead, strata);
    add("ahead, 2-4 seen", truth > 0 && row.looks >= 2 && row.looks <= 4, ahead, strata);
    add("ahead, 5+ seen", truth > 0 && row.looks >= 5, ahead, strata);
  }
}

std::string chance_head() {
  return "  grade 5 in 5 years     n   said   came  brier lskill  apart";
}

std::string line(const std::string& name, const ChanceScores& scores) {
  std::string out = "  " + name;
  out.resize(18, ' ');
  out += padded(std::to_string(scores.parts), 7);
  for (const double value :
       {scores.said, scores.came, scores.brier, scores.log_skill, scores.apart})
    out += padded(fixed(value, 3), 7);
  return out;
}

}  // namespace kneerail::portfolio_test
