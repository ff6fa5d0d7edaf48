#pragma once

// Identifiers of what is brought in from files. Each is made from what the file itself calls the
// thing, so that the same file brought in twice makes nothing twice, on this machine or another.

#include <initializer_list>
#include <optional>
#include <string_view>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/records/entities.h"

namespace kneerail::exchange {

/// Version 7 in shape (RFC 9562, 5.7): noon of the day, then bits of the SHA-256 of the word and
/// the references, each with its length. A thing that has no day of its own takes Date{}.
Uuid derived_id(std::string_view what, std::initializer_list<std::string_view> references,
                Date day = {});

/// An identifier that already is a register's own is kept; any other is derived from.
Uuid id_of_reference(std::string_view what, std::string_view reference);

/// Gauges and wrenches are named apart, so one name may be one of each. Zero: none named.
Uuid instrument_id(InstrumentKind kind, std::string_view reference);

/// The id of a thing of the register by the name its file gives it; `instrument` where it is one
/// of a kind that is said.
Uuid id_of_thing(std::string_view type_name, std::optional<InstrumentKind> instrument,
                 std::string_view reference);

}  // namespace kneerail::exchange
