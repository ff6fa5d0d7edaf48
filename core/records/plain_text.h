#pragma once

// What text a record may hold: UTF-8 in normal form C, no control characters but line feed. Of the
// normal form only what is plainly wrong is looked for: an ASCII letter followed by one of the
// common combining marks for which a single character exists, and the three signs that always turn
// into a letter (ohm, kelvin, angstrom). Rarer sequences pass.

#include <cstddef>
#include <string>
#include <string_view>

namespace kneerail {

/// What is wrong, in words that go on "the note holds ..."; empty when nothing is.
std::string text_fault(std::string_view text);
/// Unicode characters (code points) of well-formed UTF-8.
std::size_t characters(std::string_view text);

}  // namespace kneerail
