#include "core/forecast/swaps.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/forecast/coating_readings.h"
#include "core/forecast/posterior.h"

namespace kneerail::forecast {

namespace {

class SwapSearch {
 public:
  SwapSearch(CoatingData& data, const SharedEffects& effects) : data_(data), effects_(effects) {}

  /// The segment, or the segments it falls into.
  std::vector<Segment> pieces(const Segment& segment) {
    std::vector<Segment> out{segment};
    while (auto halves = best_cut(out.back())) {
      out.back() = halves->before;
      out.push_back(halves->after);
      enter(out.back());
    }
    if (out.size() > 1)
      for (int i = segment.first; i < segment.first + segment.count; ++i) mean(i).weight = 1;
    return out;
  }

 private:
  struct Halves {
    Segment before;
    Segment after;
  };

  VisitMean& mean(int place) { return data_.means[static_cast<std::size_t>(place)]; }

  double corrected_um(int place) {
    const VisitMean& own = mean(place);
    return own.thickness_um -
           session_correction(data_, effects_, own.session, own.thickness_um).mean_um;
  }

  double evidence(const Segment& segment) {
    return segment_posterior({&data_, &effects_, MeanWeights::all_one}, segment).ln_evidence;
  }

  Halves cut_before(const Segment& segment, int place) {
    Halves halves{segment, segment};
    halves.before.count = halves.before.visible = place - segment.first;
    Segment& after = halves.after;
    const int after_count = segment.count - halves.before.count;
    after.over_rust = static_cast<std::int16_t>(std::min<int>(segment.over_rust, after_count));
    halves.before.over_rust = static_cast<std::int16_t>(segment.over_rust - after.over_rust);
    after.first = place;
    after.count = after.visible = after_count;
    const std::int32_t gap = mean(place).day.days - mean(place - 1).day.days;
    after.start = Date{mean(place - 1).day.days + gap / 2};
    after.start_kind = StartKind::known;
    after.first_coating = false;
    after.after_swap = true;
    return halves;
  }

  /// Ages and marks of a segment's means as that segment has them.
  void enter(const Segment& segment) {
    for (int i = segment.first; i < segment.first + segment.count; ++i)
      mean(i).effective_age = effective_age(data_, segment, mean(i).day);
    mark_gone(data_.means, segment);
  }

  std::optional<Halves> best_cut(const Segment& segment) {
    std::optional<Halves> best;
    std::optional<double> whole;
    double best_odds = std::log(constant::swap_odds) - std::log(constant::swap_chance);
    for (int i = segment.first + 1; i < segment.first + segment.count; ++i) {
      if (mean(i).gone || read_on_rust(segment, i) ||
          corrected_um(i) - corrected_um(i - 1) <= constant::swap_rise_um)
        continue;
      if (!whole) whole = evidence(segment);
      const Halves halves = cut_before(segment, i);
      const double before = evidence(halves.before);
      enter(halves.after);
      const double odds = before + evidence(halves.after) - *whole;
      enter(segment);
      if (odds <= best_odds) continue;
      best_odds = odds;
      best = halves;
    }
    return best;
  }

  CoatingData& data_;
  const SharedEffects& effects_;
};

/// Puts each site's segments one after the other again.
void put_back(const std::vector<std::vector<Segment>>& by_site, CoatingData& data) {
  data.segments.clear();
  for (CoatingPart& part : data.parts) part.segments = 0;
  for (std::size_t s = 0; s < data.sites.size(); ++s) {
    data.sites[s].first_segment = static_cast<std::int32_t>(data.segments.size());
    data.sites[s].segments = static_cast<std::int32_t>(by_site[s].size());
    for (const Segment& segment : by_site[s]) {
      CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
      if (part.segments++ == 0)
        part.first_segment = static_cast<std::int32_t>(data.segments.size());
      data.segments.push_back(segment);
    }
  }
}

}  // namespace

int cut_unrecorded_swaps(CoatingData& data, const SharedEffects& effects, const Workers& workers) {
  std::vector<std::vector<Segment>> by_site(data.sites.size());
  for_each_unit(static_cast<int>(data.sites.size()), workers, [&](int s) {
    const CoatingSite& site = data.sites[static_cast<std::size_t>(s)];
    SwapSearch search(data, effects);
    auto& out = by_site[static_cast<std::size_t>(s)];
    for (int i = site.first_segment; i < site.first_segment + site.segments; ++i)
      for (const Segment& piece : search.pieces(data.segments[static_cast<std::size_t>(i)]))
        out.push_back(piece);
  });
  const std::size_t before = data.segments.size();
  std::size_t after = 0;
  for (const auto& segments : by_site) after += segments.size();
  if (after > before) put_back(by_site, data);
  return static_cast<int>(after - before);
}

}  // namespace kneerail::forecast
