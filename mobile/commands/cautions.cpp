#include "mobile/commands/cautions.h"

namespace kneerail::commands {

std::string_view cautions() {
  return R"(A guard-rail holds people back from a fall. Kneerail supports a competent
person; it does not certify. Projections are estimates with stated
uncertainty; structural results are screening checks; loads, heights, torque
values and intervals follow local codes, the fitting maker's instructions and
a licensed engineer's judgement. Never wait for a projection to close off a
rail that moves. Torque values are the register's, set by the owner; the
demo's are invented.
)";
}

std::string_view model_in_a_sentence() {
  return R"(Each part starts with a coating thickness and loses it at its own positive
rate; parts in the same run, zone and site lend each other knowledge, and
every day's gauge has its own offset shared by all it measured. A coating's
date is that of the average of the places measured; first rust comes earlier.
)";
}

}  // namespace kneerail::commands
