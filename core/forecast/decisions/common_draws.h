#pragma once

// What parts share, drawn: for sums over parts, whose lives are not independent because they lean
// on the same zone, run and site.
//
//   shift of a part's mean ln rate = globals of its kind and exposure + site + zone + run
//
// Each draw d gives every shared effect one shift off its estimate, from the covariance of the fit:
// the globals first, then site and zones given them, then each run given all of these,
//   G = chol(S_GG) z     s = S_sG S_GG^-1 G + chol(S_ss - S_sG S_GG^-1 S_Gs) z
// (runs alike), so that the shift of any part has the variance the fit gives it, and parts of one
// zone move together. z by SplitMix64 (Steele, Lea and Flood 2014) through the normal quantile, one
// stream for each effect, begun at a hash (FNV-1a) of its model and identifiers: no draw depends on
// what else is in the portfolio, on its order or on threads.
//
// A part's posterior lies on nodes u_k of ln rate with weights w_k. In draw d they are
//   w_kd ~ w_k p(u_k | shift d),   p the prior before the part's own data, moved by the shift
// then balanced (iterative proportional fitting, Deming and Stephan 1940) until every draw's
// weights sum to 1 and each node's mean over the draws is w_k: the mean over the draws of a chance
// is the part's own chance.
//
// Bare steel leans on no rate of zinc, and no fit tells what its zone does to it: there the shift
// is that of the zone's steel off its class, as wide as the wall's law takes it to be (wall_law.h).
//
// Limits: shifts of session offsets are not drawn, only of rates, and under zinc not those of the
// steel; a wall read on one bare tube does not narrow what is drawn for its zone; 200 draws give a
// p10 or p90 to about a tenth of the spread.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/forecast/coating_model.h"
#include "core/forecast/grade/grade_model.h"

namespace kneerail::forecast {

inline constexpr int draw_count = 200;
inline constexpr std::uint64_t draw_seed = 20260630;

/// A site's shared effects on ln rate: itself, its zones, then the globals; and its runs.
struct SharedSite {
  std::string name;
  std::vector<std::string> zones;
  std::vector<std::string> runs;   ///< empty: the model has no run effects
  std::vector<double> covariance;  ///< of site, zones, globals: square, row by row
  std::vector<double> run_cross;   ///< per run: its covariance with those
  std::vector<double> run_variance;
};

/// The shared effects of one fitted model.
struct SharedModel {
  std::string name;  ///< tells its draws from those of another model
  int globals = 0;
  std::vector<double> global_covariance;  ///< square, row by row
  std::vector<SharedSite> sites;          ///< in the order of the model's
};

SharedModel shared_of(const CoatingModel& model);
SharedModel shared_of(const GradeModel& model);

/// Which effects move a part: places in its site, and of the globals.
struct SharedGroup {
  int site = 0;
  int zone = 0;
  int run = -1;  ///< -1: none
  std::span<const int> globals;
};

class CommonDraws {
 public:
  explicit CommonDraws(const SharedModel& model, int draws = draw_count,
                       std::uint64_t seed = draw_seed);

  [[nodiscard]] int draws() const { return draws_; }

  /// The shift of the group's mean ln rate in each draw.
  [[nodiscard]] std::vector<double> shifts(const SharedGroup& group) const;

 private:
  struct Site {
    std::vector<double> own;   ///< site, then zones; a row of draws each
    std::vector<double> runs;  ///< a row of draws each
  };
  int draws_;
  std::vector<double> globals_;  ///< a row of draws each
  std::vector<Site> sites_;
};

/// The same for something that each zone has of its own and that nothing is fitted to: normal about
/// 0. `of` tells its draws from those of others.
struct ZoneShift {
  std::string_view of;
  std::string_view site;
  std::string_view zone;
  double sd = 0;
};
std::vector<double> zone_shifts(const ZoneShift& shift, int draws, std::uint64_t seed = draw_seed);

/// The prior of ln rate given what is shared: moved by a shift it is centre + shift. tail: degrees
/// of freedom of its t shape; 0: normal.
struct MovedPrior {
  double centre = 0;
  double variance = 1;
  double tail = 0;
};

struct WeighedNode {
  double at = 0;  ///< ln rate
  double weight = 0;
};

/// Weights of the nodes in each draw, a row of nodes for each; rows sum to 1.
std::vector<double> weights_in_draws(std::span<const WeighedNode> nodes, const MovedPrior& prior,
                                     std::span<const double> shifts);

}  // namespace kneerail::forecast
