#include "core/base/id.h"

namespace kneerail {
namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

bool hyphen_before(std::size_t byte) {
  return byte == 4 || byte == 6 || byte == 8 || byte == 10;
}

}  // namespace

std::int64_t Uuid::unix_ms() const {
  std::int64_t ms = 0;
  for (std::size_t i = 0; i < 6; ++i) ms = (ms << 8) | bytes[i];
  return ms;
}

std::string to_text(const Uuid& id) {
  static constexpr char digits[] = "0123456789abcdef";
  std::string text;
  text.reserve(36);
  for (std::size_t i = 0; i < 16; ++i) {
    if (hyphen_before(i)) text += '-';
    text += digits[id.bytes[i] >> 4];
    text += digits[id.bytes[i] & 15];
  }
  return text;
}

std::optional<Uuid> uuid_from_text(std::string_view text) {
  if (text.size() != 36) return std::nullopt;
  Uuid id;
  std::size_t at = 0;
  for (std::size_t i = 0; i < 16; ++i) {
    if (hyphen_before(i) && text[at++] != '-') return std::nullopt;
    const int high = hex_digit(text[at]);
    const int low = hex_digit(text[at + 1]);
    if (high < 0 || low < 0) return std::nullopt;
    id.bytes[i] = static_cast<std::uint8_t>(high * 16 + low);
    at += 2;
  }
  return id;
}

Uuid uuid7(std::int64_t unix_ms, std::span<const std::uint8_t, 10> random) {
  Uuid id;
  for (std::size_t i = 0; i < 6; ++i)
    id.bytes[i] = static_cast<std::uint8_t>((unix_ms >> (40 - 8 * i)) & 0xFF);
  for (std::size_t i = 0; i < 10; ++i) id.bytes[6 + i] = random[i];
  id.bytes[6] = static_cast<std::uint8_t>(0x70 | (id.bytes[6] & 0x0F));
  id.bytes[8] = static_cast<std::uint8_t>(0x80 | (id.bytes[8] & 0x3F));
  return id;
}

}  // namespace kneerail
