#pragma once

// Opens the window on a register.

#include "mobile/commands/commands.h"

namespace kneerail {

/// Starts Qt, opens the register and shows the screens until the window is closed. The exit code of
/// the program.
commands::Exit open_screens(const commands::OpenOptions& options, commands::Console& console);

}  // namespace kneerail
