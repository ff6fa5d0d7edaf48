#pragma once

// The slips that people make when they fill a sheet, told apart from each other: a decimal comma,
// the day before the month, millimetres for micrometres, a point forgotten. A slip is proposed,
// never corrected.

#include <cstdint>
#include <string>
#include <string_view>

#include "schema/exchange/sheet.h"

namespace kneerail::exchange {

/// Why a text is no number of that measure; empty when it is one within the limits.
std::string number_fault(std::string_view text, const Measure& measure);
/// Why a text is no calendar day.
std::string date_fault(std::string_view text);
/// "Was 3.2 meant?", where ten times less is a likelier value; else empty.
std::string tenth_meant(std::string_view text, const Measure& measure);
/// Why a field count does not fit the header.
std::string width_fault(std::size_t fields, std::size_t header, bool numbers_split);

}  // namespace kneerail::exchange
