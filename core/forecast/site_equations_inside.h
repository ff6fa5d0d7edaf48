#pragma once

// The normal equations of one site, runs eliminated onto core and globals. Includes Eigen: only
// for .cpp files.

#include <vector>

#include "core/forecast/dense_inside.h"
#include "core/forecast/segment_fit.h"

namespace kneerail::forecast {

/// Sums for the spreads that belong to single segments.
struct SpreadSums {
  double rate = 0;
  double start = 0;
  double rest = 0;
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
  // After eliminate():
  Matrix reach;         ///< core by globals: A^-1 B
  Matrix core_inverse;  ///< A^-1
  Vector core_given;    ///< A^-1 right
  Matrix onto_globals;  ///< what the site adds to the globals' equations
  Vector onto_globals_right;
  bool solved = true;
};

/// Sweeps the segments of a site; moves the weights of data.means when asked.
void sweep_site(CoatingData& data, const SharedEffects& effects, int site, bool move_weights,
                SiteEquations& equations);

/// Adds the priors of the site's own unknowns and its check foils, eliminates runs, then core.
void eliminate_site(const CoatingData& data, const Spreads& spreads, int site,
                    SiteEquations& equations);

/// The site's effects once the globals and their covariance are known.
void solve_site(const SiteEquations& equations, const SharedEffects& effects, SiteEffects& site);

}  // namespace kneerail::forecast
