#include "schema/journal/crc32c.h"

#include <array>

namespace kneerail {
namespace {

using Table = std::array<std::uint32_t, 256>;

/// tables[k][b]: what byte b adds when k more bytes follow, so that eight bytes go at once.
constexpr std::array<Table, 8> make_tables() {
  std::array<Table, 8> tables{};
  for (std::uint32_t byte = 0; byte < 256; ++byte) {
    std::uint32_t sum = byte;
    for (int bit = 0; bit < 8; ++bit) sum = (sum >> 1) ^ ((sum & 1) != 0 ? 0x82f63b78U : 0U);
    tables[0][byte] = sum;
  }
  for (std::size_t k = 1; k < tables.size(); ++k) {
    for (std::size_t byte = 0; byte < 256; ++byte) {
      const std::uint32_t before = tables[k - 1][byte];
      tables[k][byte] = (before >> 8) ^ tables[0][before & 0xff];
    }
  }
  return tables;
}

constexpr std::array<Table, 8> tables = make_tables();

}  // namespace

std::uint32_t crc32c(std::span<const std::uint8_t> bytes) {
  std::uint32_t sum = 0xffffffffU;
  for (; bytes.size() >= 8; bytes = bytes.subspan(8)) {
    std::uint32_t next = 0;
    for (std::size_t i = 0; i < 4; ++i) {
      next ^= tables[7 - i][(bytes[i] ^ (sum >> (8 * i))) & 0xff];
      next ^= tables[3 - i][bytes[4 + i]];
    }
    sum = next;
  }
  for (const std::uint8_t byte : bytes) sum = (sum >> 8) ^ tables[0][(sum ^ byte) & 0xff];
  return ~sum;
}

}  // namespace kneerail
