#pragma once

// Every number of the coating model that is a constant of the program and not the owner's to set,
// in one place, so that "method and limits" can list them. Chosen on invented portfolios with known
// truth; those an owner can set stand in Settings.

#include <array>
#include <cstdint>

namespace kneerail::forecast::constant {

// Readings.
inline constexpr double slip_largest_mm = 0.3;      ///< smaller: a thickness may be typed in mm
inline constexpr double slip_smallest_um = 10;      ///< what the mm would be, lower end
inline constexpr double largest_coating_um = 300;   ///< no hot-dip coating is thicker
inline constexpr double smallest_nominal_um = 1;    ///< less is a slip of the unit
inline constexpr double largest_nominal_um = 1000;  ///< sprayed zinc at the most
inline constexpr double gone_below_um = 7;          ///< a gauge reads oxide here, not zinc
inline constexpr double not_gone_above_um = 25;     ///< after "gone", zinc again: a swap
inline constexpr double replicate_sd_um = 3;        ///< where nothing tells
inline constexpr double area_sd_um = 3;             ///< where nothing tells
inline constexpr double area_sd_least_um = 0.7;
inline constexpr double replicate_sd_most_um = 15;  ///< an estimate over this is a mix-up
inline constexpr double area_gap_most_um = 30;      ///< two areas further apart are not like
/// Mean range of 3, 4, 5 standard normal values (tables of control charts, d2).
inline constexpr std::array<double, 3> mean_range{1.693, 2.059, 2.326};

inline constexpr double path_exponent_least = 0.5;

/// A rate outside is no rate of a metal and not taken; one outside every class (ISO 9223, C1 to CX,
/// as a mean over 20 years) is taken and asked about. um a year.
inline constexpr double rate_least = 1e-3;
inline constexpr double rate_most = 1e4;
inline constexpr double rate_of_c1_least = 0.03;
inline constexpr double rate_of_class_least = 0.07;  ///< C1's upper end; less is asked about
inline constexpr double rate_of_class_most = 30;
/// A rate more times outside the class beside it is a slip, and the middle of the class is taken.
inline constexpr double rate_off_class_most = 10;
inline constexpr double usual_mean_of_first = 0.74;  ///< mean of 20 years over the first year's

// A session in a wrong unit.
inline constexpr int unit_parts_least = 6;
inline constexpr double unit_distance_ln = 0.45;
inline constexpr double unit_spread_ln = 0.6;
inline constexpr double unit_expected_share = 0.4;  ///< of nominal: thinner tells no unit
inline constexpr std::array<double, 4> unit_factors{1 / 25.4, 25.4, 1e-3, 1 / 25400.0};

// Start of a coating.
inline constexpr double nominal_tube_um = 55;
inline constexpr double nominal_fitting_um = 70;
inline constexpr double nominal_base_fixing_um = 85;
inline constexpr double unknown_start_ratio = 0.8;  ///< mean over nominal, age not known
inline constexpr double unknown_start_sd = 0.30;    ///< over nominal
inline constexpr double touched_up_start_um = 110;
inline constexpr double touched_up_sd_um = 20;

// Stage 1: priors of shared effects, ln units of rate.
inline constexpr double overall_sd = 0.30;
inline constexpr double kind_sd = 0.20;
inline constexpr double spray_mean = 0.6;
inline constexpr double spray_sd = 0.30;
inline constexpr double sheltered_mean = -0.3;
inline constexpr double sheltered_sd = 0.30;
inline constexpr double start_ratio_mean = 1.12;
inline constexpr double start_ratio_sd = 0.14;
inline constexpr double start_ratio_first = 1.1;  ///< where the passes begin
inline constexpr double foil_sd_um = 0.9;
inline constexpr double foil_off_most_um =
    10;  ///< or that share of the foil: further off is a slip
inline constexpr double foil_off_share = 0.3;
inline constexpr int site_sessions_most = 600;  ///< more are taken together by month, by year
inline constexpr double lone_session_sd_most_um = 1.0;
inline constexpr double gain_thickness_most_um = 200;

/// One standard deviation estimated from the portfolio: v <- (sum + weight * first^2)/(n + weight),
/// kept within least and most.
struct Spread {
  double first;
  double weight;
  double least;
  double most;
};
inline constexpr double no_cap = 1e9;
inline constexpr Spread rate_spread{0.33, 4, 0.03, no_cap};   ///< of parts in a group, of the mean
inline constexpr Spread start_spread{0.14, 4, 0.03, no_cap};  ///< over nominal
inline constexpr Spread offset_spread{1.5, 3, 0.2, 2};        ///< um
/// um a root of a year, of one gauge at one site: how its offset walks.
inline constexpr Spread drift_spread{0.2, 3, 0.01, 5};
inline constexpr Spread gain_spread{0.02, 10, 0.002, 0.01};
/// Caps keep rates near their class: a level trend of readings no longer makes lives of centuries.
inline constexpr Spread site_spread{0.4, 3, 0.02, 0.5};
inline constexpr Spread zone_spread{0.3, 3, 0.02, 0.45};
inline constexpr Spread run_spread{0.15, 3, 0.01, 0.25};
inline constexpr Spread batch_spread{0.08, 3, 0.01, no_cap};
inline constexpr Spread run_kind_spread{0.05, 10, 0.01, no_cap};  ///< of a kind group in a batch
inline constexpr Spread habit_spread{0.5, 3, 0.05, no_cap};       ///< um, of an inspector
inline constexpr Spread rest_spread{3, 0, 0.3, no_cap};           ///< um, of a visit mean
inline constexpr Spread spots_spread{0.1, 0, 0.002, 0.5};  ///< of spots, over the thickness lost
/// First spreads of site and zone stand for classes whose rate is known to this sd, ln units.
inline constexpr double class_ln_sd = 0.45;
inline constexpr double class_ratio_least = 0.1;
inline constexpr double class_ratio_most = 3;
inline constexpr double batch_tail = 3;  ///< degrees of freedom of batches
inline constexpr double batch_weight_most = 1.2;
inline constexpr int inspectors_least = 2;
inline constexpr int inspectors_most = 40;

inline constexpr double odd_square = 6.25;  ///< squared residual where weights fall under 1
inline constexpr double weight_least = 0.02;
inline constexpr double offset_tail = 5;    ///< degrees of freedom of session offsets
inline constexpr double gone_floor = 1e-4;  ///< a gone reading can always be a mistake
inline constexpr double gone_precision_least = 1e-7;
inline constexpr int many_parts = 20000;
inline constexpr int passes_few_parts = 30;
inline constexpr int passes_many_parts = 10;
inline constexpr int passes_after_swaps = 6;
inline constexpr double settled_move_ln = 0.02;

// A gauge on rust reads rust.
inline constexpr std::array<double, 6> rust_by_grade{0, 0, 0, 0.01, 0.98, 0.98};
inline constexpr double rust_said = 0.98;  ///< the surface was said to be rust
inline constexpr double rust_chance_least = 0.002;
inline constexpr double rust_tie_from = 0.30;   ///< grades tell of the thickness from here ...
inline constexpr double rust_tie_range = 0.15;  ///< ... fully from that much more
inline constexpr double rust_tie_weight = 30;   ///< readings that the tie is shrunk by
inline constexpr double rust_age_band_years = 5;
inline constexpr double rust_below_um = 17;  ///< zinc under rust is thinner
inline constexpr double rust_sd_um = 8;
inline constexpr double rust_scale_um = 12;  ///< of what a gauge shows on rust
inline constexpr double rust_share = 0.8;    ///< of that; the rest anything up to:
inline constexpr double rust_anything_um = 150;
inline constexpr int rust_visits_most = 10;
inline constexpr double rust_first_chance = 0.5;  ///< taken as over rust before the first fit
inline constexpr int rust_rounds = 3;
inline constexpr int rust_round_passes = 4;

// Stage 2.
inline constexpr double touched_up_ln_rate = 0.2;
inline constexpr double touched_up_ln_rate_sd = 0.7;
inline constexpr double paint_gives_way_chance = 0.4;
inline constexpr double paint_gives_way_factor = 3;  ///< of the loss ahead
/// Spots that scatter more than this do not stand for their part.
inline constexpr double spots_stand_um2 = 4;
inline constexpr double spots_fixed = 0.49;            ///< of the excess, added to the variance
inline constexpr double spots_of_loss = 4.0 / 2500.0;  ///< of the excess, times the loss squared
inline constexpr double rate_variance_widening = 1.8;
inline constexpr double error_variance_widening = 1.2;
inline constexpr double rate_tail = 8;     ///< degrees of freedom of the prior of ln rate
inline constexpr double future_sd = 0.15;  ///< of the future rate against the past one
/// Of one year's loss at a site, over the usual: the weather. Years average out.
inline constexpr double weather_sd = 0.27;
inline constexpr int mode_grid = 18;
inline constexpr double mode_grid_reach = 6;  ///< prior sds either side
inline constexpr int mode_steps = 5;
inline constexpr int node_count = 21;
inline constexpr double node_reach = 2.5;
inline constexpr double node_scale = 0.9;
inline constexpr double node_weight_least = 1e-5;
inline constexpr double longest_years = 300;        ///< a life beyond it has no upper bound
inline constexpr double earliest_years = 60;        ///< before the first reading, start unknown
inline constexpr double quantile_tolerance = 1e-4;  ///< relative, in effective age

// Words.
inline constexpr double swap_rise_um = 5;
inline constexpr double swap_chance = 0.01;
inline constexpr double swap_odds = 3;
inline constexpr double odd_reading_weight = 0.3;
inline constexpr double odd_gone_chance = 0.1;
inline constexpr double gauge_words_um = 3;
inline constexpr double gauge_words_sds = 3;
inline constexpr double gauge_words_at_um = 50;
inline constexpr double likely_faster = 0.90;
inline constexpr double perhaps_faster = 0.70;
inline constexpr double wrong_class_ratio = 2;
inline constexpr double wrong_class_site_ratio = 3;
inline constexpr double prior_is_middle_tolerance = 0.01;

// A start nobody knows.
inline constexpr std::int32_t start_days_before = 30;  ///< of the first look, at least
inline constexpr std::array<double, 5> start_levels{0.1, 0.3, 0.5, 0.7, 0.9};
inline constexpr std::array<double, 4> start_years_before{20, 10, 5, 2};

// Condition grades: priors in ln units, of speeds per year.
inline constexpr double grade_speed_mean = 0.12;  ///< 1/yr, of leaving grade 1
inline constexpr double grade_speed_ln_sd = 0.7;
inline constexpr double grade_kind_sd = 0.2;
inline constexpr double grade_material_sd = 0.5;
inline constexpr double grade_exposure_sd = 0.3;
inline constexpr double grade_ratio_sd = 0.5;  ///< of ln q2/q1, q3/q1, q4/q1
inline constexpr double grade_ratio_most_ln = 2.5;
inline constexpr double grade_tau_mean = 0.4;
inline constexpr double grade_tau_ln_sd = 0.4;
inline constexpr double grade_tau_first = 0.5;
inline constexpr double grade_tau_least = 0.05;
inline constexpr double grade_tau_most = 1.5;
inline constexpr double grade_step_ln = 0.02;      ///< of forward differences
inline constexpr double grade_error_first = 0.04;  ///< one grade too many, too few
inline constexpr double grade_error_weight = 100;  ///< looks that prior is worth
inline constexpr double grade_error_most = 0.4;
inline constexpr double grade_further_off = 0.001;  ///< each grade two or more away
inline constexpr double grade_repeated_two_above = 0.3;
inline constexpr double grade_repeated_beyond = 0.1;
inline constexpr double grade_unrecorded_per_year = 0.003;  ///< replaced and not written down
inline constexpr Spread grade_place_spread{0.3, 3, 0.02, no_cap};  ///< of sites, of zones
inline constexpr int grade_nodes = 9;
inline constexpr int grade_passes = 8;

// Back-dated forecast.
inline constexpr double cut_share = 0.6;
inline constexpr int refit_passes = 4;
inline constexpr int scale_steps = 21;
inline constexpr double scale_reach_ln = 0.9;
inline constexpr double scale_sd_ln = 0.20;
inline constexpr int scale_readings_least = 200;
inline constexpr double sessions_worth = 6;
inline constexpr int judged_readings_least = 100;
inline constexpr int judged_sessions_least = 6;
inline constexpr double inside_80_low = 0.65;
inline constexpr double inside_80_high = 0.92;

}  // namespace kneerail::forecast::constant
