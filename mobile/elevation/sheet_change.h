#pragma once

// What of a run's drawing another sheet of the same run leaves as it was. While a run is walked its
// posts, bays and parts stay and only what is known of a few of them changes, so that nearly
// everything that was made from the sheet before is good for the next.

#include "mobile/elevation/run_shapes.h"
#include "schema/store/run_store.h"

namespace kneerail::elevation {

/// The same posts, bays and parts stand in the same places.
bool stand_alike(const RunSheet& before, const RunSheet& after);

/// Of sheets that stand alike: the same is drawn across the whole run, on whichever stretch it
/// falls: what was found, what is struck and what is closed off between two posts.
bool marked_alike(const RunSheet& before, const RunSheet& after);

/// Of sheets that stand and are marked alike: the posts and parts of a stretch are drawn the same.
bool drawn_alike(const RunSheet& before, const RunSheet& after, const Stretch& stretch);

/// Of sheets that stand and are marked alike: every post has its label and state.
bool seen_alike(const RunSheet& before, const RunSheet& after);

}  // namespace kneerail::elevation
