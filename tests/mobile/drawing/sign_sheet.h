#pragma once

// Every sign of the drawings on one sheet: grades, fittings, marks, tubes.

#include "mobile/elevation/shapes.h"
#include "mobile/theme/palette.h"

namespace kneerail::tests {

inline constexpr int sign_sheet_width_px = 1280;
inline constexpr int sign_sheet_height_px = 560;

elevation::ShapeList sign_sheet(theme::Theme theme);

}  // namespace kneerail::tests
