#pragma once

// Units of the rules of the United States in those of the register. Exact by definition: 1 in =
// 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s2.

namespace kneerail::structure {

inline constexpr double mm_per_inch = 25.4;
inline constexpr double m_per_foot = 12 * mm_per_inch / 1000;
inline constexpr double newtons_per_pound_force = 0.45359237 * 9.80665;
inline constexpr double newton_metres_per_pound_force_foot = newtons_per_pound_force * m_per_foot;

}  // namespace kneerail::structure
