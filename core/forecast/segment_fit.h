#pragma once

// One segment given the shared effects. About its group's mean a part's start is off by d and its
// rate by s; a visit mean is off by d - h s + error, so with U = [1, -h] and S = diag(sd of start
// squared, (rate sd x mean rate) squared)
//
//   V = D + U S U'     N = U' D^-1 U     Q = (I + N S)^-1     P = S Q
//   posterior of (d, s) = P U' D^-1 r with covariance P
//   V^-1 = D^-1 - D^-1 U P U' D^-1     U' V^-1 U = Q N     U' V^-1 = Q U' D^-1
//
// so nothing larger than 2 x 2 is ever inverted. Linearised at the group's mean rate, never at the
// part's own estimate: the information about a ln rate grows with the rate, so that would shrink
// fast parts less than slow ones and push the mean up.

#include <array>
#include <vector>

#include "core/forecast/shared_effects.h"
#include "core/forecast/thickness_bound.h"

namespace kneerail::forecast {

using Pair = std::array<double, 2>;
/// Row by row.
using Square = std::array<double, 4>;

struct SegmentRow {
  int mean = -1;     ///< place in CoatingData::means
  int session = -1;  ///< within the site; -1: a bound, without session columns
  double effective_age = 0;
  double precision = 0;    ///< 1/D
  double residual_um = 0;  ///< over the group's mean and the session
  double response_um = 0;  ///< z of the linear model
  double gain_um = 0;      ///< what the session's gain multiplies
  double loss_um = 0;      ///< of the group's mean by then
};

struct SegmentFit {
  GroupTerms terms;
  double rate = 0;      ///< group mean, um per year
  double start_um = 0;  ///< group mean
  std::vector<SegmentRow> rows;
  Square prior{};        ///< S
  Square information{};  ///< N
  Square q{};
  Square posterior{};  ///< P
  Pair estimate{};     ///< of (d, s)
};

struct FitInput {
  const CoatingData* data;
  const Spreads* spreads;
  const SiteEffects* effects;
  CoreLayout layout;
  int first_session;
};

/// The visible visit means of the segment that are numbers, and its first visit that is a bound as
/// a row of its own whose variance stands for what "thinner than 7 um" (gone) or "thinner than 17"
/// (read on rust) tells. Reuses `fit`'s memory.
void fit_segment(const FitInput& input, const Segment& segment, SegmentFit& fit);

/// Posterior of a row's error.
struct RowError {
  double mean;
  double variance;
  [[nodiscard]] double square() const { return mean * mean + variance; }
};
RowError row_error(const SegmentFit& fit, const SegmentRow& row);

/// The weight a visit mean should have: 1, less where its squared error is over 6.25 of its
/// variance.
double robust_weight(const SegmentFit& fit, const SegmentRow& row, const VisitMean& mean);

Square product(const Square& a, const Square& b);

}  // namespace kneerail::forecast
