#pragma once

// A finding photographed, where the demo was handed something to draw with.

#include <string_view>

#include "mobile/demo/making.h"

namespace kneerail::demo {

struct Photographed {
  Uuid finding;
  int part = 0;  ///< place in the plan of what the camera is held at
  int what = 0;  ///< kind of the finding, as in kind 30
  int grade = 4;
  Uuid visit{};  ///< zero: none
  std::string_view caption{};
};

/// Gathers the photograph's record, after its bytes are kept. A circle marks the spot of what
/// cannot wait. Does nothing where nothing can draw.
void photograph(Making& making, const Photographed& finding);

}  // namespace kneerail::demo
