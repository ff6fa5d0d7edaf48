#include "core/base/crc32c.h"

#include <array>

namespace kneerail {
namespace {

// Eight tables so that eight bytes are taken at a time (Kounavis and Berry 2005, "slicing by 8"):
// table[k][b] is the checksum of the byte b with k zero bytes after it.
using Tables = std::array<std::array<std::uint32_t, 256>, 8>;

constexpr Tables make_tables() {
  constexpr std::uint32_t reflected = 0x82F63B78U;
  Tables tables{};
  for (std::uint32_t byte = 0; byte < 256; ++byte) {
    std::uint32_t rest = byte;
    for (int bit = 0; bit < 8; ++bit) rest = (rest >> 1) ^ ((rest & 1U) != 0 ? reflected : 0U);
    tables[0][byte] = rest;
  }
  for (std::size_t k = 1; k < 8; ++k) {
    for (std::size_t byte = 0; byte < 256; ++byte) {
      const std::uint32_t before = tables[k - 1][byte];
      tables[k][byte] = (before >> 8) ^ tables[0][before & 0xFFU];
    }
  }
  return tables;
}

constexpr Tables tables = make_tables();

}  // namespace

std::uint32_t crc32c(std::span<const std::uint8_t> bytes, std::uint32_t so_far) {
  std::uint32_t sum = ~so_far;
  while (bytes.size() >= 8) {
    const std::uint32_t low = sum ^ (bytes[0] | std::uint32_t{bytes[1]} << 8 |
                                     std::uint32_t{bytes[2]} << 16 | std::uint32_t{bytes[3]} << 24);
    sum = tables[7][low & 0xFFU] ^ tables[6][(low >> 8) & 0xFFU] ^ tables[5][(low >> 16) & 0xFFU] ^
          tables[4][low >> 24] ^ tables[3][bytes[4]] ^ tables[2][bytes[5]] ^ tables[1][bytes[6]] ^
          tables[0][bytes[7]];
    bytes = bytes.subspan(8);
  }
  for (const std::uint8_t byte : bytes) sum = (sum >> 8) ^ tables[0][(sum ^ byte) & 0xFFU];
  return ~sum;
}

}  // namespace kneerail
