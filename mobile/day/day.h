#pragma once

// A day on the rail: from the sites to post 118 of the sea wall, a grade, five coating readings and
// the torque of its screws at one part, the wall of its tube, a split that cannot wait, the
// years that are left to it, and the seal. In the middle of the readings the machine goes off.

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "mobile/day/hand.h"
#include "mobile/screens/rooms.h"
#include "mobile/theme/tokens.h"

namespace kneerail::day {

/// One reading, as it was entered.
struct Entered {
  int kind = 0;  ///< of the record
  Uuid part;     ///< the gauge, of its zero; the visit, of its seal; of a finding, what it is on
  std::string title;  ///< "118 · top-rail tee"
  std::vector<std::int64_t>
      values;  ///< the grade; the thicknesses, µm; a wall, 0.1 mm; what a zero read; else nothing
};

/// What the day touches.
struct Screen {
  Rooms& rooms;
  Hand& hand;
  Tokens& tokens;
};

/// As far as the third reading of a set. Errors: not_found (something is not on the screen), io.
Result<std::vector<Entered>> forenoon(const Screen& screen);

/// The window was opened again: the half-done set is there, the rest is entered. Errors: those of
/// forenoon; not_found, too, where a reading of the forenoon is missing.
Result<std::vector<Entered>> afternoon(const Screen& screen);

}  // namespace kneerail::day
