#pragma once

// A run made by rule, for tests and benchmarks of the drawings: posts at equal distances, a base
// flange, crosses and a top tee on each, rails between, a sleeve now and then. The same numbers
// give the same run, identifiers and all.

#include <cstdint>

#include "schema/store/run_store.h"

namespace kneerail::tests {

struct MadeRun {
  int posts = 151;
  int rails = 2;
  std::int64_t bay_mm = 1500;
  std::int64_t height_mm = 1100;
  std::int64_t rail_spacing_mm = 550;
  int first_label = 1;         ///< number on the first post
  int sleeve_every_bays = 31;  ///< 0: none
  bool tubes = true;           ///< post tubes and rails are parts too
  bool welded = false;         ///< a welded, painted section in each bay
};

/// Posts with even places are seen and graded now, the next are open with last visit's grades;
/// every 13th is skipped and every 17th struck. One finding on post 3, one hazard in bay 5.
RunSheet made_run(const MadeRun& rule = {});

/// 620 posts and 2,500 fittings: the run that panning is measured on.
RunSheet long_run();

/// A run with at least this many parts.
RunSheet run_of_parts(int parts);

}  // namespace kneerail::tests
