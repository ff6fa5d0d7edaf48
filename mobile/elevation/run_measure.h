#pragma once

// What a drawing's scale is chosen by.

#include "schema/store/run_store.h"

namespace kneerail::elevation {

/// The least distance of two rails above each other, mm; the run's height where it has one rail.
double least_rail_gap_mm(const RunSheet& sheet);

/// From a post to the next, the middle one of all bays by length, mm; 0 without a bay.
double usual_bay_mm(const RunSheet& sheet);

}  // namespace kneerail::elevation
