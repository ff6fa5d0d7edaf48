#pragma once

// Every number of the wall model that is a constant of the program, in one place.

#include <array>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast::wall_constant {

// Wall when new, over nominal: welded tube comes some per cent under it.
inline constexpr double start_ratio = 0.97;
inline constexpr double start_ratio_sd = 0.03;
/// Zinc renewed on a tube that had stood before, or a tube of no known age: how much steel went by
/// then is not known.
inline constexpr double used_start_ratio_sd = 0.06;
/// No nominal wall: the readings alone say it.
inline constexpr double unknown_start_sd_mm = 3;

// Errors of a reading, mm: of one place, and what all of a gauge's readings of a day share.
inline constexpr double reading_sd_mm = 0.06;
inline constexpr double session_sd_mm = 0.03;
inline constexpr double bound_slip = 1e-3;  ///< chance that a bound is a slip
inline constexpr double law_error = 0.30;   ///< of the loss by then: no wall follows a law exactly
inline constexpr double odd_low = 0.15;     ///< of nominal; a pit or a slip, no wall
/// Of nominal; a doubled echo or paint. New tube is at most 10 % over it (EN 10255).
inline constexpr double odd_high = 1.10;
inline constexpr double rise_sds = 3;  ///< above an earlier reading: no wall grows

// Steel outside, over the zone's class: ln of the ratio; the zone's own figure is an estimate too.
inline constexpr double ratio_ln_sd = 0.60;
inline constexpr double plain_ratio_least = 10;  ///< of steel over zinc; outside it the words ask
inline constexpr double plain_ratio_most = 40;
/// Gauss-Hermite rule for a standard normal, 7 nodes.
inline constexpr std::array<double, 7> ratio_nodes{
    -3.7504397177257425, -2.3667594107345415, -1.1544053947399682, 0,
    1.1544053947399682,  2.3667594107345415,  3.7504397177257425};
inline constexpr std::array<double, 7> ratio_weights{
    5.4826885597221e-4, 3.0757123967586e-2, 0.24012317860501,  0.45714285714286,
    0.24012317860501,   3.0757123967586e-2, 5.4826885597221e-4};
/// Bare steel has no zinc to smooth its dates: equal nodes, and the part's own spread about its
/// class beside that of the ratio.
inline constexpr int bare_nodes = 61;
inline constexpr double bare_reach = 3.5;
inline constexpr double bare_ln_sd = 0.55;

// Inside of a hollow. Common practice, no source: posts stand open or drain badly more often than
// rails, whose ends fittings close.
inline constexpr double open_chance_post = 0.35;
inline constexpr double open_chance_rail = 0.15;
inline constexpr double open_share = 0.4;     ///< of the class's steel loss outside, median
inline constexpr double open_ln_sd = 0.8;     ///< a wide prior
inline constexpr double closed_share = 0.03;  ///< dry: air that does not change
inline constexpr int open_nodes = 9;          ///< equal, in +-2 sds
inline constexpr double open_reach = 2;
inline constexpr double open_late_chance = 0.3;  ///< let water in only for the last half of its age
inline constexpr double open_late_share = 0.5;
/// Start not known: rust inside is counted from so long before the first look.
inline constexpr double unknown_years_before = 10;

/// Nodes of the coating's start where readings may tell of it: 3-point Gauss-Hermite, carrying a
/// share of its variance; the rest stays normal. Of the wall when new two nodes, the same.
inline constexpr std::array<double, 3> start_nodes{-1.7320508075688772, 0, 1.7320508075688772};
inline constexpr std::array<double, 3> start_weights{1.0 / 6, 2.0 / 3, 1.0 / 6};
inline constexpr double start_node_share = 0.75;
inline constexpr std::array<double, 2> wall_nodes{-1, 1};
inline constexpr double wall_node_share = 0.75;
inline constexpr double may_be_gone = 0.02;   ///< readings tell of steel from this chance on
inline constexpr double zinc_weight = 0.06;   ///< neighbouring nodes of a coating are put together
inline constexpr double weight_least = 5e-4;  ///< of the largest; smaller ways are dropped

// Times.
inline constexpr double longest_years = 300;  ///< beyond: no upper bound
inline constexpr double chance_tolerance = 3e-4;
/// Of a chance so near a quantile's level, in sds, the years are read off between its neighbours,
/// where a straight line and a bent one agree on them.
inline constexpr double sds_near = 0.01;
inline constexpr double years_near = 0.005;
inline constexpr double years_tolerance = 5e-3;
inline constexpr double open_words_chance = 0.5;  ///< "likely rusts from inside too"

}  // namespace kneerail::forecast::wall_constant
