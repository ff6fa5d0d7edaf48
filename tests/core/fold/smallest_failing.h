#pragma once

// A set of records that a property fails for, cut down for a person to read.

#include <functional>
#include <string>
#include <vector>

#include "core/records/record.h"

namespace kneerail::fold::test {

using Arrivals = std::vector<PlacedRecord>;

/// Leaves out records, then fields of bodies, while the property still fails. Nothing more can be
/// left out of what is returned, one thing at a time. `fails` holds for `arrived`.
Arrivals smallest_failing(Arrivals arrived, const std::function<bool(const Arrivals&)>& fails);

/// One line a record, in this order: what it says, and where and when it came.
std::string text_of(const Arrivals& arrived);

}  // namespace kneerail::fold::test
