#pragma once

// Where a part's sign stands on the drawing and its cell lies under the finger.

#include "schema/store/run_store.h"

namespace kneerail::elevation {

/// A place on the run in its own millimetres; up from the deck, negative below it.
struct RunPoint {
  double along_mm = 0;
  double up_mm = 0;
};

/// In the ground, so far below the deck on the glass and so far beside its post: there it hides
/// neither the plate nor the bolts, and a drawing that ends right under the ground shows all of it.
inline constexpr double in_ground_mm = 2.5;
inline constexpr double beside_post_mm = 5.6;

/// Fittings, welds, fixings, cut edges: what is a place and not a length.
bool is_joint(const SheetPart& part);

/// A base fixing right under another joint of its post: it has no room of its own above the deck,
/// so its sign stands in the ground.
bool stands_in_ground(const SheetPart& fixing, double lowest_other_joint_mm);
bool stands_in_ground(const RunSheet& sheet, const SheetPart& part);

/// Chainage of a part's middle, mm. An end cap closes the outer end of its run, on whichever side
/// of the post it was put down.
double along_of(const RunSheet& sheet, const SheetPart& part);

/// An end cap's sign stands so far out from its post on the glass, beside the sign of the fitting
/// that it closes.
inline constexpr double cap_out_mm = 6.2;

/// The middle of a part's sign at a scale.
RunPoint part_place(const RunSheet& sheet, int part, double denominator);

}  // namespace kneerail::elevation
