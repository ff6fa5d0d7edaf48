#pragma once

// CRC-32C, the Castagnoli polynomial 0x1EDC6F41 reflected (RFC 3720, 12.1 and appendix B.4): tells
// a torn or damaged line of a file from a whole one. It is no proof against intent; digests are.

#include <cstdint>
#include <span>

namespace kneerail {

/// The checksum of some bytes. To go on where an earlier call ended, hand in what it returned.
/// "123456789" gives 0xE3069283.
std::uint32_t crc32c(std::span<const std::uint8_t> bytes, std::uint32_t so_far = 0);

}  // namespace kneerail
