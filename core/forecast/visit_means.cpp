// Medians of replicates, means of spots, and what repeats tell of a gauge and of a part's areas.

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/forecast/coating_readings.h"
#include "core/forecast/constants.h"

namespace kneerail::forecast {

namespace {

/// One spot of one part in one session: readings [first, last).
struct Spot {
  std::size_t first;
  std::size_t last;
  double value_um;
};

/// Variance of one replicate from the range of three to five; nothing for a mix-up or too few.
std::optional<double> replicate_variance(const std::vector<UsedReading>& readings,
                                         const Spot& spot) {
  const std::size_t count = std::min<std::size_t>(spot.last - spot.first, 5);
  if (count < 3) return std::nullopt;
  double low = readings[spot.first].value_um;
  double high = low;
  for (std::size_t i = spot.first; i < spot.first + count; ++i) {
    low = std::min(low, readings[i].value_um);
    high = std::max(high, readings[i].value_um);
  }
  const double sd = (high - low) / constant::mean_range[count - 3];
  if (sd > constant::replicate_sd_most_um) return std::nullopt;
  return sd * sd;
}

double median_of(const std::vector<UsedReading>& readings, std::size_t first, std::size_t last) {
  std::vector<double> values;
  for (std::size_t i = first; i < last; ++i) values.push_back(readings[i].value_um);
  return median(std::move(values));
}

/// The spots of the visit that begins at `first`.
std::vector<Spot> spots_from(const std::vector<UsedReading>& readings, std::size_t first) {
  std::vector<Spot> spots;
  std::size_t i = first;
  while (i < readings.size() && readings[i].part == readings[first].part &&
         readings[i].session == readings[first].session) {
    std::size_t end = i;
    while (end < readings.size() && readings[end].part == readings[i].part &&
           readings[end].session == readings[i].session && readings[end].spot == readings[i].spot)
      ++end;
    spots.push_back({i, end, median_of(readings, i, end)});
    i = end;
  }
  return spots;
}

SeenSurface worst_surface(const std::vector<UsedReading>& readings, std::size_t first,
                          std::size_t last) {
  SeenSurface worst = SeenSurface::nothing;
  for (std::size_t i = first; i < last; ++i) worst = std::max(worst, readings[i].surface);
  return worst;
}

}  // namespace

double median(std::vector<double> values) {
  const std::size_t half = values.size() / 2;
  std::sort(values.begin(), values.end());
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

std::vector<CountedMean> visit_means(const std::vector<UsedReading>& readings,
                                     const CoatingData& data, std::vector<SiteSums>& sums) {
  std::vector<CountedMean> means;
  for (std::size_t i = 0; i < readings.size();) {
    const CoatingPart& part = data.parts[static_cast<std::size_t>(readings[i].part)];
    SiteSums& of_site = sums[static_cast<std::size_t>(part.site)];
    const auto spots = spots_from(readings, i);
    double total = 0;
    for (const Spot& spot : spots) {
      total += spot.value_um;
      if (const auto variance = replicate_variance(readings, spot))
        of_site.replicate_variances.add(*variance);
    }
    if (spots.size() == 2) {
      const double gap = spots[0].value_um - spots[1].value_um;
      if (std::abs(gap) < constant::area_gap_most_um) of_site.area_variances.add(gap * gap / 2);
    }
    const std::size_t end = spots.back().last;
    means.push_back({readings[i].part, readings[i].session, static_cast<std::int32_t>(end - i),
                     static_cast<std::int32_t>(spots.size()), worst_surface(readings, i, end),
                     total / static_cast<double>(spots.size())});
    i = end;
  }
  return means;
}

void estimate_repeats(const std::vector<SiteSums>& sums, CoatingData& data) {
  CountedSum replicates;
  CountedSum areas;
  for (const SiteSums& site : sums) {
    replicates.add(site.replicate_variances);
    areas.add(site.area_variances);
  }
  const auto mean = [](const CountedSum& sum) {
    return sum.total / static_cast<double>(sum.count);
  };
  data.replicate_sd_um =
      replicates.count > 0 ? std::sqrt(mean(replicates)) : constant::replicate_sd_um;
  data.area_sd_um = constant::area_sd_um;
  if (areas.count > 0) {
    const double between = mean(areas) - data.replicate_sd_um * data.replicate_sd_um / 2;
    data.area_sd_um = std::max(constant::area_sd_least_um, std::sqrt(std::max(0.0, between)));
  }
}

}  // namespace kneerail::forecast
