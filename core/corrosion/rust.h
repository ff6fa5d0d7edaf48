#pragma once

// How much rust a surface shows. ISO 4628-3 compares with pictures, of which each has an area; ASTM
// D610 sorts the area into bands. A picture's area is no edge of a band: the two are not converted
// into each other. Stains and dirt are not rust.

#include <optional>

namespace kneerail::corrosion {

struct AreaPct {
  double low;
  double high;  ///< the same as low but for Ri 5
};
/// Rusted area of the reference picture Ri 0 to Ri 5, %: 0, 0.05, 0.5, 1, 8, and 40 to 50. Nothing
/// for another number. Source: ISO 4628-3:2016, Table 1; Ri 3 to Ri 5 from memory.
std::optional<AreaPct> ri_picture_area(int ri);

/// Grade 10 (at most 0.01 %) to 0 (above 50 %) of a rusted area. Upper edges are inclusive: 0.01,
/// 0.03, 0.1, 0.3, 1, 3, 10, 16, 33, 50 %. Nothing for what is no share of 100 %.
/// Source: ASTM D610-08, Table 1.
std::optional<int> d610_grade(double area_pct);

}  // namespace kneerail::corrosion
