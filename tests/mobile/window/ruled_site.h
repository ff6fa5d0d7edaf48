#pragma once

// The shown site with an owner who asks for heights and gaps, over water; its second bay is a gate.

#include "tests/mobile/window/shown_window.h"

namespace kneerail::tests {

void give_rules(ShownWindow& shown);

}  // namespace kneerail::tests
