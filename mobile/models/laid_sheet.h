#pragma once

// A run that is only laid out, as the drawings take it: no visit, no grade, and places that lead
// back from what is touched to what was laid out.

#include <vector>

#include "core/layout/laid_run.h"
#include "schema/store/run_store.h"

namespace kneerail {

struct LaidSheet {
  RunSheet sheet;
  std::vector<int> laid;  ///< of each part of the sheet its place in the laid run
};

/// `run`: its identifier, from which those of its things are made; the same run gives the same.
LaidSheet sheet_of(const layout::LaidRun& laid, const Uuid& run, std::int64_t height_mm);

}  // namespace kneerail
