#pragma once

// Text to number and back, the same digits in every locale.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace kneerail {

/// A plain decimal number ("-3.25", "4e-3"), whole text used up; nothing for anything else, a
/// decimal comma included.
std::optional<double> double_from_text(std::string_view text);
std::optional<std::int64_t> int_from_text(std::string_view text);

/// `value` × 10^`digits` where that is a whole number ("84.1", 1 -> 841): the unit of a record,
/// with nothing rounded away. Nothing when the text is no plain decimal number, is finer than the
/// unit or does not fit in 53 bits.
std::optional<std::int64_t> scaled_from_text(std::string_view text, int digits);
/// `value` / 10^`digits` as text with just the digits it needs: 841, 1 -> "84.1"; 840, 1 -> "84".
std::string scaled_to_text(std::int64_t value, int digits);

/// With a fixed count of decimals; "inf" and "-inf" for the unbounded.
std::string fixed(double value, int decimals);
/// The shortest text that reads back as the same double.
std::string shortest(double value);

std::string_view trimmed(std::string_view text);
/// Well-formed UTF-8 (RFC 3629): no overlong forms, no surrogates, nothing past U+10FFFF.
bool is_utf8(std::string_view bytes);

}  // namespace kneerail
