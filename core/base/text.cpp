#include "core/base/text.h"

#include <charconv>
#include <cmath>
#include <cstdlib>

namespace kneerail {

std::optional<double> double_from_text(std::string_view text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

std::optional<std::int64_t> int_from_text(std::string_view text) {
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<std::int64_t> scaled_from_text(std::string_view text, int digits) {
  constexpr std::int64_t limit = std::int64_t{1} << 53;
  bool negative = false;
  if (!text.empty() && text[0] == '-') {
    negative = true;
    text.remove_prefix(1);
  }
  std::int64_t value = 0;
  int after_point = -1;
  bool any = false;
  for (const char c : text) {
    if (c == '.' && after_point < 0) {
      after_point = 0;
      continue;
    }
    if (c < '0' || c > '9') return std::nullopt;
    any = true;
    if (after_point >= digits) {
      if (c != '0') return std::nullopt;
      continue;
    }
    value = value * 10 + (c - '0');
    if (value > limit) return std::nullopt;
    if (after_point >= 0) ++after_point;
  }
  if (!any) return std::nullopt;
  for (int i = after_point < 0 ? 0 : after_point; i < digits; ++i) {
    value *= 10;
    if (value > limit) return std::nullopt;
  }
  return negative ? -value : value;
}

std::string scaled_to_text(std::int64_t value, int digits) {
  std::string text = std::to_string(std::llabs(value));
  const auto places = static_cast<std::size_t>(digits);
  if (text.size() <= places) text.insert(0, places + 1 - text.size(), '0');
  if (places > 0) {
    text.insert(text.size() - places, 1, '.');
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  return value < 0 ? "-" + text : text;
}

std::string fixed(double value, int decimals) {
  if (std::isinf(value)) return value > 0 ? "inf" : "-inf";
  char buffer[352];
  const auto [end, error] =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
  return error == std::errc{} ? std::string(buffer, end) : std::string();
}

std::string shortest(double value) {
  char buffer[64];
  const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value);
  return error == std::errc{} ? std::string(buffer, end) : std::string();
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blank = " \t\r\n";
  const auto first = text.find_first_not_of(blank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

bool is_utf8(std::string_view bytes) {
  std::size_t i = 0;
  while (i < bytes.size()) {
    const auto lead = static_cast<unsigned char>(bytes[i]);
    std::size_t more = 0;
    std::uint32_t code = 0;
    std::uint32_t least = 0;
    if (lead < 0x80) {
      ++i;
      continue;
    }
    if (lead >= 0xC2 && lead <= 0xDF) {
      more = 1, code = lead & 0x1FU, least = 0x80;
    } else if (lead >= 0xE0 && lead <= 0xEF) {
      more = 2, code = lead & 0x0FU, least = 0x800;
    } else if (lead >= 0xF0 && lead <= 0xF4) {
      more = 3, code = lead & 0x07U, least = 0x10000;
    } else {
      return false;
    }
    if (bytes.size() - i <= more) return false;
    for (std::size_t k = 1; k <= more; ++k) {
      const auto next = static_cast<unsigned char>(bytes[i + k]);
      if ((next & 0xC0U) != 0x80U) return false;
      code = (code << 6) | (next & 0x3FU);
    }
    if (code < least || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return false;
    i += more + 1;
  }
  return true;
}

}  // namespace kneerail
