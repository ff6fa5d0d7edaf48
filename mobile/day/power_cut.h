#pragma once

// Part of a day in a process of its own, which ends as a machine without power does: nothing that
// it has open is closed.

#include <functional>
#include <vector>

#include "core/base/result.h"
#include "mobile/day/day.h"

namespace kneerail::day {

/// Ends the process of that part of the day with what was entered; returns to nobody.
using Ends = std::function<void(const Result<std::vector<Entered>>&)>;

/// Runs `part` in a child and hands back what it ended with. Before any thread is started. Errors:
/// those it ended with, as not_found; not_found (it did not end so); io.
Result<std::vector<Entered>> until_power_cut(const std::function<void(const Ends&)>& part);

}  // namespace kneerail::day
