#pragma once

// Codes that more than one kind or type uses, with their words in the same order.

#include <cstdint>
#include <string_view>

namespace kneerail {

enum class Exposure { unknown, open, sheltered, spray, immersed_at_times, de_icing_salt };
inline constexpr std::string_view exposure_words[] = {
    "unknown", "open", "sheltered", "spray", "immersed at times", "de-icing salt"};  // from 0

enum class LifeState { in_service = 1, retired };
inline constexpr std::string_view life_state_words[] = {"in service", "retired"};

enum class Material { steel = 1, cast_iron, aluminium, stainless_steel };
inline constexpr std::string_view material_words[] = {"steel", "cast iron", "aluminium",
                                                      "stainless steel"};

/// Where a reading is from that was seen earlier than it was typed.
enum class CopiedFrom { paper = 1, gauge_memory, memory, anothers_word };
inline constexpr std::string_view copied_from_words[] = {"paper", "the gauge's memory", "memory",
                                                         "another's word"};

enum class TypedIn { us_units = 1 };
inline constexpr std::string_view typed_in_words[] = {"US units"};

enum class SamePart { not_known = 1, same, from_another_place };
inline constexpr std::string_view same_part_words[] = {"not known", "same", "from another place"};

/// What holds people back from a gap.
enum class ClosedByWhat { boards = 1, mesh, locked_gate, guard, sign_only, other };
inline constexpr std::string_view closed_by_words[] = {"boards", "mesh",      "locked gate",
                                                       "guard",  "sign only", "other"};

}  // namespace kneerail
