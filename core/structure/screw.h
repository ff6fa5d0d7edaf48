#pragma once

// Set screws: torque and force. A torque reading is not a force reading: at one torque the force
// varies by a factor of two with the state of the thread, so loss is reported as torque.

#include <optional>
#include <string_view>

namespace kneerail::structure {

struct ScrewTorque {
  double torque_nm;
  double nut_factor;  ///< K: 0.14 to 0.3
  double thread_mm;   ///< outer diameter
};
/// Force along a screw, kN: F = T / (K d).
double screw_force_kn(const ScrewTorque& screw);

struct Embedding {
  double embedding_um;
  double screw_um_per_kn;  ///< give of the screw
  double part_um_per_kn;   ///< give of what it holds
};
/// Force lost as rough faces settle into each other, kN: fZ / (dS + dP) (VDI 2230-1).
double embedding_loss_kn(const Embedding& embedding);

/// Test torque of a set screw of hardness class 45H, N m, by thread: M5 5, M6 8.5, M8 20, M10 40,
/// M12 65, M16 160, M20 310, M24 520. Nothing for another thread. A target above it must warn.
/// Source: ISO 898-5.
std::optional<double> test_torque_45h_nm(std::string_view thread);

}  // namespace kneerail::structure
