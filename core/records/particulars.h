#pragma once

// What is kept of a person beside the records, where it can be erased: an object whose bytes are a
// CBOR map. 16 random bytes go with it, so that nobody finds out by trying whose digest a record
// has.

#include <array>
#include <cstdint>
#include <string>

#include "core/base/result.h"
#include "core/records/cbor.h"

namespace kneerail {

struct Particulars {
  std::string name;       ///< at most 120 bytes
  std::string telephone;  ///< at most 40 bytes; empty: none
  std::array<std::uint8_t, 16> chance{};
  bool operator==(const Particulars&) const = default;
};

cbor::Bytes to_bytes(const Particulars& particulars);
/// Errors: corrupt, for bytes that are no particulars.
Result<Particulars> particulars_from(const cbor::Bytes& bytes);

}  // namespace kneerail
