#pragma once

// CRC-32C (Castagnoli): reflected polynomial 0x82f63b78, start and end inverted (RFC 3720, B.4).

#include <cstdint>
#include <span>

namespace kneerail {

std::uint32_t crc32c(std::span<const std::uint8_t> bytes);

}  // namespace kneerail
