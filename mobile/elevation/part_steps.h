#pragma once

// From part to part by the arrow keys.

#include "schema/store/run_store.h"

namespace kneerail::elevation {

enum class Step { left, right, up, down };

/// The part an arrow key leads to from `part`: the nearest in that direction, near ones in line
/// before near ones aside, among two posts to either side. `part` itself where there is none.
int part_beside(const RunSheet& sheet, int part, Step step);

}  // namespace kneerail::elevation
