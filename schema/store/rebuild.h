#pragma once

// The tables made again from the journal: dropped, folded and indexed in one transaction, so that
// whoever reads meanwhile sees the old ones until the end.

#include <cstdint>
#include <functional>

#include "schema/store/state.h"

namespace kneerail {

/// Called with records done and all; false stops.
using Progress = std::function<bool(std::int64_t, std::int64_t)>;

struct Folding {
  std::int64_t records = 0;
  std::int64_t unreadable = 0;  ///< journal rows that are no records (damage); left out
};

/// Folds the whole journal, in order of arrival, into tables that are empty. Memory stays bounded.
/// Errors: cancelled, io.
Result<Folding> fold_journal(Journal& journal, SqlTables& empty_tables, const Progress& progress);

/// Errors: cancelled (the old tables stay), io.
Result<Folding> rebuild_tables(RegisterState& state, const Progress& progress);

}  // namespace kneerail
