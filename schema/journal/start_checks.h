#pragma once

// What is looked at before a register is trusted. SQLite drops a damaged write-ahead log without a
// word and its own check misses most damage to content; the second copy and the digests find what
// it does not.

#include <cstdint>
#include <optional>
#include <string>

#include "schema/store/state.h"

namespace kneerail {

/// What SQLite's quick_check finds, in its words; nothing when the file is well-formed.
std::optional<std::string> damage_of_file(Database& database);
/// Whether the digests of all rows that the hub has not acknowledged fit; says which does not.
std::optional<std::string> damage_of_unsent(Database& database, const Journal& journal);

/// Opens the second copy; one whose head is damaged is set aside and made anew. Errors: io.
Result<> open_copy(RegisterState& state);
/// Records that the second copy holds beyond the journal's heads are appended again and folded, and
/// the drafts are what the second copy says. Errors: io.
Result<> compare_with_copy(RegisterState& state);
/// The second copy beside the journal's unsent rows of this device.
struct CopyCheck {
  std::int64_t lacking = 0;  ///< unsent records that are not in the copy
  std::int64_t damaged = 0;  ///< frames that cannot be read
  std::int64_t beyond = 0;   ///< records in the copy behind the last one of the journal's chain
};
/// Errors: io, corrupt.
Result<CopyCheck> check_copy(SecondCopy& copy, Database& database, Journal& journal);
/// Where the second copy lacks a record or is damaged: again, from the journal's unsent rows and
/// the drafts; and none where nothing is unsent. Errors: io.
Result<> mend_copy(RegisterState& state);

/// A name beside `path` that is free: path.damaged-1, -2 ...
std::filesystem::path free_name_beside(Files& files, const std::filesystem::path& path);

}  // namespace kneerail
