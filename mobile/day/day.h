#pragma once

// Part of a day on the rail: from the sites to post 118 of the sea wall, a grade, five coating
// readings and the torque of a screw, and the years that are left.

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
  Uuid part;
  std::string title;  ///< "118 · top-rail tee"
  std::vector<std::int64_t>
      values;  ///< the grade; the thicknesses, µm; nothing for a screw that held
};

/// Walks it. Errors: not_found (something is not on the screen), io.
Result<std::vector<Entered>> walk(Rooms& rooms, Hand& hand, Tokens& tokens);

}  // namespace kneerail::day
