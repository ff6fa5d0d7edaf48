// The sweep of a site's segments into its normal equations.

#include <algorithm>
#include <array>

#include "core/forecast/site_equations_inside.h"

namespace kneerail::forecast {

namespace {

/// The columns a segment touches besides its sessions: rate and start, core and run.
class SegmentScatter {
 public:
  SegmentScatter(const SegmentFit& fit, int run, SiteEquations& equations)
      : fit_(fit), run_(run * run_unknowns), e_(equations) {}

  void add() {
    Pair right{};
    for (const SegmentRow& row : fit_.rows) {
      right[0] += row.precision * row.response_um;
      right[1] -= row.precision * row.effective_age * row.response_um;
    }
    add_means(product(fit_.q, fit_.information), {fit_.q[0] * right[0] + fit_.q[1] * right[1],
                                                  fit_.q[2] * right[0] + fit_.q[3] * right[1]});
    for (const SegmentRow& row : fit_.rows)
      if (row.session >= 0) add_session(row, right);
  }

 private:
  /// U' V^-1 U and U' V^-1 z, in (start, rate); a start of scale and a rate of the mean rate.
  void add_means(const Square& information, const Pair& right) {
    const double scale = fit_.terms.start_scale_um;
    const double rate = fit_.rate;
    add_pairs(rate_columns(), rate_columns(), rate * rate * information[3]);
    add_right(rate_columns(), rate * right[1]);
    if (fit_.terms.start < 0) return;
    add_pairs(start_columns(), start_columns(), scale * scale * information[0]);
    add_pairs(start_columns(), rate_columns(), scale * rate * information[1]);
    add_pairs(rate_columns(), start_columns(), scale * rate * information[1]);
    add_right(start_columns(), scale * right[0]);
  }

  /// Columns of core and those of the run.
  struct Columns {
    const int* core;
    int core_count;
    std::array<int, 2> run;
    int run_count;
  };
  [[nodiscard]] Columns rate_columns() const {
    return {fit_.terms.rate.data(), fit_.terms.rate_terms, {run_rate, 0}, 1};
  }
  [[nodiscard]] Columns start_columns() const {
    return {&fit_.terms.start, 1, {run_batch, fit_.terms.kind_group}, fit_.terms.batch ? 2 : 0};
  }

  void add_pairs(const Columns& rows, const Columns& columns, double value) {
    for (int i = 0; i < rows.core_count; ++i)
      for (int j = 0; j < columns.core_count; ++j) e_.core(rows.core[i], columns.core[j]) += value;
    for (int i = 0; i < rows.run_count; ++i) {
      const int row = run_ + rows.run[static_cast<std::size_t>(i)];
      for (int j = 0; j < columns.core_count; ++j) e_.runs(row, columns.core[j]) += value;
      for (int j = 0; j < columns.run_count; ++j)
        e_.run_blocks(row, columns.run[static_cast<std::size_t>(j)]) += value;
    }
  }

  void add_right(const Columns& rows, double value) {
    for (int i = 0; i < rows.core_count; ++i) e_.core_right(rows.core[i]) += value;
    for (int i = 0; i < rows.run_count; ++i)
      e_.runs_right(run_ + rows.run[static_cast<std::size_t>(i)]) += value;
  }

  /// Row of a session against every other session of the segment, and against rate and start.
  void add_session(const SegmentRow& row, const Pair& right) {
    const double w = row.precision;
    const double h = row.effective_age;
    const Square& p = fit_.posterior;
    const Pair pu{p[0] - h * p[1], p[2] - h * p[3]};
    const int b = e_.layout.offset(row.session);
    const int g = e_.layout.gain(row.session);
    for (const SegmentRow& other : fit_.rows) {
      if (other.session < 0) continue;
      double value = -w * other.precision * (pu[0] - other.effective_age * pu[1]);
      if (&other == &row) value += w;
      const int other_b = e_.layout.offset(other.session);
      const int other_g = e_.layout.gain(other.session);
      e_.core(b, other_b) += value;
      e_.core(b, other_g) += value * other.gain_um;
      e_.core(g, other_b) += value * row.gain_um;
      e_.core(g, other_g) += value * row.gain_um * other.gain_um;
    }
    const double pulled = w * (row.response_um - pu[0] * right[0] - pu[1] * right[1]);
    e_.core_right(b) += pulled;
    e_.core_right(g) += pulled * row.gain_um;
    add_cross(b, g, row.gain_um, w * fit_.rate * (fit_.q[2] - h * fit_.q[3]), rate_columns());
    if (fit_.terms.start >= 0)
      add_cross(b, g, row.gain_um, w * fit_.terms.start_scale_um * (fit_.q[0] - h * fit_.q[1]),
                start_columns());
  }

  void add_cross(int b, int g, double gain_um, double value, const Columns& columns) {
    for (int i = 0; i < columns.core_count; ++i) {
      const int column = columns.core[i];
      e_.core(b, column) += value;
      e_.core(column, b) += value;
      e_.core(g, column) += value * gain_um;
      e_.core(column, g) += value * gain_um;
    }
    for (int i = 0; i < columns.run_count; ++i) {
      const int row = run_ + columns.run[static_cast<std::size_t>(i)];
      e_.runs(row, b) += value;
      e_.runs(row, g) += value * gain_um;
    }
  }

  const SegmentFit& fit_;
  int run_;
  SiteEquations& e_;
};

void add_spread_sums(const SegmentFit& fit, const Segment& segment, SpreadSums& sums) {
  const double rate = fit.estimate[1] / fit.rate;
  sums.rate += rate * rate + fit.posterior[3] / (fit.rate * fit.rate);
  sums.segments += 1;
  if (segment.start_kind != StartKind::known) return;
  const double nominal = segment.nominal_um;
  sums.start += (fit.estimate[0] * fit.estimate[0] + fit.posterior[0]) / (nominal * nominal);
  sums.starts += 1;
}

/// The part of each visit mean's scatter that neither areas nor replicates explain, and its weight.
void judge_means(const SegmentFit& fit, const Spreads& spreads, bool move_weights,
                 CoatingData& data, SpreadSums& sums) {
  const double rest = spreads.rest_um * spreads.rest_um;
  for (const SegmentRow& row : fit.rows) {
    if (row.mean < 0) continue;
    VisitMean& mean = data.means[static_cast<std::size_t>(row.mean)];
    const double variance = mean.weight / row.precision;
    const double over_expected = mean.weight * row_error(fit, row).square() / variance;
    sums.rest += over_expected * rest;
    sums.means += 1;
    const double loss_share = row.loss_um * row.loss_um / variance;
    sums.spots_seen += loss_share * over_expected;
    sums.spots_expected += loss_share;
    if (move_weights) mean.weight = robust_weight(fit, row, mean);
  }
}

void reset(const CoatingSite& site, SiteEquations& equations) {
  equations.layout = core_layout(site);
  const int n = equations.layout.with_globals();
  const auto runs = static_cast<Eigen::Index>(site.runs.size() * run_unknowns);
  equations.core.setZero(n, n);
  equations.core_right.setZero(n);
  equations.runs.setZero(runs, n);
  equations.run_blocks.setZero(runs, run_unknowns);
  equations.runs_right.setZero(runs);
  equations.session_seen.assign(static_cast<std::size_t>(site.sessions), 0);
  equations.zone_seen.assign(site.zones.size(), 0);
  equations.run_seen.assign(site.runs.size(), 0);
  equations.sums = {};
}

}  // namespace

void sweep_site(CoatingData& data, const SharedEffects& effects, int site_index, bool move_weights,
                SiteEquations& equations) {
  const CoatingSite& site = data.sites[static_cast<std::size_t>(site_index)];
  reset(site, equations);
  const FitInput input{&data, &effects.spreads,
                       &effects.sites[static_cast<std::size_t>(site_index)], equations.layout,
                       site.first_session};
  SegmentFit fit;
  for (int i = site.first_segment; i < site.first_segment + site.segments; ++i) {
    const Segment& segment = data.segments[static_cast<std::size_t>(i)];
    const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
    if (segment.visible == 0 || !part.teaches) continue;
    fit_segment(input, segment, fit);
    if (fit.rows.empty()) continue;
    equations.zone_seen[static_cast<std::size_t>(part.zone)] = 1;
    equations.run_seen[static_cast<std::size_t>(part.run)] = 1;
    for (const SegmentRow& row : fit.rows)
      if (row.session >= 0) equations.session_seen[static_cast<std::size_t>(row.session)] = 1;
    SegmentScatter(fit, part.run, equations).add();
    add_spread_sums(fit, segment, equations.sums);
    judge_means(fit, effects.spreads, move_weights, data, equations.sums);
  }
}

}  // namespace kneerail::forecast
