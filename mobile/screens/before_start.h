#pragma once

#include <future>

namespace kneerail {

/// What of Qt and of the machine's memory has to be said before there is an application or a second
/// thread: a tablet has 2 GB and other programs, and the first frame is waited for.
void before_start();

/// Loads the graphics driver on a thread of its own, where there is an application on X11: a third
/// of the time that an empty window takes. No window may be made before it is there. Elsewhere
/// there is nothing to wait for: the first window loads its driver itself.
std::future<void> load_graphics();

/// Behind the first frame: what the screens no longer need goes back to the machine.
void give_memory_back();

}  // namespace kneerail
