#pragma once

// Records and stamps in, table rows out. Two ways to the same rows: the incremental fold takes one
// record at a time in any order of arrival; the naive fold takes them all, sorts them and applies
// the rules as they are written, and judges the other.

#include <span>
#include <vector>

#include "core/base/id.h"
#include "core/fold/tables.h"
#include "core/records/record.h"

namespace kneerail::fold {

/// Changes the rows that one more record changes. A record that is in already changes nothing; one
/// whose stamp is new since then changes what depends on the stamp. Records may arrive in any
/// order.
void add(const PlacedRecord& placed, TableStore& store);

/// All rows of all records, by sorting everything first. Slow and obvious.
void add_all_naively(std::span<const PlacedRecord> placed, TableStore& store);

/// The components whose forecast may have changed since the set was last emptied: filled by add()
/// when one is given.
struct Touched {
  std::vector<Uuid> components;
};

}  // namespace kneerail::fold
