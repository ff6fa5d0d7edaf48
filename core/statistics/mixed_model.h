#pragma once

// A linear mixed model with one grouping factor: every group has its own deviation from the common
// line, and the groups lend each other knowledge.
//
//   y = X beta + Z_g u_g + e,   u_g ~ N(0, Sigma),   e ~ N(0, sigma^2)
//
// Sigma = sigma^2 L L'. For given L the best beta and sigma^2 have a closed form, so only the
// entries of L are searched (the profiled criterion of Bates et al. 2015, J. Stat. Softw. 67(1));
// the groups enter through cross products of q columns, so one look costs O(groups q^3).
//
// When the best Sigma is on the edge of what is possible (a variance of zero, a correlation of one)
// that is the answer, marked singular; it is no error.

#include <span>
#include <vector>

#include "core/base/result.h"

namespace kneerail::statistics {

enum class Criterion { reml, ml };

/// n rows. Matrices row after row.
struct MixedData {
  std::vector<double> y;
  std::vector<double> fixed;   ///< n by p; put a column of ones in for a constant
  std::vector<double> random;  ///< n by q, the same columns for every group
  std::vector<int> group;      ///< 0 ... groups - 1
  int groups = 0;
};

struct MixedFit {
  std::vector<double> fixed;              ///< p
  std::vector<double> fixed_covariance;   ///< p by p
  std::vector<double> fixed_errors;       ///< p, standard errors
  std::vector<double> random_covariance;  ///< q by q: Sigma
  double residual_variance = 0;
  double criterion = 0;            ///< -2 log likelihood, restricted or not
  std::vector<double> deviations;  ///< groups by q: what each group most likely adds (BLUP)
  bool singular = false;
  bool settled = false;  ///< the search came to rest
};

/// Errors: invalid_input (lengths do not fit, a group number out of range, a number not finite);
/// not_estimable (fewer than two groups, no more rows than unknowns, dependent columns).
Result<MixedFit> fit_mixed_model(const MixedData& data, Criterion criterion);

}  // namespace kneerail::statistics
