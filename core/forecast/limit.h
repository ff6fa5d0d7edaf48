#pragma once

// The limits a part's life is reckoned to, each with the code by which files and programs know it.

#include <string>

namespace kneerail::forecast {

enum class Limit {
  coating_exhausted,          ///< coating at or under the owner's thickness, else bare steel
  coating_first_maintenance,  ///< coating at or under the part's first-maintenance thickness
  wall_limit,                 ///< wall at or under the part's limit
  torque_minimum,             ///< a set screw under the lowest torque of its fitting
  grade_2,                    ///< true condition grade that or worse
  grade_3,
  grade_4,
  grade_5
};

/// Its code: the enumerator's name.
std::string to_text(Limit limit);

}  // namespace kneerail::forecast
