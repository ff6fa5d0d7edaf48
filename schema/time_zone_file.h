#pragma once

// Time zones as the operating system keeps them: TZif files (RFC 8536) in a folder, named as the
// IANA database names them ("Europe/Lisbon").

#include <cstdint>
#include <filesystem>
#include <span>
#include <string_view>

#include "core/base/time_zone.h"

namespace kneerail {

/// Where Debian's package tzdata puts them.
inline constexpr std::string_view system_zones = "/usr/share/zoneinfo";

/// The bytes of a file, versions 1 to 4. Of version 1 only the table is there, no rule for later
/// times. Files that count leap seconds ("right/...") are refused: our instants do not.
/// Errors: corrupt, with the reason in words that go on "the file ...".
Result<TimeZone> time_zone_from_tzif(std::span<const std::uint8_t> bytes);

/// The zone of that name; "UTC" and "Etc/UTC" need no file. Errors: not_found for a name that is
/// none or has no file, io, corrupt; as a sentence without an end, for the caller to say what
/// becomes of the days.
Result<TimeZone> read_time_zone(std::string_view name,
                                const std::filesystem::path& folder = system_zones);

}  // namespace kneerail
