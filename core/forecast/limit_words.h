#pragma once

// The words of one part's row: how well founded it is, what was flagged, and the reason sentence.

#include <optional>
#include <string>
#include <vector>

#include "core/forecast/limit_report.h"
#include "core/forecast/posterior.h"
#include "core/forecast/predictive.h"

namespace kneerail::forecast {

/// A part with its current segment.
struct PartView {
  const CoatingPart* own = nullptr;
  const Part* part = nullptr;
  const Segment* segment = nullptr;
  Clock clock;
  std::optional<Posterior> posterior;  ///< none: no reading and no installation date
};

std::string words_of(const ReportContext& context, const PartView& view, Limit limit);

/// A swap nobody recorded, readings that do not fit, gauges that were off.
std::vector<std::string> flags_of(const ReportContext& context, const PartView& view);

std::string sentence_of(const PartView& view, const LimitForecast& row, double limit_um);

}  // namespace kneerail::forecast
