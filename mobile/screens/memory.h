#pragma once

namespace kneerail {

/// What the screens no longer need goes back to the machine, which has 2 GB and other programs.
/// Once, before there is a second thread: each thread of its own would keep up to 64 MB of what it
/// ever used, and a screen's pictures and pages come and go on many. Without glibc nothing happens.
void give_memory_back();

}  // namespace kneerail
