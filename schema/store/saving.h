#pragma once

// The way into the register: entries become records with an id, a clock and a place in the chain;
// their bytes go to the second copy and are synced; then one transaction writes the journal rows
// and the table rows they change.

#include <optional>
#include <span>
#include <vector>

#include "schema/store/state.h"

namespace kneerail {

/// Saves all or none. `ended`: the draft that these entries close, in the same transaction.
/// Errors: as Register::save.
Result<std::vector<Uuid>> save_entries(RegisterState& state, std::span<const Entry> entries,
                                       const Draft* ended);
Result<> save_draft_touch(RegisterState& state, const Draft& draft);
/// The entries a draft closes into: the record, and with a finding on a component the grade that
/// goes with it. At the next start a finding of grade 5 becomes a hazard.
enum class Closing { by_person, at_start };
Result<std::vector<Entry>> entries_of(RegisterState& state, const Draft& draft, Closing closing);

Uuid mint_id(RegisterState& state);

/// Records that other copies of this device's journal held, appended again and folded, without a
/// second copy of their own. Used at the start.
Result<> append_again(RegisterState& state, std::span<const CopyFrame> records);

}  // namespace kneerail
