#pragma once

namespace kneerail {

/// What of Qt and of the machine's memory has to be said before there is an application or a second
/// thread: a tablet has 2 GB and other programs, and the first frame is waited for.
void before_start();

}  // namespace kneerail
