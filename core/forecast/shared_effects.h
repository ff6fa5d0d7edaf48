#pragma once

// What parts share: the effects of the fit, where each stands among the unknowns, and their
// covariance.
//
//   ln mean rate of a group   eta = ln(class rate) + overall + kind + exposure + site + zone + run
//   mean start of a coating   nominal (ratio of its kind + batch of its run + what the batch's
//                             tubes, fittings or base fixings differ from it by)
//   a session reads           offset b + gain g * thickness  too much; b about its inspector's
//                             habit and the walk of its gauge (gauge_walk_inside.h)
//
// Unknowns of one site, its "core": b of each session, g of each session, the site, its zones. Next
// to them each run holds five (its rate, its batch, three kind groups of the batch), coupled to the
// core but not to other runs. What couples all sites, the border: eleven globals (overall, 4 kinds,
// spray, sheltered, 4 start ratios) and the habits of the inspectors, which touch nothing but the
// offsets' priors.

#include <array>
#include <cstdint>
#include <vector>

#include "core/forecast/coating_data.h"
#include "core/forecast/constants.h"

namespace kneerail::forecast {

inline constexpr int global_count = 11;
inline constexpr int kind_count = 4;

/// Places among the globals.
inline constexpr int global_overall = 0;
inline constexpr int global_kind = 1;
inline constexpr int global_spray = 5;
inline constexpr int global_sheltered = 6;
inline constexpr int global_start_ratio = 7;

/// Standard deviations of the model, estimated pass by pass.
struct Spreads {
  double rate = constant::rate_spread.first;    ///< of a part's rate over its group's mean
  double start = constant::start_spread.first;  ///< of a part's start over nominal
  double offset_um = constant::offset_spread.first;
  double gain = constant::gain_spread.first;
  double site = constant::site_spread.first;
  double zone = constant::zone_spread.first;
  double run = constant::run_spread.first;
  double batch = constant::batch_spread.first;
  double run_kind = constant::run_kind_spread.first;  ///< of a kind group about its batch
  double habit_um = constant::habit_spread.first;     ///< of inspectors
  double spots = constant::spots_spread.first;        ///< of a visit mean, over the group's loss
  double rest_um = constant::rest_spread.first;  ///< of a visit mean, beyond areas and replicates
};

/// Where a site's core unknowns stand; the globals follow them.
struct CoreLayout {
  int sessions = 0;
  int zones = 0;

  [[nodiscard]] int offset(int session) const { return session; }
  [[nodiscard]] int gain(int session) const { return sessions + session; }
  [[nodiscard]] int site() const { return 2 * sessions; }
  [[nodiscard]] int zone(int zone_in_site) const { return 2 * sessions + 1 + zone_in_site; }
  [[nodiscard]] int size() const { return 2 * sessions + 1 + zones; }
  [[nodiscard]] int with_globals() const { return size() + global_count; }
};

inline CoreLayout core_layout(const CoatingSite& site) {
  return {site.sessions, static_cast<int>(site.zones.size())};
}

/// Per run: its effect on the rate, its batch's on the start ratio, and that of each kind group.
inline constexpr int run_unknowns = 5;
inline constexpr int run_rate = 0;
inline constexpr int run_batch = 1;
inline constexpr int run_kind_groups = 2;  ///< the first of three: tubes, fittings, base fixings
inline constexpr int kind_group_count = 3;

/// The kind group's place among a run's unknowns.
inline int run_kind_group(int kind) {
  return run_kind_groups + (kind < 2 ? 0 : kind - 1);
}

/// The estimate of one site's unknowns and its covariance with the globals.
struct SiteEffects {
  std::vector<double> core;        ///< core unknowns, then a copy of the globals
  std::vector<double> covariance;  ///< of those, square, row by row
  std::vector<double> runs;        ///< run_unknowns each
  /// Per run: covariance of its unknowns with core and globals (run_unknowns rows), row by row.
  std::vector<double> run_cross;
  std::vector<double> run_covariance;  ///< per run, run_unknowns square
  /// Per run: precision of its batch over the usual one; a batch far off is an outlier.
  std::vector<double> batch_weights;
  /// By session: how its gauge's offset walks at the site, um a root of a year.
  std::vector<double> drift_um;
  std::vector<char> zone_seen;  ///< 1: a reading tells about it
  std::vector<char> run_seen;
};

struct SharedEffects {
  Spreads spreads;
  std::array<double, global_count> globals{};
  std::array<double, global_count * global_count> global_covariance{};
  std::vector<double> habits_um;       ///< of CoatingData::inspectors
  std::vector<double> habit_variance;  ///< of those
  std::vector<SiteEffects> sites;
  double largest_move_ln = 0;  ///< of site + zone in the last pass
  bool computed = true;        ///< false: the equations could not be solved
};

/// The effects before any reading.
SharedEffects first_effects(const CoatingData& data);

/// The mean effects of a segment's group: at most six terms of ln rate, at most three of the start.
struct GroupTerms {
  std::array<int, 5> rate{};  ///< places in core with globals
  int rate_terms = 0;
  int start = -1;  ///< place of the start ratio; -1: the start is a given number
  double given_start_um = 0;
  double start_scale_um = 0;  ///< nominal: what the start ratio multiplies
  bool batch = false;
  int kind_group = run_kind_groups;  ///< of the batch, where it has one
  double start_sd_um = 0;
};

GroupTerms group_terms(const CoreLayout& layout, const CoatingPart& part, const Segment& segment,
                       const Spreads& spreads);

/// Variance of a visit mean of weight 1: spots differ more as zinc goes.
inline double mean_variance(const VisitMean& mean, const Spreads& spreads, double group_loss_um) {
  const double spots_um = spreads.spots * group_loss_um;
  return spreads.rest_um * spreads.rest_um + mean.known_variance + spots_um * spots_um;
}

/// Sum of the terms: ln rate over the class's, and mean start in um.
double ln_rate_over_class(const GroupTerms& terms, const SiteEffects& site, int run);
double mean_start_um(const GroupTerms& terms, const SiteEffects& site, int run);

/// Thickness as the gain of a gauge works on it.
inline double gain_thickness_um(double thickness_um) {
  if (thickness_um < 0) return 0;
  return thickness_um > constant::gain_thickness_most_um ? constant::gain_thickness_most_um
                                                         : thickness_um;
}

}  // namespace kneerail::forecast
