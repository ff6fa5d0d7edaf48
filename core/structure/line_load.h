#pragma once

// The load along the top of a barrier that one rule of one country asks for. Which rule set holds
// is the owner's to say; nothing here picks one.

#include <optional>
#include <string_view>

namespace kneerail::structure {

enum class Occupancy {
  single_family_dwelling,
  light_access_to_600_mm,
  light_routes_in_industry,
  not_overcrowded,  ///< offices and the like
  fixed_seating,
  overcrowded
};
/// The words of the table for an occupancy, in either case of letters; nothing for other words.
std::optional<Occupancy> occupancy_from_text(std::string_view words);

/// Horizontal line load, kN/m, unfactored: 0.36, 0.22, 0.36, 0.74, 1.5, 3.0 (BS 6180:2011, Table
/// 2).
double bs6180_line_load_kn_per_m(Occupancy occupancy);

}  // namespace kneerail::structure
