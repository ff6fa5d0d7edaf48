#pragma once

// Whether the register holds what was entered, asked of a register that was opened again.

#include <string>

#include "core/base/result.h"
#include "mobile/day/day.h"
#include "schema/store/register.h"

namespace kneerail::day {

/// Whether the newest reading of that kind and part that counts is this one; of coatings, one of
/// the newest two, of walls one of the newest four; of a seal, whether it closes the visit;
/// of a finding, whether one that could not wait was made safe there. Errors:
/// io, corrupt.
Result<bool> is_there(Register& store, const Entered& entered);

/// "grade 3", "coating 74, 71 µm".
std::string words(const Entered& entered);

}  // namespace kneerail::day
