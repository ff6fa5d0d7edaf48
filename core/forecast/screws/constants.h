#pragma once

// Every number of the set-screw model that is a constant of the program, in one place. Chosen on
// invented portfolios with known truth.

#include <array>

namespace kneerail::forecast::screw_constant {

// As-left torque: (as-left value) x (1 + as_left_sd z), z on equal nodes.
inline constexpr double as_left_sd = 0.06;
inline constexpr std::array<double, 5> as_left_nodes{-2.2, -1.1, 0, 1.1, 2.2};
/// Width between two of those nodes, in as_left_sd: a sum of five normals of it is smooth.
inline constexpr double between_nodes = 0.385;

// Errors of a reading, share of the torque; a torque below least_torque_nm counts as that there.
inline constexpr double click_error = 0.05;  ///< a wrench's 4 % (ISO 6789-1) and its setting
inline constexpr double moved_error = 0.085;
inline constexpr double least_torque_nm = 4;

// Anything-can-happen part of each reading.
inline constexpr double odd_share = 0.002;
inline constexpr double odd_click = 0.5;
inline constexpr double odd_free = 0.1;
/// Errors of a reading it has to be under the minimum to be believed whatever the model says.
inline constexpr double clearly_under = 2;

inline constexpr std::size_t usual_settings = 4;  ///< commonest click values kept
inline constexpr int least_days = 1;              ///< a reading sooner after its restart is unused

// Fit.
inline constexpr int nodes = 31;
inline constexpr int passes = 10;
inline constexpr double ln_loss_mean = 1.0986122886681098;  ///< ln 3, N m per tenfold of days
inline constexpr double ln_loss_sd = 0.5;
inline constexpr double tau_mean = 0.5;
inline constexpr double ln_tau_sd = 0.4;
inline constexpr double tau_least = 0.05;
inline constexpr double tau_most = 2;
inline constexpr double wear_mean = 0.05;  ///< ln a, per strike
inline constexpr double wear_sd = 0.05;
inline constexpr double wear_step = 0.002;
inline constexpr double wear_least = -0.5;
inline constexpr double wear_most = 1;
inline constexpr double wear_known_sd = 0.02;
inline constexpr double widening = 1.5;  ///< of tau^2 in what is said of a fitting

// What is said.
inline constexpr double longest_years_said = 30;  ///< a median life beyond is not given
inline constexpr double longest_retorque_years = 100;

}  // namespace kneerail::forecast::screw_constant
