#include "core/forecast/rust.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <vector>

#include "core/forecast/constants.h"
#include "core/forecast/posterior.h"

namespace kneerail::forecast {

namespace {

constexpr int grade_count = 6;

/// Visit means of like parts of like age, by grade; grades 1 and 2 in one.
struct Stratum {
  std::vector<double> good;
  std::array<std::vector<double>, grade_count> at_grade;
};

/// P(below a good one) - P(above), summed over the readings.
double sum_of_ties(const std::vector<double>& good_sorted, const std::vector<double>& readings) {
  double sum = 0;
  for (const double y : readings) {
    const auto low = std::lower_bound(good_sorted.begin(), good_sorted.end(), y);
    const auto high = std::upper_bound(low, good_sorted.end(), y);
    sum += static_cast<double>((good_sorted.end() - high) - (low - good_sorted.begin()));
  }
  return sum / static_cast<double>(good_sorted.size());
}

/// By kind, whether the age is known, and age band.
std::vector<Stratum> strata_of(const CoatingData& data) {
  std::map<std::array<int, 3>, Stratum> strata;
  for (const Segment& segment : data.segments) {
    const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
    if (!part.teaches || segment.start_kind == StartKind::touched_up) continue;
    for (int i = segment.first; i < segment.first + segment.count; ++i) {
      const VisitMean& mean = data.means[static_cast<std::size_t>(i)];
      if (mean.grade == 0) continue;
      const int band = static_cast<int>(
          std::floor(years_between(segment.start, mean.day) / constant::rust_age_band_years));
      Stratum& own = strata[{part.kind, segment.start_kind == StartKind::known ? 1 : 0, band}];
      if (mean.grade <= 2)
        own.good.push_back(mean.thickness_um);
      else
        own.at_grade[static_cast<std::size_t>(mean.grade)].push_back(mean.thickness_um);
    }
  }
  std::vector<Stratum> out;
  for (auto& [key, stratum] : strata) out.push_back(std::move(stratum));
  return out;
}

double chance_of(const CoatingData& data, const VisitMean& mean) {
  if (mean.surface == SeenSurface::rust) return constant::rust_said;
  if (mean.surface == SeenSurface::zinc) return constant::rust_chance_least;
  return std::max(constant::rust_chance_least,
                  data.rust_chance[static_cast<std::size_t>(mean.grade)]);
}

/// Per um.
double density_on_rust(double thickness_um) {
  const double scale = constant::rust_scale_um;
  return constant::rust_share * thickness_um / (scale * scale) * std::exp(-thickness_um / scale) +
         (1 - constant::rust_share) / constant::rust_anything_um;
}

/// Good enough that no visit up to it was read on rust.
bool surely_zinc(const VisitMean& mean) {
  return mean.surface != SeenSurface::rust && (mean.grade == 1 || mean.grade == 2);
}

bool worth_weighing(const CoatingData& data, const VisitMean& mean) {
  if (mean.gone || mean.surface == SeenSurface::zinc) return false;
  return mean.surface == SeenSurface::rust || mean.grade >= 4 ||
         chance_of(data, mean) > constant::rust_chance_least;
}

/// How many of the last visits may be taken as read on rust.
int most_over_rust(const CoatingData& data, const Segment& segment) {
  int most = 0;
  while (most < segment.count && most < constant::rust_visits_most) {
    const VisitMean& mean =
        data.means[static_cast<std::size_t>(segment.first + segment.count - 1 - most)];
    if (!mean.gone && surely_zinc(mean)) break;
    ++most;
  }
  return most;
}

struct Hypothesis {
  int visits = 0;
  double ln_weight = 0;
};

}  // namespace

std::array<double, 6> rust_chance(const CoatingData& data) {
  std::array<double, 6> chance{};
  auto strata = strata_of(data);
  for (Stratum& stratum : strata) std::sort(stratum.good.begin(), stratum.good.end());
  for (std::size_t grade = 3; grade < grade_count; ++grade) {
    double sum = 0;
    double n = 0;
    for (const Stratum& stratum : strata) {
      if (stratum.good.empty() || stratum.at_grade[grade].empty()) continue;
      sum += sum_of_ties(stratum.good, stratum.at_grade[grade]);
      n += static_cast<double>(stratum.at_grade[grade].size());
    }
    const double tie = sum / (n + constant::rust_tie_weight);
    const double share =
        std::clamp((tie - constant::rust_tie_from) / constant::rust_tie_range, 0.0, 1.0);
    chance[grade] = std::max(constant::rust_chance_least, constant::rust_by_grade[grade] * share);
  }
  return chance;
}

void note_rust_odds(CoatingData& data) {
  for (Segment& segment : data.segments) {
    segment.may_be_rust = false;
    for (int i = segment.first; i < segment.first + segment.count; ++i) {
      VisitMean& mean = data.means[static_cast<std::size_t>(i)];
      const double chance = chance_of(data, mean);
      mean.ln_rust_odds = static_cast<float>(std::log(chance / (1 - chance)) +
                                             std::log(density_on_rust(mean.thickness_um)));
      segment.may_be_rust = segment.may_be_rust || worth_weighing(data, mean);
    }
  }
}

bool guess_rust(CoatingData& data) {
  bool any = false;
  for (Segment& segment : data.segments) {
    if (!segment.may_be_rust) continue;
    any = true;
    int visits = 0;
    for (int k = 1; k <= most_over_rust(data, segment); ++k) {
      const VisitMean& mean =
          data.means[static_cast<std::size_t>(segment.first + segment.count - k)];
      if (mean.gone) continue;
      if (chance_of(data, mean) < constant::rust_first_chance) break;
      visits = k;
    }
    segment.over_rust = static_cast<std::int16_t>(visits);
  }
  return any;
}

bool weigh_rust(CoatingData& data, const SharedEffects& effects, Segment& segment) {
  const PosteriorInput input{&data, &effects, MeanWeights::all_one};
  const int most = most_over_rust(data, segment);
  Segment tried = segment;
  Hypothesis best;
  Hypothesis next{-1, -1e300};
  double ln_odds = 0;
  for (int k = 0; k <= most; ++k) {
    if (k > 0) {
      const VisitMean& mean =
          data.means[static_cast<std::size_t>(segment.first + segment.count - k)];
      if (mean.gone) continue;  // a bound either way
      ln_odds += static_cast<double>(mean.ln_rust_odds);
    }
    tried.over_rust = static_cast<std::int16_t>(k);
    const Hypothesis own{k, segment_posterior(input, tried).ln_evidence + ln_odds};
    if (k == 0) {
      best = own;
    } else if (own.ln_weight > best.ln_weight) {
      next = best;
      best = own;
    } else if (own.ln_weight > next.ln_weight) {
      next = own;
    }
  }
  const bool changed = segment.over_rust != best.visits;
  if (changed)
    for (int i = segment.first; i < segment.first + segment.count; ++i)
      data.means[static_cast<std::size_t>(i)].weight = 1;
  segment.over_rust = static_cast<std::int16_t>(best.visits);
  segment.over_rust_next = static_cast<std::int16_t>(std::max(next.visits, 0));
  const double odds = next.visits < 0 ? 0 : std::exp(next.ln_weight - best.ln_weight);
  segment.next_share = static_cast<float>(odds / (1 + odds));
  return changed;
}

int weigh_rust(CoatingData& data, const SharedEffects& effects, const Workers& workers) {
  std::vector<int> changed(data.sites.size(), 0);
  for_each_unit(static_cast<int>(data.sites.size()), workers, [&](int s) {
    const auto place = static_cast<std::size_t>(s);
    const CoatingSite& site = data.sites[place];
    for (int i = site.first_segment; i < site.first_segment + site.segments; ++i) {
      Segment& segment = data.segments[static_cast<std::size_t>(i)];
      if (!segment.may_be_rust || workers.stopped()) continue;
      changed[place] += weigh_rust(data, effects, segment) ? 1 : 0;
    }
  });
  return std::accumulate(changed.begin(), changed.end(), 0);
}

}  // namespace kneerail::forecast
