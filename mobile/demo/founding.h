#pragma once

#include "mobile/demo/making.h"

namespace kneerail::demo {

/// Writes the organisation with its rule set, people, instruments and types, then each site with
/// its zones, runs, posts, bays and parts. Fills in the identifiers of the plan.
void found(Making& making);

}  // namespace kneerail::demo
