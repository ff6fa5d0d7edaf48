#include "core/records/plain_text.h"

#include <cstdint>

#include "core/base/text.h"

namespace kneerail {
namespace {

struct Composes {
  std::uint32_t mark;
  std::string_view letters;  // ASCII letters that have a single character with this mark
};

// From the Unicode character database: canonical decompositions of U+00C0 to U+017F and U+1E00 to
// U+1EFF whose first character is an ASCII letter.
constexpr Composes composed[] = {
    {0x300, "AEIOUNWYaeiounwy"},                         // grave
    {0x301, "AEIOUYCLNRSZGKMPWaeiouyclnrszgkmpw"},       // acute
    {0x302, "AEIOUCGHJSWYZaeioucghjswyz"},               // circumflex
    {0x303, "ANOIUVYEanoiuvye"},                         // tilde
    {0x304, "AEIOUGYaeiougy"},                           // macron
    {0x306, "AEGIOUaegiou"},                             // breve
    {0x307, "CEGIZABDFHMNOPRSTWXYcegzabdfhmnoprstwxy"},  // dot above
    {0x308, "AEIOUYHWXaeiouyhwxt"},                      // diaeresis
    {0x30A, "AUauwy"},                                   // ring
    {0x30B, "OUou"},                                     // double acute
    {0x30C, "CDENRSTZAIOUGKHcdenrstzaiougkjh"},          // caron
    {0x327, "CGKLNRSTDEHcgklnrstdeh"},                   // cedilla
    {0x328, "AEIUOaeiuo"},                               // ogonek
};

bool composes(char letter, std::uint32_t mark) {
  for (const Composes& one : composed) {
    if (one.mark == mark) return one.letters.find(letter) != std::string_view::npos;
  }
  return false;
}

/// The code point at a place of well-formed UTF-8; moves the place behind it.
std::uint32_t next_code(std::string_view text, std::size_t& at) {
  const auto lead = static_cast<unsigned char>(text[at++]);
  if (lead < 0x80) return lead;
  const int more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
  std::uint32_t code = lead & (0x3FU >> more);
  for (int i = 0; i < more; ++i)
    code = (code << 6U) | (static_cast<unsigned char>(text[at++]) & 0x3FU);
  return code;
}

}  // namespace

std::string text_fault(std::string_view text) {
  if (!is_utf8(text)) return "bytes that are not UTF-8";
  char letter = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::uint32_t code = next_code(text, at);
    if ((code < 0x20 && code != '\n') || (code >= 0x7F && code < 0xA0))
      return "a control character";
    if (code == 0x2126 || code == 0x212A || code == 0x212B)
      return "a sign for ohm, kelvin or angstrom that is written as a letter";
    if (letter != 0 && composes(letter, code))
      return "a letter and its accent as two characters instead of one";
    letter = code < 0x80 ? static_cast<char>(code) : '\0';
  }
  return {};
}

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  for (const char c : text) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++count;
  }
  return count;
}

}  // namespace kneerail
