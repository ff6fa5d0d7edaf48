#pragma once

// One segment through the hidden chain at one speed. The true grade only gets worse
// (chain_table.h); what is seen is at times one grade off: inspector I sees one too high with
// chance u_I, one too low with d_I, each grade further off with chance 0.001, else the true one. A
// grade said again as last time, or given from afar or from a picture, is hardly a look: it fits
// every true grade up to one above it, 0.3 as well two above, 0.1 as well beyond; so habit never
// becomes "no change".
//
// Between two looks of dt years a part may have been replaced without a record: with chance
// 1 - exp(-0.003 dt) it is a fresh one of half the gap. Never assumed ahead of the last look.
//
// Forward and backward recursions for hidden chains seen at uneven times: Jackson et al. 2003,
// J. R. Stat. Soc. D 52, 193-209; scaling as in Rabiner 1989, Proc. IEEE 77, section V.A.

#include <span>
#include <vector>

#include "core/forecast/grade/chain_table.h"
#include "core/forecast/grade/grade_data.h"

namespace kneerail::forecast {

/// How often an inspector says one grade too many and one too few.
struct GradeErrors {
  double up = 0.04;
  double down = 0.04;
};

/// P(said | true) for every inspector.
class GradeEmissions {
 public:
  explicit GradeEmissions(std::span<const GradeErrors> inspectors);
  /// Of the look, for true grades 1 to 5.
  [[nodiscard]] const GradeChances& of(const GradeLook& look) const;

 private:
  using BySeen = std::array<GradeChances, grade_count>;
  std::vector<BySeen> fresh_;
  BySeen repeated_;
};

/// What a segment says at one speed.
struct GradePath {
  double ln_likelihood = 0;
  GradeChances last{};  ///< chances of the true grade just after the last look
};

/// A segment's looks at speed e^x (1/yr per rate of the table). At least one look.
class GradeChain {
 public:
  GradeChain(const GradeData& data, const ChainTable& table, const GradeEmissions& emissions)
      : data_(&data), table_(&table), emissions_(&emissions) {}

  [[nodiscard]] GradePath forward(const GradeSegment& segment, double x) const;

  /// Chances of the true grade at each look given all looks of the segment, at speed e^x.
  void smooth(const GradeSegment& segment, double x, std::vector<GradeChances>& at_looks) const;

  /// Chances on the day of the first look before it counts: from the start, or the mean over likely
  /// starts.
  [[nodiscard]] GradeChances unseen(const GradeSegment& segment, double x) const;

 private:
  [[nodiscard]] std::span<const GradeLook> looks(const GradeSegment& segment) const;
  void advance(const GradeLook& look, double x, GradeChances& state) const;
  void go_back(const GradeLook& look, double x, GradeChances& column) const;

  const GradeData* data_;
  const ChainTable* table_;
  const GradeEmissions* emissions_;
};

}  // namespace kneerail::forecast
