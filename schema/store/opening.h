#pragma once

// Opening a register folder: who this device is, whether the file is a register and this program
// may write it, and what the start checks find and mend.

#include "schema/store/state.h"

namespace kneerail {

/// Errors: as Register::open.
Result<> open_register(RegisterState& state, Mode mode);

}  // namespace kneerail
