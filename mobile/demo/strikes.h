#pragma once

#include <vector>

#include "mobile/demo/making.h"

namespace kneerail::demo {

/// A seasonal run that is down.
struct Strike {
  int run = 0;
  Uuid id;
  Uuid closure;            ///< the locked gate
  std::vector<int> parts;  ///< what was taken down
};

/// Takes the rails and fittings of a seasonal run down and closes the run with a locked gate.
Strike strike(Making& making, int run, Date day);
/// Someone looks at the gate in the middle of the winter.
void look_at_closure(Making& making, const Strike& strike, Date day);

enum class Reopening {
  in_order,
  early,              ///< opened before one screw was signed; opened again after it
  a_part_from_store,  ///< one fitting came back from another place
};

/// Puts it all back: each part back, each screw signed, each bay pushed, then a person opens it.
void re_erect(Making& making, const Strike& strike, Date day, Reopening how);

}  // namespace kneerail::demo
