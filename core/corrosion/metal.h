#pragma once

// The metals the standards of atmospheric corrosion give figures for.

namespace kneerail::corrosion {

enum class Metal { carbon_steel, zinc, copper, aluminium };

}  // namespace kneerail::corrosion
