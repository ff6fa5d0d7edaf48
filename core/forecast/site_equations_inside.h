#pragma once

// The normal equations of one site, runs eliminated onto core and globals. Includes Eigen: only
// for .cpp files.

#include <vector>

#include "core/forecast/dense_inside.h"
#include "core/forecast/gauge_walk_inside.h"
#include "core/forecast/segment_fit.h"

namespace kneerail::forecast {

/// Sums for the spreads that belong to single segments.
struct SpreadSums {
  double rate = 0;
  double start = 0;
  double rest = 0;
  double spots_seen = 0;      ///< loss^2 E[e^2] / D^2, summed
  double spots_expected = 0;  ///< loss^2 / D
  double segments = 0;
  double starts = 0;
  double means = 0;
};

struct SiteEquations {
  CoreLayout layout;
  Matrix core;  ///< core with globals, square
  Vector core_right;
  Matrix runs;        ///< run_unknowns rows per run, columns core with globals
  Matrix run_blocks;  ///< run_unknowns rows per run, run_unknowns columns
  Vector runs_right;
  std::vector<char> session_seen;
  std::vector<char> zone_seen;
  std::vector<char> run_seen;
  SpreadSums sums;
  // After eliminate_site():
  std::vector<GaugeDays> gauges;
  std::vector<int> habits;   ///< by session: the inspector whose habit it lies about; -1: none
  Matrix offset_precisions;  ///< of the sessions' offsets about those habits
  Matrix reach;              ///< core by border (globals, then habits): A^-1 B
  Matrix core_inverse;       ///< A^-1
  Vector core_given;         ///< A^-1 right
  Matrix onto_border;        ///< what the site adds to the border's equations
  Vector onto_border_right;
  bool solved = true;
  // After solve_site():
  std::vector<double> offset_squares;  ///< of each session's own offset, habit and walk apart
  std::vector<double> drift_um;        ///< by session: one step nearer to its gauge's
};

/// Sweeps the segments of a site; moves the weights of data.means when asked.
void sweep_site(CoatingData& data, const SharedEffects& effects, int site, bool move_weights,
                SiteEquations& equations);

/// Adds the priors of the site's own unknowns and its check foils, eliminates runs, then core.
void eliminate_site(const CoatingData& data, const SharedEffects& effects, int site,
                    SiteEquations& equations);

/// Estimates and covariance of globals and habits.
struct Border {
  Vector estimate;
  Matrix covariance;
};

/// The site's effects once the border is known. `effects` comes with its drifts.
void solve_site(const Border& border, const Spreads& spreads, SiteEquations& equations,
                SiteEffects& effects);

/// Weights of batches as under Student's t: one far off its kind's start ratio pulls less on the
/// spread and is pulled less to it.
void weigh_batches(const SiteEquations& equations, double batch_sd, SiteEffects& effects);

}  // namespace kneerail::forecast
