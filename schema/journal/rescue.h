#pragma once

// A damaged register is set aside, never deleted, and a new one is made of what can be read: the
// journal rows whose digests fit, and this device's unsent records from the second copy. What is
// missing then is counted, told, and kept in a setting of the new register.

#include <string>

#include "schema/store/state.h"

namespace kneerail {

/// Makes an empty register file with journal, tables and this device. Errors: io.
Result<std::unique_ptr<Database>> make_database(Files& files, const std::filesystem::path& path,
                                                const Uuid& device);

/// Closes the register's file, sets it aside where there is one, and leaves a new one open in its
/// place, its tables folded. `reason` is told in the note. Errors: io; what was there is untouched
/// then.
Result<> rescue(RegisterState& state, const std::string& reason);

/// A rescue that was cut short between its last two steps is completed. Errors: io.
Result<> complete_rescue(RegisterState& state);

/// Opens what lies at the register's place, and the statements over it. Errors: as Database::open.
Result<> attach_database(RegisterState& state, Database::Access access);

/// How many records rescues of this register could not bring back; verify tells it again.
inline constexpr const char* records_missing_setting = "records_missing";
/// 1: the second copy still has the numbers from before a rescue and is to be written anew.
inline constexpr const char* copy_numbers_setting = "copy_numbers_old";

inline constexpr std::int64_t register_application_id = 0x4b4e5231;  // "KNR1"

}  // namespace kneerail
