#pragma once

#include <vector>

#include "core/base/world.h"
#include "core/records/record.h"

namespace kneerail::fold::test {

/// A set of records that have to do with each other: few subjects, people, tablets and visits, so
/// that bases, corrections, voids, settlings, lives, strikes and clocks meet. References may lead
/// to records that are not in the set. Stamps on some; the same seed, the same records.
std::vector<PlacedRecord> random_records(SplitMix64& random, int count);

}  // namespace kneerail::fold::test
